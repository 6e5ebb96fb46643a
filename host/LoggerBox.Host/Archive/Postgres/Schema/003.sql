-- What people looked at before and after the test, and who released the truck. Each tick is a row of its own, and so is each withdrawal.
CREATE TABLE job_gates (
    id                  BIGINT  PRIMARY KEY,
    job                 BIGINT  NOT NULL REFERENCES jobs (id),
    gate                TEXT    NOT NULL CHECK (gate <> ''),
    withdrawn           BIGINT  NOT NULL CHECK (withdrawn IN (0, 1)),
    by_whom             TEXT    NOT NULL CHECK (by_whom <> ''),
    note                TEXT    NOT NULL,
    made_utc            BIGINT  NOT NULL,
    made_offset_minutes BIGINT  NOT NULL
);
CREATE INDEX gates_of_a_job ON job_gates (job);

CREATE TRIGGER gates_are_not_changed BEFORE UPDATE ON job_gates
    EXECUTE FUNCTION refuse_change('a gate is ticked or withdrawn by a new row');
CREATE TRIGGER gates_are_not_removed BEFORE DELETE OR TRUNCATE ON job_gates
    EXECUTE FUNCTION refuse_change('a gate is ticked or withdrawn by a new row');
