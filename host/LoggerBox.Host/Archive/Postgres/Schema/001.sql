-- Times are seconds since 1970 in UTC, each with the shop's offset from UTC in minutes at that moment.

-- One row: whose tables these are, and of which version. Whoever changes the archive holds it, so that one program does so at a time.
CREATE TABLE loggerbox_archive (
    version BIGINT  NOT NULL,
    is_one  BOOLEAN PRIMARY KEY DEFAULT true CHECK (is_one)
);
INSERT INTO loggerbox_archive (version) VALUES (0);

-- No sequence gives the numbers of rows, for those that people see (S1, J1) shall have no gaps, but the one program that adds them.
CREATE TABLE sessions (
    id                    BIGINT  PRIMARY KEY,
    logger_id             BIGINT  NOT NULL,
    boot_count            BIGINT  NOT NULL,
    session_number        BIGINT  NOT NULL,
    length                BIGINT  NOT NULL CHECK (length > 0),
    origin                TEXT    NOT NULL CHECK (origin IN ('fetched', 'imported', 'simulated')),
    source                TEXT    NOT NULL,
    stored_utc            BIGINT  NOT NULL,
    stored_offset_minutes BIGINT  NOT NULL,
    -- Set aside: what arrived did not agree with the logger. It is kept, and not shown.
    state                 TEXT    NOT NULL DEFAULT 'arriving' CHECK (state IN ('arriving', 'complete', 'set-aside')),

    -- Read from the bytes once all have arrived; can be computed again from the parts at any time.
    crc                   BIGINT,
    start_utc             BIGINT,
    duration_ms           BIGINT  NOT NULL DEFAULT 0,
    sample_sets           BIGINT  NOT NULL DEFAULT 0,
    holds                 BIGINT  NOT NULL DEFAULT 0,
    steps_captured        BIGINT  NOT NULL DEFAULT 0,
    ended                 BIGINT  NOT NULL DEFAULT 0 CHECK (ended IN (0, 1)),
    plan_name             TEXT    NOT NULL DEFAULT '',
    damaged_records       BIGINT  NOT NULL DEFAULT 0,
    damaged_bytes         BIGINT  NOT NULL DEFAULT 0,
    unknown_records       BIGINT  NOT NULL DEFAULT 0
);

-- A logger whose memory was replaced counts from 1 again: the content tells two such sessions apart.
CREATE UNIQUE INDEX one_of_each_content ON sessions (logger_id, boot_count, session_number, length, crc) WHERE state = 'complete';
CREATE UNIQUE INDEX one_arriving ON sessions (logger_id, boot_count, session_number, length) WHERE state = 'arriving';

-- The record bytes as they were received; a session's parts in order of start are its bytes. They never overlap.
CREATE TABLE parts (
    session BIGINT  NOT NULL REFERENCES sessions (id),
    start   BIGINT  NOT NULL CHECK (start >= 0),
    bytes   BYTEA   NOT NULL CHECK (length(bytes) > 0),
    PRIMARY KEY (session, start)
);

-- Packed samples: nothing is gained by trying to pack them again.
ALTER TABLE parts ALTER COLUMN bytes SET STORAGE EXTERNAL;

CREATE TABLE jobs (
    id                    BIGINT  PRIMARY KEY,
    truck                 TEXT    NOT NULL,
    serial                TEXT    NOT NULL,
    hour_meter            DOUBLE PRECISION,
    fuel                  TEXT    NOT NULL,
    complaint             TEXT    NOT NULL,
    technician            TEXT    NOT NULL,
    sheet_name            TEXT    NOT NULL,
    sheet_text            TEXT    NOT NULL,
    altitude_metres       DOUBLE PRECISION,
    air_celsius           DOUBLE PRECISION,
    oil_level             TEXT    NOT NULL,
    oil_look              TEXT    NOT NULL,
    oil_celsius           DOUBLE PRECISION,
    oil_read              TEXT    NOT NULL,
    opened_utc            BIGINT  NOT NULL,
    opened_offset_minutes BIGINT  NOT NULL,
    closed_utc            BIGINT,
    closed_offset_minutes BIGINT
);

CREATE TABLE job_sessions (
    -- The order in which they were added; SQLite has such a column in every table.
    rowid                BIGINT  NOT NULL UNIQUE,
    job                  BIGINT  NOT NULL REFERENCES jobs (id),
    session              BIGINT  NOT NULL REFERENCES sessions (id),
    added_utc            BIGINT  NOT NULL,
    added_offset_minutes BIGINT  NOT NULL,
    PRIMARY KEY (job, session)
);

-- What a person put right afterwards; the newest row of a subject's field counts, the older ones stay readable.
CREATE TABLE corrections (
    id                  BIGINT  PRIMARY KEY,
    subject             TEXT    NOT NULL,
    field               TEXT    NOT NULL,
    value               TEXT    NOT NULL,
    reason              TEXT    NOT NULL,
    technician          TEXT    NOT NULL,
    made_utc            BIGINT  NOT NULL,
    made_offset_minutes BIGINT  NOT NULL
);

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '%', TG_ARGV[0];
END $$;

CREATE TRIGGER parts_are_not_changed BEFORE UPDATE ON parts
    EXECUTE FUNCTION refuse_change('recorded bytes are never changed');
CREATE TRIGGER parts_are_not_removed BEFORE DELETE OR TRUNCATE ON parts
    EXECUTE FUNCTION refuse_change('recorded bytes are never removed');
CREATE TRIGGER corrections_are_not_changed BEFORE UPDATE ON corrections
    EXECUTE FUNCTION refuse_change('a correction is a new row');
CREATE TRIGGER corrections_are_not_removed BEFORE DELETE OR TRUNCATE ON corrections
    EXECUTE FUNCTION refuse_change('a correction is a new row');
