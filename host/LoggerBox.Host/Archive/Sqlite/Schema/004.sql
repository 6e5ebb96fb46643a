-- What was stored on a logger for one pressure channel, against which reference, and when that has to be done again.
CREATE TABLE calibrations (
    id                  INTEGER PRIMARY KEY AUTOINCREMENT,
    logger_id           INTEGER NOT NULL,
    channel             INTEGER NOT NULL CHECK (channel BETWEEN 1 AND 3),
    zero_counts         INTEGER NOT NULL,
    span_counts         INTEGER NOT NULL CHECK (span_counts <> 0),
    span_pascal         INTEGER NOT NULL,
    accuracy_pascal     INTEGER NOT NULL,
    transducer          TEXT    NOT NULL,
    reference           TEXT    NOT NULL,
    certificate         TEXT    NOT NULL,
    -- Days, as the certificate prints them: YYYY-MM-DD.
    certified_on        TEXT    NOT NULL,
    reference_due       TEXT    NOT NULL,
    due                 TEXT    NOT NULL,
    by_whom             TEXT    NOT NULL,
    -- What was read at each pressure: hundredths of a count, pascal; pairs parted by semicolons.
    points              TEXT    NOT NULL,
    made_utc            INTEGER NOT NULL,
    made_offset_minutes INTEGER NOT NULL
) STRICT;
CREATE INDEX calibrations_of_a_logger ON calibrations (logger_id);

CREATE TRIGGER calibrations_are_not_changed BEFORE UPDATE ON calibrations
BEGIN SELECT RAISE(ABORT, 'a calibration is a new row'); END;
CREATE TRIGGER calibrations_are_not_removed BEFORE DELETE ON calibrations
BEGIN SELECT RAISE(ABORT, 'a calibration is a new row'); END;
