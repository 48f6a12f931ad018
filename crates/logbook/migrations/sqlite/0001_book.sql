-- The facts. Never changed, never deleted; everything below `drawer` can be dropped and folded
-- again from here. One book holds one salon, so its place in the chain is the primary key.
CREATE TABLE facts (
    seq INTEGER PRIMARY KEY CHECK (seq >= 1),
    salon BLOB NOT NULL CHECK (length(salon) = 16),
    act BLOB NOT NULL CHECK (length(act) = 16),
    part INTEGER NOT NULL CHECK (part >= 0),
    kind TEXT NOT NULL,
    version INTEGER NOT NULL,
    happened_ms INTEGER NOT NULL,
    written_ms INTEGER NOT NULL,
    station BLOB NOT NULL CHECK (length(station) = 16),
    sign BLOB CHECK (length(sign) = 16),
    known TEXT NOT NULL,
    body TEXT NOT NULL,
    prev BLOB NOT NULL CHECK (length(prev) = 32),
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    UNIQUE (salon, act, part)
) STRICT;

CREATE TRIGGER facts_no_update BEFORE UPDATE ON facts
BEGIN SELECT RAISE(ABORT, 'a fact is never changed'); END;

CREATE TRIGGER facts_no_delete BEFORE DELETE ON facts
BEGIN SELECT RAISE(ABORT, 'a fact is never deleted'); END;

-- INSERT OR REPLACE deletes without asking the trigger above, so an occupied place is refused
-- here, before the row that stands in it is gone.
CREATE TRIGGER facts_no_replace BEFORE INSERT ON facts
WHEN EXISTS (SELECT 1 FROM facts WHERE seq = NEW.seq)
    OR EXISTS (SELECT 1 FROM facts WHERE salon = NEW.salon AND act = NEW.act AND part = NEW.part)
BEGIN SELECT RAISE(ABORT, 'a fact is never replaced'); END;

CREATE TRIGGER facts_no_gap BEFORE INSERT ON facts
WHEN NEW.seq <> (SELECT COALESCE(MAX(seq), 0) + 1 FROM facts)
BEGIN SELECT RAISE(ABORT, 'a fact follows the one before it'); END;

-- Names, free text, raw files, photos. An entry may be deleted; the facts hold a commitment only.
CREATE TABLE drawer (
    entry BLOB PRIMARY KEY CHECK (length(entry) = 16),
    kind TEXT NOT NULL,
    key BLOB NOT NULL CHECK (length(key) = 32),
    content BLOB NOT NULL
) STRICT;

CREATE TRIGGER drawer_no_update BEFORE UPDATE ON drawer
BEGIN SELECT RAISE(ABORT, 'a drawer entry is never changed, only deleted'); END;

CREATE TRIGGER drawer_no_replace BEFORE INSERT ON drawer
WHEN EXISTS (SELECT 1 FROM drawer WHERE entry = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'a drawer entry is never replaced'); END;

-- From here on: cached tables, the fold of the facts.
CREATE TABLE fold_state (
    salon BLOB PRIMARY KEY,
    head_seq INTEGER NOT NULL,
    head_hash BLOB NOT NULL,
    fold_version INTEGER NOT NULL
) STRICT;

CREATE TABLE salon (
    salon BLOB PRIMARY KEY,
    zone TEXT NOT NULL,
    book TEXT NOT NULL,
    opened_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
    person BLOB PRIMARY KEY,
    sign_entry BLOB NOT NULL,
    sign_commitment BLOB NOT NULL,
    joined_seq INTEGER NOT NULL,
    left_ms INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE machine (
    machine BLOB PRIMARY KEY,
    number INTEGER NOT NULL,
    air_removal TEXT NOT NULL,
    writes_files INTEGER NOT NULL,
    most_pouches INTEGER,
    ahead_ms INTEGER NOT NULL,
    altitude_m INTEGER,
    temperature_unit TEXT,
    pressure_unit TEXT,
    pressure_reference TEXT,
    day_first INTEGER,
    reads_seq INTEGER,
    out_since_ms INTEGER,
    running BLOB
) STRICT, WITHOUT ROWID;

CREATE TABLE kind (
    kind TEXT PRIMARY KEY,
    owned INTEGER,
    owned_seq INTEGER,
    used INTEGER NOT NULL,
    washed INTEGER NOT NULL,
    counted_seq INTEGER
) STRICT, WITHOUT ROWID;

-- What a fact really moved (counts never fall below zero), so that it can be taken back exactly.
CREATE TABLE kind_move (
    seq INTEGER NOT NULL,
    kind TEXT NOT NULL,
    used INTEGER NOT NULL,
    washed INTEGER NOT NULL,
    owned_was INTEGER,
    owned_seq_was INTEGER,
    counted_seq_was INTEGER,
    PRIMARY KEY (seq, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE pouch (
    pouch BLOB PRIMARY KEY,
    code INTEGER NOT NULL,
    kind TEXT NOT NULL,
    pouched INTEGER NOT NULL,
    hollow INTEGER NOT NULL,
    state TEXT NOT NULL,
    packed_ms INTEGER NOT NULL,
    packed_seq INTEGER NOT NULL,
    packed_part INTEGER NOT NULL,
    run BLOB,
    released_ms INTEGER,
    released_by BLOB,
    use_until_ms INTEGER,
    opened_ms INTEGER,
    visit BLOB,
    chair INTEGER,
    stopped TEXT,
    in_bin INTEGER NOT NULL,
    ended_ms INTEGER,
    contradicted INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX pouch_by_state ON pouch (state, packed_seq, packed_part);
CREATE INDEX pouch_by_code ON pouch (code, packed_seq);
CREATE INDEX pouch_by_packing ON pouch (packed_seq, packed_part);

-- Every change of state, with the state before it.
CREATE TABLE pouch_step (
    pouch BLOB NOT NULL,
    seq INTEGER NOT NULL,
    was TEXT NOT NULL,
    PRIMARY KEY (pouch, seq)
) STRICT, WITHOUT ROWID;

-- Every stop that stands, with its reason: a later one does not hide an earlier.
CREATE TABLE stop (
    pouch BLOB NOT NULL,
    seq INTEGER NOT NULL,
    why TEXT NOT NULL,
    PRIMARY KEY (pouch, seq)
) STRICT, WITHOUT ROWID;

-- Which pouches were said to be in which run. A pouch said to be in two is reached by both.
CREATE TABLE run_pouch (
    run BLOB NOT NULL,
    part INTEGER NOT NULL,
    pouch BLOB NOT NULL,
    PRIMARY KEY (run, part)
) STRICT, WITHOUT ROWID;
CREATE INDEX run_pouch_by_pouch ON run_pouch (pouch, run);

-- Every visit that a pouch was said to be opened for; a second one is kept beside the first.
CREATE TABLE opening (
    seq INTEGER PRIMARY KEY,
    pouch BLOB NOT NULL,
    visit BLOB NOT NULL,
    chair INTEGER,
    opened_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX opening_by_pouch ON opening (pouch, seq);
CREATE INDEX opening_by_visit ON opening (visit);

CREATE TABLE run (
    run BLOB PRIMARY KEY,
    machine BLOB NOT NULL,
    number INTEGER NOT NULL,
    programme TEXT,
    contents TEXT NOT NULL,
    started_ms INTEGER NOT NULL,
    started_by BLOB,
    started_seq INTEGER NOT NULL,
    unloaded_ms INTEGER,
    pouches INTEGER NOT NULL,
    record BLOB,
    record_cycle INTEGER,
    judged_seq INTEGER,
    outcome TEXT,
    looked_ms INTEGER,
    released_ms INTEGER,
    stopped_ms INTEGER,
    stopped_why TEXT,
    undone INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX run_by_machine ON run (machine, started_ms);
CREATE INDEX run_by_start ON run (started_ms);
CREATE INDEX run_by_unloaded ON run (unloaded_ms);

CREATE TABLE look (
    seq INTEGER PRIMARY KEY,
    run BLOB NOT NULL
) STRICT;
CREATE INDEX look_by_run ON look (run, seq);

CREATE TABLE record (
    record BLOB PRIMARY KEY,
    kept_entry BLOB NOT NULL,
    kept_commitment BLOB NOT NULL,
    bytes INTEGER NOT NULL,
    way TEXT NOT NULL,
    taken_ms INTEGER NOT NULL,
    taken_seq INTEGER NOT NULL,
    cycles INTEGER NOT NULL,
    continues BLOB,
    replaced_by BLOB
) STRICT, WITHOUT ROWID;
CREATE INDEX record_by_taken ON record (taken_seq);

CREATE TABLE record_cycle (
    record BLOB NOT NULL,
    cycle INTEGER NOT NULL,
    run BLOB,
    start_clock TEXT,
    judged_seq INTEGER,
    outcome TEXT,
    PRIMARY KEY (record, cycle)
) STRICT, WITHOUT ROWID;
CREATE INDEX record_cycle_by_run ON record_cycle (run);

CREATE TABLE verdict (
    seq INTEGER PRIMARY KEY,
    run BLOB,
    record BLOB,
    cycle INTEGER
) STRICT;
CREATE INDEX verdict_by_run ON verdict (run, seq);

CREATE TABLE act_undone (
    act BLOB PRIMARY KEY,
    undone_by BLOB NOT NULL,
    seq INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Facts that did not fit what stood before them; kept, and marked.
CREATE TABLE contradiction (
    seq INTEGER PRIMARY KEY
) STRICT;
