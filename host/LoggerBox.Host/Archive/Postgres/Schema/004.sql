-- What was stored on a logger for one pressure channel, against which reference, and when that has to be done again.
CREATE TABLE calibrations (
    id                  BIGINT  PRIMARY KEY,
    logger_id           BIGINT  NOT NULL,
    channel             BIGINT  NOT NULL CHECK (channel BETWEEN 1 AND 3),
    zero_counts         BIGINT  NOT NULL,
    span_counts         BIGINT  NOT NULL CHECK (span_counts <> 0),
    span_pascal         BIGINT  NOT NULL,
    accuracy_pascal     BIGINT  NOT NULL,
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
    made_utc            BIGINT  NOT NULL,
    made_offset_minutes BIGINT  NOT NULL
);
CREATE INDEX calibrations_of_a_logger ON calibrations (logger_id);

CREATE TRIGGER calibrations_are_not_changed BEFORE UPDATE ON calibrations
    EXECUTE FUNCTION refuse_change('a calibration is a new row');
CREATE TRIGGER calibrations_are_not_removed BEFORE DELETE OR TRUNCATE ON calibrations
    EXECUTE FUNCTION refuse_change('a calibration is a new row');
