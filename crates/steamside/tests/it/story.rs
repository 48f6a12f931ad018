//! The whole loop once, through the program's own forms, on a real SQLite file.

use super::salon::{Salon, id};
use jiff::Timestamp;
use load::SetState;
use logbook::book::Book;
use logbook::view::{Machine, Pouch, Run};
use measure::RunId;
use release::verdict::Outcome;

/// A salon with one machine and one person, and a second view of its book.
pub struct Story {
    /// The program.
    pub salon: Salon,
    /// Its book, opened beside it.
    pub book: Book,
    /// The person's id.
    pub sign: String,
    /// The machine's id.
    pub machine: String,
}

impl Story {
    /// Serves a new book with a machine and a person.
    pub fn begin(folder: &std::path::Path) -> Self {
        Self::begin_with(Salon::serve(folder, &["--zone", "Etc/UTC"]))
    }

    /// The same in a time zone.
    pub fn begin_in(folder: &std::path::Path, zone: &str) -> Self {
        Self::begin_with(Salon::serve(folder, &["--zone", zone]))
    }

    /// The same, with a folder that the machine writes to.
    pub fn begin_watching(folder: &std::path::Path, stick: &std::path::Path) -> Self {
        let stick = stick.to_str().expect("a path");
        Self::begin_with(Salon::serve(folder, &["--zone", "Etc/UTC", "--watch", stick]))
    }

    fn begin_with(salon: Salon) -> Self {
        let folder = salon.book.clone();
        post(&salon, "/act/person", &[("sign-text", "HL")]);
        post(&salon, "/act/machine", &[("number", "1"), ("air", "vacuum"), ("files", "yes")]);
        let book = Book::open(&folder).expect("it opens beside the program");
        let person = book.read(|view| view.people()).expect("people").remove(0);
        let machine: Machine = book.read(|view| view.machines()).expect("machines").remove(0);
        let (sign, machine) = (person.person.to_string(), machine.machine.to_string());
        Self { salon, book, sign, machine }
    }

    /// Posts an act under the person's sign; it has to be taken.
    pub fn act(&self, name: &str, fields: &[(&str, &str)]) {
        let mut all = vec![("sign", self.sign.as_str())];
        all.extend(fields);
        post(&self.salon, &format!("/act/{name}"), &all);
    }

    /// Posts an act that has to be refused.
    pub fn refused(&self, name: &str, fields: &[(&str, &str)]) {
        let act = id();
        let mut all = vec![("sign", self.sign.as_str()), ("act", &act)];
        all.extend(fields);
        let status = self.salon.post(&format!("/act/{name}"), &all);
        assert_eq!(status, Some(409), "{name} {fields:?} was not refused");
    }

    /// The pouches in a state.
    pub fn pouches(&self, state: SetState) -> Vec<Pouch> {
        self.book.read(|view| view.pouches_in(&[state])).expect("pouches")
    }

    /// The run as the book has it.
    pub fn run(&self, run: RunId) -> Run {
        self.book.read(|view| view.run(run)).expect("a run").expect("it is there")
    }

    /// Washes, packs and starts so many manicure sets; the run stays in the machine.
    pub fn start(&self, count: usize) -> RunId {
        let count = count.to_string();
        self.act("wash", &[("count.manicure", &count)]);
        self.act("pack", &[("kind", "manicure"), ("count", &count), ("wrap", "pouched")]);
        let ids: Vec<String> =
            self.pouches(SetState::Bagged).iter().map(|pouch| pouch.pouch.to_string()).collect();
        let mut fields = vec![("machine", self.machine.as_str()), ("programme", "middle")];
        fields.extend(ids.iter().map(|pouch| ("pouch", pouch.as_str())));
        self.act("start", &fields);
        let machine = self.machine.parse().expect("an id");
        let machine = self.book.read(|view| view.machine(machine)).expect("a machine");
        machine.expect("it is there").running.expect("it runs")
    }

    /// A run with so many sets that is over, read off its display; nobody has looked at it yet.
    pub fn read_off(&self, count: usize) -> RunId {
        let run = self.start(count);
        let named = run.to_string();
        self.act("unload", &[("run", &named)]);
        let read = [("run", &*named), ("lowest", "134.6"), ("minutes", "5"), ("pressure", "311")];
        self.act("read-off", &[&read[..], &[("unit", "kPa-abs")]].concat());
        run
    }

    /// The same, released.
    pub fn released(&self, count: usize) -> RunId {
        let run = self.read_off(count);
        let named = run.to_string();
        self.act("look", &[("run", &named), ("marks", "all"), ("dry", "all"), ("inner", "yes")]);
        run
    }

    /// Drops a file on the page of the machines.
    pub fn drop_file(&self, bytes: &str) {
        let status = self.salon.upload(&[("act", &id()), ("machine", &self.machine)], bytes);
        assert_eq!(status, 303);
    }
}

fn post(salon: &Salon, path: &str, fields: &[(&str, &str)]) {
    let act = id();
    let mut all = vec![("act", act.as_str())];
    all.extend(fields);
    assert_eq!(salon.post(path, &all), Some(303), "{path} {fields:?}");
}

/// A record of the demo's kind that begins now (UTC); `good_a` and `short` are simulated.
pub fn record(series: &str) -> String {
    let start = Timestamp::now();
    let mut file = String::from("time,chamber_C,chamber_kPa_abs,set_C\n");
    for line in series.lines().skip(1) {
        let (seconds, rest) = line.split_once(',').expect("three columns");
        let at = start + jiff::SignedDuration::from_secs(seconds.parse().expect("seconds"));
        file += &format!("{},{rest},134.0\n", at.strftime("%Y-%m-%dT%H:%M:%S"));
    }
    file
}

/// A good run, simulated.
pub const GOOD: &str = include_str!("../../demo/good_a.csv");
const SHORT: &str = include_str!("../../demo/short.csv");

#[test]
fn a_good_run_goes_round_to_a_chair_and_a_recall_finds_the_visit() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(3);
    let named = run.to_string();
    let all_good = [("run", named.as_str()), ("marks", "all"), ("dry", "all")];
    story.refused("look", &all_good); // still in the machine
    story.act("unload", &[("run", &named)]);
    story.refused("look", &all_good); // nothing says yet what the chamber did
    story.drop_file(&record(GOOD));
    assert_eq!(story.run(run).outcome, Some(Outcome::Lethal), "claimed by machine and time");
    story.act("look", &all_good);
    let ready = story.pouches(SetState::Ready);
    assert_eq!(ready.len(), 3);
    let code = ready[0].code.to_string();
    story.act("open", &[("code", &code), ("chair", "4")]);
    story.refused("open", &[("code", &code)]); // a pouch is never used twice
    let (status, page) = story.salon.get(&format!("/recall?run={named}"));
    assert_eq!(status, 200);
    assert!(page.contains(&code), "the recall names the pouch that was opened");
    let (status, log) = story.salon.get("/log");
    assert!(status == 200 && log.contains(&code));
    assert!(logbook::verify(home.path().join("book").as_path()).expect("readable").ok);
}

#[test]
fn a_short_run_has_no_way_back_but_a_new_run() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(2);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(SHORT));
    assert_eq!(story.run(run).outcome, Some(Outcome::NotLethal));
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    let stopped = story.pouches(SetState::SetAside);
    assert_eq!(stopped.len(), 2, "marks and looks do not talk the numbers back");
    let pouch = stopped[0].pouch.to_string();
    story.refused("lift", &[("pouch", &pouch), ("why", "mistake")]);
    let read = [("run", &*named), ("lowest", "135"), ("minutes", "5"), ("pressure", "315")];
    story.refused("read-off", &read);
    story.refused("open", &[("pouch", &pouch)]);
    story.act("apart", &[("pouch", &pouch)]);
    assert_eq!(story.pouches(SetState::SetAside).len(), 1);
}

#[test]
fn one_wet_pouch_is_set_aside_and_dry_later_is_still_wet() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(3);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    story.drop_file(&record(GOOD));
    let wet = story.pouches(SetState::ToCheck)[1].pouch.to_string();
    let look = [("run", named.as_str()), ("marks", "all"), ("dry", "not"), ("wet", &wet)];
    story.act("look", &look);
    assert_eq!(story.pouches(SetState::SetAside).len(), 1);
    assert_eq!(story.pouches(SetState::Ready).len(), 0, "look at all again first");
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 2);
    assert_eq!(story.pouches(SetState::SetAside)[0].pouch.to_string(), wet);
}

#[test]
fn undoing_a_release_is_setting_aside_and_a_tap_twice_is_one_act() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    let act = id();
    let look = [
        ("act", act.as_str()),
        ("sign", &story.sign),
        ("run", &run),
        ("marks", "all"),
        ("dry", "all"),
    ];
    assert_eq!(story.salon.post("/act/look", &look), Some(303));
    assert_eq!(story.salon.post("/act/look", &look), Some(303));
    assert_eq!(story.pouches(SetState::Ready).len(), 1);
    post(&story.salon, "/act/undo", &[("undo", &act)]);
    assert_eq!(story.pouches(SetState::Ready).len(), 0);
    assert_eq!(story.pouches(SetState::SetAside).len(), 1);
}

#[test]
fn a_record_that_fits_no_run_is_kept_unclaimed_and_comes_twice_only_once() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let file = record(GOOD);
    let unclaimed = || story.book.read(|view| view.taken_unclaimed()).expect("records");
    story.drop_file(&file);
    story.drop_file(&file);
    assert_eq!(unclaimed().len(), 1);
    // A longer version that begins with the same bytes replaces it; both are kept.
    let lines: Vec<&str> = file.lines().collect();
    let other = home.path().join("book2");
    let story = Story::begin(&other);
    let shorter = lines[..300].join("\n") + "\n";
    story.drop_file(&shorter);
    story.drop_file(&file);
    let kept = story.book.read(|view| view.taken_unclaimed()).expect("records");
    assert_eq!(kept.len(), 1);
    assert_eq!(kept[0].outcome, Some(Outcome::Lethal));
    let hash = logbook::drawer::record_hash(shorter.as_bytes());
    let replaced = story.book.read(|view| view.taken(hash)).expect("the shorter one");
    assert!(replaced[0].replaced_by.is_some());
}

#[test]
fn a_machine_without_files_is_read_off_and_wants_an_inner_mark() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(2);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    let read = [
        ("run", named.as_str()),
        ("lowest", "134,4"),
        ("minutes", "4"),
        ("pressure", "308"),
        ("unit", "kPa-abs"),
    ];
    story.act("read-off", &read);
    assert_eq!(story.run(run).outcome, Some(Outcome::Lethal));
    story.act("look", &[("run", &named), ("marks", "all"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 0, "the inner mark was not asked for");
    story.act("look", &[("run", &named), ("marks", "all"), ("inner", "yes"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 2);
}

#[test]
fn a_mark_that_did_not_turn_at_a_chair_stops_all_of_its_run() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(3).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    let pouch = story.pouches(SetState::Ready)[0].pouch.to_string();
    story.act("set-aside", &[("pouch", &pouch), ("why", "mark")]);
    assert_eq!(story.pouches(SetState::SetAside).len(), 3);
    story.refused("lift", &[("pouch", &pouch), ("why", "mistake")]);
}

#[test]
fn one_wet_at_a_chair_is_that_pouch_and_a_second_is_all() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(3).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    let ready: Vec<_> =
        story.pouches(SetState::Ready).iter().map(|row| row.pouch.to_string()).collect();
    story.act("set-aside", &[("pouch", &ready[0]), ("why", "wet")]);
    assert_eq!(story.pouches(SetState::SetAside).len(), 1);
    story.act("set-aside", &[("pouch", &ready[1]), ("why", "wet")]);
    assert_eq!(story.pouches(SetState::SetAside).len(), 3);
}

#[test]
fn a_lifted_stop_is_looked_at_again_with_answers_given_now() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    let look = id();
    let all =
        [("act", &*look), ("sign", &*story.sign), ("run", &*run), ("marks", "all"), ("dry", "all")];
    assert_eq!(story.salon.post("/act/look", &all), Some(303));
    post(&story.salon, "/act/undo", &[("undo", &look)]);
    let pouch = story.pouches(SetState::SetAside)[0].pouch.to_string();
    story.act("lift", &[("pouch", &pouch), ("why", "mistake")]);
    assert_eq!(story.pouches(SetState::ToCheck).len(), 1);
    story.refused("look", &[("run", &run)]); // no answer is none
    story.act("look", &[("run", &run), ("inner", "yes")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 0, "old answers do not count");
    let both = [("run", &*run), ("marks", "all"), ("mark", &*pouch), ("dry", "all")];
    story.refused("look", &both);
    story.refused("look", &[("run", &run), ("marks", "all"), ("dry", "all"), ("dry", "not")]);
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 1);
}

#[test]
fn a_failed_reading_is_not_talked_round_by_a_record() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1);
    let named = run.to_string();
    story.act("unload", &[("run", &named)]);
    let mut read = vec![("run", &*named), ("lowest", "134"), ("minutes", "1"), ("pressure", "304")];
    story.refused("read-off", &read); // in which unit, nobody said
    read.push(("unit", "kPa-gauge"));
    story.refused("read-off", &read); // nor how high the salon lies
    read.pop();
    read.push(("unit", "kPa-abs"));
    story.act("read-off", &read);
    assert_eq!(story.run(run).outcome, Some(Outcome::NotLethal));
    story.drop_file(&record(GOOD));
    assert_eq!(story.run(run).outcome, Some(Outcome::NotLethal), "it stays unclaimed");
    let kept = story.book.read(|view| view.taken_unclaimed()).expect("records");
    let record = kept[0].record.to_string();
    story.refused("claim", &[("record", &record), ("cycle", "0"), ("run", &named)]);
}

#[test]
fn a_record_with_a_clock_far_from_the_run_is_not_claimed_by_hand() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    let year = Timestamp::now().strftime("%Y").to_string();
    story.drop_file(&record(GOOD).replace(&format!("{year}-"), "2019-"));
    let kept = story.book.read(|view| view.taken_unclaimed()).expect("records");
    let record = kept[0].record.to_string();
    story.refused("claim", &[("record", &record), ("cycle", "0"), ("run", &run)]);
}

#[test]
fn what_lies_open_in_a_mixed_run_is_for_use_at_once() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("wash", &[("count.bits", "1")]);
    story.act("pack", &[("kind", "bits"), ("count", "1"), ("wrap", "open")]);
    let run = story.start(1).to_string();
    story.act("unload", &[("run", &run)]);
    story.drop_file(&record(GOOD));
    story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
    assert_eq!(story.pouches(SetState::Ready).len(), 1);
    let open = story.pouches(SetState::UseNow);
    assert!(open.len() == 1 && open[0].use_until.is_some());
}

#[test]
fn an_undo_that_would_undo_something_else_is_refused() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    story.act("wash", &[("count.manicure", "1")]);
    let pack = id();
    let fields = [("act", &*pack), ("sign", &*story.sign), ("kind", "manicure"), ("count", "1")];
    assert_eq!(story.salon.post("/act/pack", &fields), Some(303));
    let pouch = story.pouches(SetState::Bagged)[0].pouch.to_string();
    story.act("start", &[("machine", &story.machine), ("pouch", &pouch), ("pouch", &pouch)]);
    story.refused("undo", &[("undo", &pack)]);
    assert_eq!(story.pouches(SetState::InMachine).len(), 1);
}

#[test]
fn forms_are_bounded_and_lead_nowhere_else() {
    let home = tempfile::tempdir().expect("a folder");
    let story = Story::begin(&home.path().join("book"));
    let many = vec![("count.manicure", "1"); 40_000];
    // The answer comes before all of the form was sent, so the sender may only see the line close.
    let status = story.salon.post("/act/wash", &many);
    assert!(status.is_none_or(|status| status == 413), "{status:?}");
    let kinds = story.book.read::<_, logbook::BookError>(|view| view.kinds()).expect("kinds");
    assert!(kinds.iter().all(|kind| kind.washed == 0), "nothing of it was written");
    let clock = [("machine", &*story.machine), ("ahead", "-9223372036854775808")];
    story.refused("machine-clock", &clock);
    for elsewhere in
        ["//evil.example", "/\\evil.example", "/\t/evil.example", "https://evil.example"]
    {
        let fields = [("language", "vi"), ("back", elsewhere)];
        assert_eq!(story.salon.location("/language", &fields), "/", "{elsewhere:?}");
    }
    assert_eq!(story.salon.location("/language", &[("back", "/run/1?did=2")]), "/run/1?did=2");
}
