//! The demo's spore tests: a good one in each machine last week, one that waits for its answer.

use super::{Script, Step};
use crate::acts::{self, Refusal};
use logbook::fact::Known;
use measure::{Instant, Span};
use release::spores::Says;

impl Script<'_> {
    /// The tests of a day that lies so many days back and whose first run begins at `begin`.
    pub(super) fn plan_spores(&mut self, days: i64, begin: Instant) {
        let later = |minutes| begin + Span::from_minutes(minutes);
        match days {
            6 => self.steps.extend([
                (later(2), Step::PlaceTest(1)),
                (later(22), Step::PlaceTest(2)),
                (later(24 * 60), Step::ReadTest(1)),
                (later(24 * 60 + 3), Step::ReadTest(2)),
            ]),
            1 => self.steps.push((later(22), Step::PlaceTest(2))),
            _ => {}
        }
    }

    pub(super) fn place_test(&mut self, at: Instant, number: u32) -> Result<(), Refusal> {
        let machines = self.app.read(|view| view.machines())?;
        let machine = machines.into_iter().find(|machine| machine.number == number);
        let machine = machine.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
        let placed = acts::PlaceTest {
            machine: machine.machine,
            run: machine.running,
            control: true,
            lot: Some("lot 41, use by 30 JUN 2027".to_owned()),
        };
        self.act(at, Known::Tapped, |view, draft| acts::place_test(view, draft, placed))
    }

    pub(super) fn read_test(&mut self, at: Instant, number: u32) -> Result<(), Refusal> {
        let waiting = self.app.read(|view| {
            let machines = view.machines()?;
            let tests = view.spore_tests(20)?;
            Ok(tests.into_iter().find(|test| {
                let known = machines.iter().find(|machine| machine.machine == test.machine);
                test.says() == Says::Waiting && known.is_some_and(|known| known.number == number)
            }))
        })?;
        let test = waiting.ok_or_else(|| Refusal::rule("refused-no-such-test"))?.test;
        let read = acts::ReadTest { test, grew: false, control_grew: Some(true), now: at };
        self.act(at, Known::Read, |view, draft| acts::read_test(view, draft, read))
    }
}
