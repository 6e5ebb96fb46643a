-- Times are seconds since 1970 in UTC, each with the shop's offset from UTC in minutes at that moment.

CREATE TABLE sessions (
    id                    INTEGER PRIMARY KEY AUTOINCREMENT,
    logger_id             INTEGER NOT NULL,
    boot_count            INTEGER NOT NULL,
    session_number        INTEGER NOT NULL,
    length                INTEGER NOT NULL CHECK (length > 0),
    origin                TEXT    NOT NULL CHECK (origin IN ('fetched', 'imported', 'simulated')),
    source                TEXT    NOT NULL,
    stored_utc            INTEGER NOT NULL,
    stored_offset_minutes INTEGER NOT NULL,
    -- Set aside: what arrived did not agree with the logger. It is kept, and not shown.
    state                 TEXT    NOT NULL DEFAULT 'arriving' CHECK (state IN ('arriving', 'complete', 'set-aside')),

    -- Read from the bytes once all have arrived; can be computed again from the parts at any time.
    crc                   INTEGER,
    start_utc             INTEGER,
    duration_ms           INTEGER NOT NULL DEFAULT 0,
    sample_sets           INTEGER NOT NULL DEFAULT 0,
    holds                 INTEGER NOT NULL DEFAULT 0,
    steps_captured        INTEGER NOT NULL DEFAULT 0,
    ended                 INTEGER NOT NULL DEFAULT 0 CHECK (ended IN (0, 1)),
    plan_name             TEXT    NOT NULL DEFAULT '',
    damaged_records       INTEGER NOT NULL DEFAULT 0,
    damaged_bytes         INTEGER NOT NULL DEFAULT 0,
    unknown_records       INTEGER NOT NULL DEFAULT 0
) STRICT;

-- A logger whose memory was replaced counts from 1 again: the content tells two such sessions apart.
CREATE UNIQUE INDEX one_of_each_content ON sessions (logger_id, boot_count, session_number, length, crc) WHERE state = 'complete';
CREATE UNIQUE INDEX one_arriving ON sessions (logger_id, boot_count, session_number, length) WHERE state = 'arriving';

-- The record bytes as they were received; a session's parts in order of start are its bytes. They never overlap.
CREATE TABLE parts (
    session INTEGER NOT NULL REFERENCES sessions (id),
    start   INTEGER NOT NULL CHECK (start >= 0),
    bytes   BLOB    NOT NULL CHECK (length(bytes) > 0),
    PRIMARY KEY (session, start)
) STRICT;

CREATE TABLE jobs (
    id                    INTEGER PRIMARY KEY AUTOINCREMENT,
    truck                 TEXT    NOT NULL,
    serial                TEXT    NOT NULL,
    hour_meter            REAL,
    fuel                  TEXT    NOT NULL,
    complaint             TEXT    NOT NULL,
    technician            TEXT    NOT NULL,
    sheet_name            TEXT    NOT NULL,
    sheet_text            TEXT    NOT NULL,
    altitude_metres       REAL,
    air_celsius           REAL,
    oil_level             TEXT    NOT NULL,
    oil_look              TEXT    NOT NULL,
    oil_celsius           REAL,
    oil_read              TEXT    NOT NULL,
    opened_utc            INTEGER NOT NULL,
    opened_offset_minutes INTEGER NOT NULL,
    closed_utc            INTEGER,
    closed_offset_minutes INTEGER
) STRICT;

CREATE TABLE job_sessions (
    job                  INTEGER NOT NULL REFERENCES jobs (id),
    session              INTEGER NOT NULL REFERENCES sessions (id),
    added_utc            INTEGER NOT NULL,
    added_offset_minutes INTEGER NOT NULL,
    PRIMARY KEY (job, session)
) STRICT;

-- What a person put right afterwards; the newest row of a subject's field counts, the older ones stay readable.
CREATE TABLE corrections (
    id                  INTEGER PRIMARY KEY AUTOINCREMENT,
    subject             TEXT    NOT NULL,
    field               TEXT    NOT NULL,
    value               TEXT    NOT NULL,
    reason              TEXT    NOT NULL,
    technician          TEXT    NOT NULL,
    made_utc            INTEGER NOT NULL,
    made_offset_minutes INTEGER NOT NULL
) STRICT;

CREATE TRIGGER parts_are_not_changed BEFORE UPDATE ON parts
BEGIN SELECT RAISE(ABORT, 'recorded bytes are never changed'); END;
CREATE TRIGGER parts_are_not_removed BEFORE DELETE ON parts
BEGIN SELECT RAISE(ABORT, 'recorded bytes are never removed'); END;
CREATE TRIGGER corrections_are_not_changed BEFORE UPDATE ON corrections
BEGIN SELECT RAISE(ABORT, 'a correction is a new row'); END;
CREATE TRIGGER corrections_are_not_removed BEFORE DELETE ON corrections
BEGIN SELECT RAISE(ABORT, 'a correction is a new row'); END;
