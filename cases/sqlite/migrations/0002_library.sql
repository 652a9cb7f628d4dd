-- A released migration never changes: add the next number instead.

-- The content without its id tells the same case under two ids. A row is stale
-- while its digest, its words and its content are still to be made from the
-- document: they need more than SQL.
ALTER TABLE cases ADD COLUMN content TEXT NOT NULL DEFAULT '';
ALTER TABLE cases ADD COLUMN stale INTEGER NOT NULL DEFAULT 1 CHECK (stale IN (0, 1));

CREATE INDEX cases_stale   ON cases (key) WHERE stale = 1;
CREATE INDEX cases_content ON cases (content) WHERE content <> '';
CREATE INDEX cases_changed ON cases (changed DESC, key DESC) WHERE deleted IS NULL;

-- How many cases are alive, since counting them takes as long as there are many.
CREATE TABLE totals (
  one   INTEGER PRIMARY KEY CHECK (one = 1),
  alive INTEGER NOT NULL CHECK (alive >= 0)
) STRICT;
INSERT INTO totals SELECT 1, count(*) FROM cases WHERE deleted IS NULL;
CREATE TRIGGER cases_added AFTER INSERT ON cases WHEN new.deleted IS NULL
BEGIN UPDATE totals SET alive = alive + 1; END;
CREATE TRIGGER cases_buried AFTER UPDATE OF deleted ON cases WHEN old.deleted IS NULL AND new.deleted IS NOT NULL
BEGIN UPDATE totals SET alive = alive - 1; END;
CREATE TRIGGER cases_raised AFTER UPDATE OF deleted ON cases WHEN old.deleted IS NOT NULL AND new.deleted IS NULL
BEGIN UPDATE totals SET alive = alive + 1; END;

-- What filters and statistics ask of a case, 64 cases a row: so many are read at
-- once that a row for each would cost more than what it holds. changed counts
-- up over the whole table.
CREATE TABLE digests (
  chunk   INTEGER PRIMARY KEY, -- cases.key / 64
  changed INTEGER NOT NULL,
  data    BLOB    NOT NULL
) STRICT;

CREATE INDEX digests_changed ON digests (changed);

-- What the program held likeliest when a verdict was given.
CREATE TABLE guesses (
  case_key INTEGER PRIMARY KEY REFERENCES cases (key),
  verdict  TEXT    NOT NULL CHECK (verdict <> ''),
  first    TEXT    NOT NULL CHECK (first <> ''),
  first_p  REAL    NOT NULL CHECK (first_p BETWEEN 0 AND 1),
  truth_p  REAL    NOT NULL CHECK (truth_p BETWEEN 0 AND 1)
) STRICT;

-- The words that cases have had, for who mistypes one.
CREATE TABLE words (
  key  INTEGER PRIMARY KEY,
  word TEXT    NOT NULL UNIQUE
) STRICT;

CREATE VIRTUAL TABLE trigrams USING fts5 (
  word, content = 'words', content_rowid = 'key', tokenize = 'trigram', detail = 'none'
);

CREATE TABLE searches (
  name  TEXT PRIMARY KEY CHECK (name <> ''),
  query TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Practice. A case is named by its id, since a class may be made before its cases
-- are there.
CREATE TABLE retired (
  case_id TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;

CREATE TABLE classes (
  name  TEXT PRIMARY KEY CHECK (name <> ''),
  cases TEXT NOT NULL CHECK (json_valid(cases)) -- ids in their order
) STRICT, WITHOUT ROWID;

CREATE TABLE results (
  key      INTEGER PRIMARY KEY,
  finished INTEGER NOT NULL, -- microseconds since 1970 UTC
  trainee  TEXT    NOT NULL,
  class    TEXT    NOT NULL, -- empty: practised alone
  case_id  TEXT    NOT NULL,
  result   TEXT    NOT NULL CHECK (json_valid(result))
) STRICT;

CREATE INDEX results_class ON results (class, finished);
