-- The day: visits, services, working times, figures for the plan. All cached tables.

-- What was said last of a topic: the place of its fact. The fact itself is read from the chain.
CREATE TABLE setting (
    topic TEXT NOT NULL,
    name TEXT NOT NULL,
    seq INTEGER NOT NULL,
    PRIMARY KEY (topic, name)
) STRICT, WITHOUT ROWID;

-- Phrases of titles, keyed; a phrase without a service means: no visit.
CREATE TABLE phrase (
    phrase BLOB PRIMARY KEY,
    service BLOB
) STRICT, WITHOUT ROWID;

-- Start and end are those that were booked; a late client comes `late_min` after them.
CREATE TABLE visit (
    visit BLOB PRIMARY KEY,
    start_ms INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    late_min INTEGER NOT NULL,
    chair INTEGER,
    service BLOB,
    state TEXT NOT NULL,
    sequence INTEGER NOT NULL,
    source TEXT,
    entry BLOB,
    series BLOB,
    calendar BLOB,
    booked_seq INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX visit_by_start ON visit (start_ms);
CREATE INDEX visit_by_entry ON visit (entry);
CREATE INDEX visit_by_series ON visit (series);
CREATE INDEX visit_by_calendar ON visit (calendar, start_ms);

-- Every change of a visit, with what was before it.
CREATE TABLE visit_step (
    visit BLOB NOT NULL,
    seq INTEGER NOT NULL,
    start_ms INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    late_min INTEGER NOT NULL,
    chair INTEGER,
    service BLOB,
    state TEXT NOT NULL,
    sequence INTEGER NOT NULL,
    PRIMARY KEY (visit, seq)
) STRICT, WITHOUT ROWID;

CREATE TABLE shift (
    shift BLOB PRIMARY KEY,
    person BLOB NOT NULL,
    from_ms INTEGER NOT NULL,
    to_ms INTEGER NOT NULL,
    lunch_from_ms INTEGER,
    lunch_to_ms INTEGER,
    ended INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX shift_by_from ON shift (from_ms);

CREATE TABLE closed (
    from_ms INTEGER NOT NULL,
    to_ms INTEGER NOT NULL,
    PRIMARY KEY (from_ms, to_ms)
) STRICT, WITHOUT ROWID;

-- The last tap of each person, for how long the next piece of work took.
CREATE TABLE tap (
    sign BLOB PRIMARY KEY,
    act BLOB NOT NULL,
    what TEXT NOT NULL,
    at_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- From a person's tap before to the tap that said the work was done.
CREATE TABLE hand_time (
    act BLOB PRIMARY KEY,
    seq INTEGER NOT NULL,
    what TEXT NOT NULL,
    sets INTEGER NOT NULL,
    took_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX hand_time_by_what ON hand_time (what, seq);
