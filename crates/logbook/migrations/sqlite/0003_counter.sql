-- What happened beside the sets: chores, jars, basins, spore tests, stock, screens, people,
-- hand-overs, gaps, practice. Of a topic and a name the newest line holds where it is a setting.
CREATE TABLE event (
    seq INTEGER PRIMARY KEY,
    topic TEXT NOT NULL,
    name TEXT NOT NULL,
    at_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX event_by_name ON event (topic, name, seq);
CREATE INDEX event_by_time ON event (topic, at_ms);
