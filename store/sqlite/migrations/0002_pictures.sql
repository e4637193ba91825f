-- Pictures of papers, by what they contain.

CREATE TABLE picture (
  job    TEXT    NOT NULL REFERENCES job (id),
  name   TEXT    NOT NULL,
  type   TEXT    NOT NULL,
  width  INTEGER NOT NULL,
  height INTEGER NOT NULL,
  bytes  BLOB    NOT NULL,
  PRIMARY KEY (job, name)
) STRICT;
