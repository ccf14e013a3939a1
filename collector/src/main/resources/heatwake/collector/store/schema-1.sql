-- Schema 1. Documented in docs/database.md; statements are divided by a line with a single semicolon.

-- One recorded stretch. A run spans its readings; began_ms is when the recorder began.
CREATE TABLE run (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  site     TEXT    NOT NULL,
  began_ms INTEGER NOT NULL,
  ended_ms INTEGER,
  follows  INTEGER REFERENCES run (id),
  rig_name TEXT    NOT NULL,
  rig      TEXT    NOT NULL
)
;
-- What the channel number in a reading's key means, and the unit of its values.
CREATE TABLE channel (
  number INTEGER PRIMARY KEY CHECK (number BETWEEN 0 AND 63),
  id     TEXT    NOT NULL UNIQUE,
  unit   TEXT    NOT NULL
)
;
-- The readings of one run within one window of 2^36 ms (2.2 years); nearly every run has one.
CREATE TABLE segment (
  id     INTEGER PRIMARY KEY,
  run    INTEGER NOT NULL REFERENCES run (id),
  window INTEGER NOT NULL,
  UNIQUE (run, window)
)
;
-- key = segment << 42 | (ms & (2^36 - 1)) << 6 | channel number
CREATE TABLE reading (
  key   INTEGER PRIMARY KEY,
  value REAL    NOT NULL
)
;
-- What happened to the recording itself.
CREATE TABLE event (
  id       INTEGER PRIMARY KEY,
  run      INTEGER NOT NULL REFERENCES run (id),
  kind     TEXT    NOT NULL,
  subject  TEXT    NOT NULL,
  start_ms INTEGER NOT NULL,
  end_ms   INTEGER,
  count    INTEGER NOT NULL,
  text     TEXT    NOT NULL
)
;
CREATE INDEX event_by_run ON event (run, start_ms)
;
-- What the person typed.
CREATE TABLE note (
  id      INTEGER PRIMARY KEY,
  run     INTEGER NOT NULL REFERENCES run (id),
  time_ms INTEGER NOT NULL,
  text    TEXT    NOT NULL
)
;
CREATE INDEX note_by_run ON note (run, time_ms)
;
CREATE VIEW readings AS
SELECT
  s.run AS run,
  strftime('%Y-%m-%dT%H:%M:%fZ', ((s.window << 36) + ((r.key >> 6) & 68719476735)) / 1000.0, 'unixepoch') AS time,
  c.id AS channel,
  r.value AS value,
  c.unit AS unit,
  (s.window << 36) + ((r.key >> 6) & 68719476735) AS time_ms
FROM segment AS s
CROSS JOIN reading AS r ON r.key BETWEEN (s.id << 42) AND (s.id << 42) + 4398046511103
CROSS JOIN channel AS c ON c.number = (r.key & 63)
;
CREATE VIEW runs AS
SELECT
  run.id AS id,
  run.site AS site,
  strftime('%Y-%m-%dT%H:%M:%fZ', run.began_ms / 1000.0, 'unixepoch') AS began,
  strftime('%Y-%m-%dT%H:%M:%fZ', run.ended_ms / 1000.0, 'unixepoch') AS ended,
  (SELECT count(*)
   FROM segment AS s
   CROSS JOIN reading AS r ON r.key BETWEEN (s.id << 42) AND (s.id << 42) + 4398046511103
   WHERE s.run = run.id) AS readings,
  run.follows AS follows
FROM run
;
CREATE VIEW events AS
SELECT
  run,
  strftime('%Y-%m-%dT%H:%M:%fZ', start_ms / 1000.0, 'unixepoch') AS start,
  strftime('%Y-%m-%dT%H:%M:%fZ', end_ms / 1000.0, 'unixepoch') AS "end",
  kind, subject, count, text
FROM event
;
CREATE VIEW notes AS
SELECT run, strftime('%Y-%m-%dT%H:%M:%fZ', time_ms / 1000.0, 'unixepoch') AS time, text
FROM note
