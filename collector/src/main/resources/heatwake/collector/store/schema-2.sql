-- Schema 2 adds what a broker may send again though it is stored.

-- A session that a broker keeps for one of our sources: the broker's address and our name there.
CREATE TABLE session (
  id   INTEGER PRIMARY KEY,
  name TEXT    NOT NULL UNIQUE
)
;
-- The latest messages of a session whose readings have no time but that of their arrival.
-- slot = session << 10 | one of 1024 places, taken in turn; number counts the messages of the session
CREATE TABLE delivered (
  slot      INTEGER PRIMARY KEY,
  number    INTEGER NOT NULL,
  packet_id INTEGER NOT NULL,
  digest    INTEGER NOT NULL
)
