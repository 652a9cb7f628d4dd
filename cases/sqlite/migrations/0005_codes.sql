-- A released migration never changes: add the next number instead.

-- Codes that were noted in small letters, or as the two bytes that a vehicle sends,
-- counted apart from the same ones in letters.
UPDATE cases SET stale = 1;
