-- A released migration never changes: add the next number instead.

-- Smaller copies of pictures, to look at and to print. They are made anew from the
-- picture where they are missing, so they are no content: no case's digest, hash or
-- bundle knows them, and a script may drop them all.
CREATE TABLE smaller (
  hash TEXT PRIMARY KEY REFERENCES blobs (hash) ON DELETE CASCADE, -- of the picture as it came
  data BLOB NOT NULL
) STRICT;

-- A copy goes with its picture: when no case that is alive has it any more.
CREATE TRIGGER smaller_buried AFTER UPDATE OF deleted ON cases WHEN old.deleted IS NULL AND new.deleted IS NOT NULL
BEGIN
  DELETE FROM smaller WHERE hash IN (SELECT hash FROM attachments WHERE case_key = new.key)
    AND NOT EXISTS (SELECT 1 FROM attachments JOIN cases ON key = case_key WHERE attachments.hash = smaller.hash AND deleted IS NULL);
END;
CREATE TRIGGER smaller_replaced AFTER UPDATE OF hash ON attachments
BEGIN
  DELETE FROM smaller WHERE hash = old.hash
    AND NOT EXISTS (SELECT 1 FROM attachments JOIN cases ON key = case_key WHERE attachments.hash = smaller.hash AND deleted IS NULL);
END;
