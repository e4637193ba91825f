-- Ticks on the lists of a job: what is cut, what hangs. One that was taken away stays, so
-- that it does not come back from a device that has not heard of it.

CREATE TABLE tick (
  job TEXT    NOT NULL REFERENCES job (id),
  key TEXT    NOT NULL,
  yes INTEGER NOT NULL, -- 1: set; 0: taken away
  at  INTEGER NOT NULL,
  PRIMARY KEY (job, key)
) STRICT, WITHOUT ROWID;
