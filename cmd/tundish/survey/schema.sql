-- The database of a survey. Numbers are in the SI unit that stands beside them;
-- temperatures in degC. Lines count from 1.

CREATE TABLE IF NOT EXISTS meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;

-- One row a file: plant, catalogue, record or project.
CREATE TABLE IF NOT EXISTS files (
  id INTEGER PRIMARY KEY,
  path TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  title TEXT NOT NULL,
  revision TEXT NOT NULL,
  jurisdiction TEXT NOT NULL,
  units INTEGER NOT NULL,          -- heat generators
  errors INTEGER NOT NULL,
  warnings INTEGER NOT NULL,
  notes INTEGER NOT NULL,
  not_evaluated INTEGER NOT NULL,
  hash TEXT NOT NULL,              -- of the text
  used TEXT NOT NULL               -- files that it reads, with their hashes: JSON
);

-- What a file describes, by the address that values and findings use.
CREATE TABLE IF NOT EXISTS parts (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  part TEXT NOT NULL,
  kind TEXT NOT NULL,
  type TEXT NOT NULL,              -- catalogue type, empty without one
  line INTEGER NOT NULL
);

-- What the parts state, slot by slot.
CREATE TABLE IF NOT EXISTS stated (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  part TEXT NOT NULL,
  slot TEXT NOT NULL,
  value REAL,                      -- null for a word
  second REAL,                     -- of a pair or range
  unit TEXT NOT NULL,
  word TEXT NOT NULL,
  line INTEGER NOT NULL
);

-- What was computed. needs is empty where there is a value.
CREATE TABLE IF NOT EXISTS computed (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  part TEXT NOT NULL,
  name TEXT NOT NULL,
  statistic TEXT NOT NULL,
  firing TEXT NOT NULL,
  value REAL,
  unit TEXT NOT NULL,
  needs TEXT NOT NULL,
  line INTEGER NOT NULL
);

CREATE TABLE IF NOT EXISTS findings (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  rule TEXT NOT NULL,
  severity TEXT NOT NULL,
  part TEXT NOT NULL,
  line INTEGER NOT NULL,
  message TEXT NOT NULL,
  found TEXT NOT NULL,
  "limit" TEXT NOT NULL,
  source TEXT NOT NULL,
  read TEXT NOT NULL
);

CREATE TABLE IF NOT EXISTS not_evaluated (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  rule TEXT NOT NULL,
  part TEXT NOT NULL,
  needs TEXT NOT NULL,
  line INTEGER NOT NULL
);

CREATE TABLE IF NOT EXISTS deviations (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  rule TEXT NOT NULL,
  because TEXT NOT NULL,
  by TEXT NOT NULL,
  until TEXT NOT NULL,
  accepts INTEGER NOT NULL,        -- findings that it accepts
  line INTEGER NOT NULL
);

-- What was measured, from records.
CREATE TABLE IF NOT EXISTS readings (
  file INTEGER NOT NULL REFERENCES files(id) ON DELETE CASCADE,
  unit_part TEXT NOT NULL,         -- the unit that was measured
  firing TEXT NOT NULL,            -- high-fire, low-fire, all-full or empty
  date TEXT NOT NULL,
  name TEXT NOT NULL,
  value REAL NOT NULL,
  unit TEXT NOT NULL,
  line INTEGER NOT NULL
);

CREATE INDEX IF NOT EXISTS parts_file ON parts(file);
CREATE INDEX IF NOT EXISTS stated_file ON stated(file, part);
CREATE INDEX IF NOT EXISTS computed_file ON computed(file, part);
CREATE INDEX IF NOT EXISTS computed_name ON computed(name, value);
CREATE INDEX IF NOT EXISTS findings_file ON findings(file);
CREATE INDEX IF NOT EXISTS findings_rule ON findings(rule);
CREATE INDEX IF NOT EXISTS not_evaluated_file ON not_evaluated(file);
CREATE INDEX IF NOT EXISTS deviations_file ON deviations(file);
CREATE INDEX IF NOT EXISTS readings_file ON readings(file);

CREATE VIEW IF NOT EXISTS values_by_file AS
  SELECT f.path, f.title, c.part, p.kind, c.name, c.statistic, c.firing, c.value, c.unit, c.line
  FROM computed c JOIN files f ON f.id = c.file LEFT JOIN parts p ON p.file = c.file AND p.part = c.part
  WHERE c.needs = '';

CREATE VIEW IF NOT EXISTS findings_by_file AS
  SELECT f.path, f.title, g.rule, g.severity, g.part, g.line, g.message, g.found, g."limit"
  FROM findings g JOIN files f ON f.id = g.file;

CREATE VIEW IF NOT EXISTS rules_by_count AS
  SELECT rule, severity, count(*) AS findings, count(DISTINCT file) AS files FROM findings GROUP BY rule, severity ORDER BY findings DESC, rule;
