-- A released migration never changes: add the next number instead.
PRAGMA application_id = 1280266064; -- "LOOP"

-- One row for each case: what lists and filters ask. Times are microseconds
-- since 1970 UTC.
CREATE TABLE cases (
  key           INTEGER PRIMARY KEY,
  id            TEXT    NOT NULL UNIQUE CHECK (id <> ''),
  revision      INTEGER NOT NULL CHECK (revision >= 1), -- the one that is shown
  title         TEXT    NOT NULL,
  vehicle       TEXT    NOT NULL,
  layout        TEXT    NOT NULL,
  cause         TEXT    NOT NULL, -- empty while the case is open
  before_repair INTEGER NOT NULL CHECK (before_repair IN (0, 1)),
  after_repair  INTEGER NOT NULL CHECK (after_repair IN (0, 1)),
  opened        INTEGER, -- NULL: not known
  changed       INTEGER NOT NULL,
  deleted       INTEGER  -- NULL: alive
) STRICT;

CREATE INDEX cases_opened ON cases (opened DESC, key DESC) WHERE deleted IS NULL;
CREATE INDEX cases_cause  ON cases (cause, opened DESC, key DESC) WHERE deleted IS NULL;
CREATE INDEX cases_layout ON cases (layout, opened DESC, key DESC) WHERE deleted IS NULL;
CREATE INDEX cases_before ON cases (opened DESC, key DESC) WHERE deleted IS NULL AND before_repair = 1;
CREATE INDEX cases_after  ON cases (opened DESC, key DESC) WHERE deleted IS NULL AND after_repair = 1;

-- Photos, recordings and logs, once for each content.
CREATE TABLE blobs (
  hash TEXT PRIMARY KEY CHECK (length(hash) = 64), -- SHA-256, hexadecimal
  data BLOB NOT NULL
) STRICT;

-- Every edit of a case. Logs are large and seldom edited, so they stand apart.
CREATE TABLE revisions (
  case_key INTEGER NOT NULL REFERENCES cases (key),
  number   INTEGER NOT NULL CHECK (number >= 1),
  what     TEXT    NOT NULL,
  saved    INTEGER NOT NULL,
  document TEXT    NOT NULL, -- the open case format without its logs
  logs     TEXT    REFERENCES blobs (hash), -- a document with nothing but logs
  PRIMARY KEY (case_key, number)
) STRICT;

CREATE INDEX revisions_logs ON revisions (logs) WHERE logs IS NOT NULL;

CREATE TABLE attachments (
  case_key INTEGER NOT NULL REFERENCES cases (key),
  name     TEXT    NOT NULL CHECK (name <> ''),
  hash     TEXT    NOT NULL REFERENCES blobs (hash),
  PRIMARY KEY (case_key, name)
) STRICT, WITHOUT ROWID;

CREATE INDEX attachments_hash ON attachments (hash);

-- The words of the cases that are alive; rowid is cases.key.
CREATE VIRTUAL TABLE search USING fts5 (
  title, body,
  content = '', contentless_delete = 1,
  tokenize = 'unicode61 remove_diacritics 2',
  prefix = '1 2 3 4'
);
INSERT INTO search (search, rank) VALUES ('rank', 'bm25(8.0, 1.0)');
