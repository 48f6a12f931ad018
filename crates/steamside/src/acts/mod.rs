//! The acts: one file each. An act is (state, intent) to facts, inside one write transaction.
//!
//! Forms post to `/act/NAME`. Every form carries `act` (an id made when the page was made, so that
//! a double tap is written once), `back` (where to go afterwards) and `head` (the newest fact that
//! the page showed); most carry `sign` (the person's id). Times in a form are the salon's.
//!
//! | path | fields |
//! |---|---|
//! | `/act/wash` | `sign`, then `count.KIND` = number for each kind |
//! | `/act/pack` | `sign`, `kind`, `count`, `wrap` = `pouched`, `open`; `hollow` = `yes` or absent |
//! | `/act/start` | `sign`, `machine`, `programme`, `pouch` (many), `over` = `yes`: against the advice |
//! | `/act/unload` | `sign`, `run` |
//! | `/act/take` | multipart: `file` (many), `machine` and `run` optional |
//! | `/act/claim` | `sign`, `record`, `cycle`, `run` |
//! | `/act/read-off` | `sign`, `run`, `lowest`, `minutes`, `seconds`, `pressure` (may be empty), `unit` = `kPa-abs`, `kPa-gauge`, `bar-abs`, `bar-gauge`, `psi-gauge`; `degrees` = `C` or `F` |
//! | `/act/look` | `sign`, `run`, `marks` = `all` or `not`, `mark` (many pouches), `inner` = `yes` or `no` (only asked where the verdict rests on a reading), `dry` = `all` or `not`, `wet`, `torn`, `dropped` (many pouches each), `counted` = how many pouches, where a count is asked for |
//! | `/act/set-aside` | `sign` (may be absent), `run` or `pouch` (many), `why` |
//! | `/act/lift` | `sign`, `pouch` (many), `why` = `mistake`, `paperwork` |
//! | `/act/open` | `sign`, `code` or `pouch`, `chair` (may be empty) |
//! | `/act/apart` | `sign`, `pouch` (many) |
//! | `/act/accept-plan` | `sign`, `from`, `to`, `run` (many), as the page of the plan packs them |
//! | `/act/undo` | `undo` = the act to take back |
//! | `/act/machine` | `number`, `air` = `vacuum`, `gravity`, `not-known`, `files` = `yes` or absent, `most` (may be empty) |
//! | `/act/machine-out`, `/act/machine-back` | `sign`, `machine` |
//! | `/act/machine-clock` | `sign`, `machine`, `ahead` = minutes, may be negative |
//! | `/act/machine-reads` | `sign`, `machine`, `temperature` = `celsius`, `fahrenheit`, `kelvin`; `pressure` = `kPa`, `bar`, ...; `reference` = `absolute`, `gauge`; `dates` = `day-first`, `month-first`; `altitude` = metres. An empty one stays as it was said before; with `whole` = `yes` it is taken back. `record` and `cycle`: an unclaimed one to judge again |
//! | `/act/first-run` | `machines`, `person` = its id, `sign-text`, `running` = `yes` or absent; only in an empty book |
//! | `/act/person` | `sign-text` |
//! | `/act/sets` | `sign`, `kind`, `owned`, `used`, `washed` |
//! | `/act/visit` | `service`, `start` = a moment in ms, `chair` (may be empty) |
//! | `/act/visit-late` | `visit`, `later` = minutes |
//! | `/act/visit-missed`, `/act/visit-off` | `visit` |
//! | `/act/visit-is` | `visit`, `service` |
//! | `/act/learn` | for each question `N` from 0: `N.service` = an id, `none` or absent (not now); `N.pick` = which phrase, `N.phrase.I`, `N.visits.I`; `N.words` = typed instead; `N.visits` |
//! | `/act/closed` | `from`, `to` = days, the second one the first that is open; `closed` = `yes`, `no` |
//! | `/act/bring` | multipart: `file`, a calendar or a table of appointments |
//! | `/act/service` | `service` (absent: a new one), `word`, `length` = minutes, `weight`, `basin`, `need.KIND` |
//! | `/act/service-ended` | `service` |
//! | `/act/kind-figures` | `kind`, `mass`, `hand`, `pouch`, `target`, `spares` |
//! | `/act/machine-figures` | `machine`, `warm-window`, and for each programme `N` from 0: `N.programme` (empty: none), `N.cold`, `N.warm`, `N.mass`, `N.drying` = `none`, `short`, `full`; `N.wrapped` = `yes`; `N.load`, `N.unload`, `N.cool`, `N.cost-cold`, `N.cost-warm` |
//! | `/act/day-rules` | `passive`, `immediate`, `order` = `salon`, `comparing` |
//! | `/act/shift` | `person`, `day`, `from`, `to`, `lunch-from`, `lunch-to` (both may be empty), `weeks` |
//! | `/act/shift-ended` | `shift` |
//! | `/act/implement` | `word`, `form`, `length`, `width`, `thick` = mm, `mass` = g, `material`, `hinged`, `hollow`, `single` = `yes` or absent, `steam`, `ultrasonic`, `most-c` = °C |
//! | `/act/implement-ended` | `word` |
//! | `/act/set-of` | `kind`, and `piece.IMPLEMENT` = number |
//! | `/act/pouch-size` | `word`, `width`, `length`, `seam`, `fold` = mm, `mass` = g |
//! | `/act/pouch-size-ended` | `word` |
//! | `/act/inside` | `machine`, `chamber` = `round`, `box`; `across`, `high`, `depth` = mm; for each tray `N` from 0: `N.width`, `N.depth`, `N.height`, `N.mass`; `places`, `pitch`, `rack-height`, `rack-depth`, `rack-mass` (no places: no rack); `pattern`, `face`, `wall`, `between`, `page` (may be empty) |
//! | `/act/tray-weighed` | `grams`, `empty` (may be empty), `count.KIND`, `wrap` = `pouched`, `open` |
//! | `/act/programme` | `machine`, `programme`, `set`, `hold`, `pulses`, `dry-min`, `dry-kpa` (may be empty), `pouches`, `hollow` = `yes` or absent, `most-pouched`, `most-open`, `page` (each may be empty: not known) |
//! | `/act/station-parted` | `station` |
//! | `/act/seen` | `sign`, `seq` = the place of an entry that did not fit |
//! | `/kept/NAME` | as `/act/NAME`, for what was tapped while the station was cut off, with `kept-ago` = milliseconds; answers in JSON |
//! | `/pair` | `code`, `what` = `tablet`, `phone`, `wall`, `desk`, `name` (may be empty) |
//! | `/act/hand-over` | `sign`, `to` (may be empty), `drying`, `note` (may be empty) |
//! | `/act/take-over` | `sign`, `given` = the act that offered it |
//! | `/act/correct` | `sign`, `old` = the act, and as it was in truth: `count.KIND`; or `kind`, `owned`, `used`, `washed`; or `chair`; or `in` (many pouches that were in the run); or `grams`, `empty` |
//! | `/act/gap` | `from`, `to` = moments in ms, `why` = `closed`, `holiday`, `power`, `nothing`, `paper`, `forgotten` |
//! | `/act/person-is` | `person`, `language` (may be empty), `learns`, `in-charge`, `teaches` = `yes` or absent |
//! | `/act/record-shows` | `language`, `units` = `metric`, `us` |
//! | `/act/later-NAME` | `sign`, `on` = a day, `at` = a time, as they stand on the paper; `wash`: as above; `run`: `machine`, `programme`, `end-on`, `end-at`, `pouch` (many), `kind`, `count` = packed on paper; `look`: as `read-off` and `look`; `open`: as above; `chore`: `chore`, `about` = `salon` or a machine, `found` = `fine`, `not-fine`; `closed`: only the day |
//! | `/act/practice-clock` | only in a practice book: `times` = 1 to 30 (absent: as before), `later` = minutes |
//! | `/act/card-deal` | only in a practice book: `card`, `learner` (may be absent) |
//! | `/act/card-end` | only in a practice book: `dealt` = the act that dealt it |
//! | `/act/spore-place` | `sign`, `machine`, `run` (may be empty), `control` = `yes` or absent, `lot` (may be empty) |
//! | `/act/spore-start` | `sign`, `test` = the failed one, `programme` (may be empty), `control` |
//! | `/act/spore-post` | `sign`, `test`, `days` |
//! | `/act/spore-read` | `test`, `grew` = `yes`, `no`; `control-grew` = `yes`, `no`, `none`; `sign` where none grew |
//! | `/act/spore-lost` | `test` |
//! | `/act/spore-back` | `sign`, `test` = the failed one |
//! | `/act/thing` | `what` = `jar`, `basin`, `bath` |
//! | `/act/thing-ended`, `/act/not-used` | `thing` |
//! | `/act/jar-set` | `jar`, `contact` = minutes, `lasts` = hours (may be empty: to the end of the day), `label` (may be empty) |
//! | `/act/jar-mixed`, `/act/jar-in`, `/act/jar-emptied` | `sign`, `jar` |
//! | `/act/basin-set` | `basin`, `wet` = minutes |
//! | `/act/basin-wet` | `sign`, `basin`, `after` = `client`, `day`, `week` |
//! | `/act/basin-drained` | `sign`, `basin` |
//! | `/act/chore-set` | `chore`, `about` = `salon`, `machine.ID`, `thing.ID`; `days`, `runs`, `page` (each may be empty: not known), `part` = `opening`, `closing`, `any`, `takes` = minutes, `stops` = `yes` or absent |
//! | `/act/chore-ended` | `chore`, `about` |
//! | `/act/chore-done` | `sign`, `chore`, `about`, `not-fine` = `yes` or absent |
//! | `/act/chore-left` | `chore`, `about`, `why` = `closed`, `not-used` |
//! | `/act/stock-set` | `item`, `used-by` = `pouch`, `run`, `test`, `counting`; `least` |
//! | `/act/stock-ended` | `item` |
//! | `/act/stock-counted`, `/act/stock-bought` | `item`, `count` |
//! | `/language` | `language` = `en`, `vi`, `es` |

mod accept;
mod apart;
mod chores;
mod claim;
mod correct;
mod first;
mod gap;
mod hand_over;
mod lift;
mod loading;
mod look;
mod machine_reads;
mod machines;
mod open;
mod pack;
mod people;
mod practice;
mod read_off;
mod refusal;
mod rota;
mod seen;
mod services;
mod set_aside;
mod sets;
mod spores;
mod start;
mod stations;
mod undo;
mod unload;
mod upkeep;
mod visits;
mod wash;

pub use accept::{Accept, accept};
pub use apart::apart;
pub use chores::{
    buy_stock, count_stock, do_chore, end_chore, end_stock, leave_chore, set_chore, set_stock,
};
pub use claim::{Claim, claim, write_verdict};
pub use correct::{Correctable, InTruth, correct, correctable};
pub use first::{First, first};
pub use gap::{box_was_off, explain};
pub use hand_over::{HandOver, LONGEST_NOTE, MOST_DRYING, hand_over, take_over};
pub use lift::{Lift, lift};
pub use loading::{
    WeighTray, end_implement, end_pouch, set_implement, set_inside, set_of, set_pouch,
    set_programme, weigh_tray,
};
pub use look::{Look, asks_count, look, rests_on_reading};
pub use machine_reads::{MachineReads, is_open_question, machine_reads};
pub use machines::{
    AddMachine, SetClock, add_machine, machine_back, machine_out, set_machine_clock,
};
pub use open::{Open, What, may_open, open};
pub use pack::{Pack, pack};
pub use people::{PersonIs, join, leave, person_is, record_shows};
pub use practice::{PracticeClock, deal_card, end_card, practice_clock};
pub use read_off::{ReadOff, read_off};
pub use refusal::Refusal;
pub use rota::{SetShift, end_shift, set_shift};
pub use seen::seen;
pub use services::{
    SetService, end_service, set_kind_figures, set_machine_figures, set_rules, set_service,
};
pub use set_aside::{SetAside, set_aside};
pub use sets::{Count, count};
pub use spores::{
    PlaceTest, ReadTest, StartTest, end_freeze, frozen, lose_test, place_test, post_test,
    read_test, start_test,
};
pub use start::{Start, start};
pub use stations::{LONGEST_NAME, Pair, pair, part};
pub use undo::{Undo, can_be_undone, undo};
pub use unload::unload;
pub use upkeep::{
    SetJar, add_thing, drain_basin, empty_jar, end_thing, into_jar, mix_jar, not_used, set_basin,
    set_jar, wet_basin,
};
pub use visits::{Answer, Book, book, call_off, closed, late, learn, missed, visit_is};
pub use wash::wash;
