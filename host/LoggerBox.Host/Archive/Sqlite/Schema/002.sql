-- A number that a job keeps in every archive that it is imported into; what was found and done; which sessions were before it and which after.
ALTER TABLE jobs ADD COLUMN uid TEXT NOT NULL DEFAULT '';
UPDATE jobs SET uid = lower(hex(randomblob(16)));
CREATE UNIQUE INDEX one_of_each_job ON jobs (uid);

ALTER TABLE jobs ADD COLUMN cause TEXT NOT NULL DEFAULT '';
ALTER TABLE jobs ADD COLUMN correction TEXT NOT NULL DEFAULT '';
ALTER TABLE job_sessions ADD COLUMN role TEXT NOT NULL DEFAULT '' CHECK (role IN ('', 'before', 'after'));
