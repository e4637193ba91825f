-- Jobs, and every version that they had. Times are milliseconds of Unix time.

CREATE TABLE job (
  id      TEXT    NOT NULL PRIMARY KEY,
  name    TEXT    NOT NULL,
  version INTEGER NOT NULL, -- the last one
  begun   INTEGER NOT NULL,
  saved   INTEGER NOT NULL,
  binned  INTEGER,          -- when it was thrown away
  erased  INTEGER NOT NULL DEFAULT 0 -- nothing is left of it but how far it counted
) STRICT, WITHOUT ROWID;

CREATE TABLE revision (
  job      TEXT    NOT NULL REFERENCES job (id),
  version  INTEGER NOT NULL,
  key      TEXT, -- of the revision, chosen by whoever made it
  made     INTEGER NOT NULL,
  saved    INTEGER NOT NULL,
  name     TEXT    NOT NULL, -- the job's, at that time
  label    TEXT    NOT NULL,
  title    TEXT    NOT NULL DEFAULT '', -- the name that the user gave this version
  size     INTEGER NOT NULL, -- of the document, before it was deflated
  document BLOB    NOT NULL, -- deflated (RFC 1951)
  PRIMARY KEY (job, version)
) STRICT;

CREATE UNIQUE INDEX revision_key ON revision (job, key) WHERE key IS NOT NULL;
