-- What people looked at before and after the test, and who released the truck. Each tick is a row of its own, and so is each withdrawal.
CREATE TABLE job_gates (
    id                  INTEGER PRIMARY KEY AUTOINCREMENT,
    job                 INTEGER NOT NULL REFERENCES jobs (id),
    gate                TEXT    NOT NULL CHECK (gate <> ''),
    withdrawn           INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
    by_whom             TEXT    NOT NULL CHECK (by_whom <> ''),
    note                TEXT    NOT NULL,
    made_utc            INTEGER NOT NULL,
    made_offset_minutes INTEGER NOT NULL
) STRICT;
CREATE INDEX gates_of_a_job ON job_gates (job);

CREATE TRIGGER gates_are_not_changed BEFORE UPDATE ON job_gates
BEGIN SELECT RAISE(ABORT, 'a gate is ticked or withdrawn by a new row'); END;
CREATE TRIGGER gates_are_not_removed BEFORE DELETE ON job_gates
BEGIN SELECT RAISE(ABORT, 'a gate is ticked or withdrawn by a new row'); END;
