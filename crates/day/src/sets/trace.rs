//! What the policy did, as a plan that can be audited.

use super::choose::Choice;
use crate::plan::{HandWork, Immediate, Plan, Run, Unmet};

/// What was done on one day; visitors by their number in the day.
#[derive(Debug, Clone, Default)]
pub(super) struct Trace {
    /// Machine, start and the rest.
    pub runs: Vec<(usize, usize, Choice)>,
    /// Visitor, kind, number.
    pub unmet: Vec<(u16, usize, u32)>,
    /// Run, visitor, kind, number.
    pub at_once: Vec<(usize, u16, usize, u32)>,
    /// Kind, slot, minutes.
    pub work: Vec<(usize, usize, i32)>,
    /// Sets sterilised for use at once that nobody came for.
    pub spoilt: u32,
}

impl Trace {
    /// The plan that this comes to, in the numbers of the day's own problem.
    pub fn plan(&self, kinds: usize) -> Plan {
        let runs = self.runs.iter().map(|&(machine, start, run)| Run {
            machine,
            cycle: run.cycle,
            warm: run.warm,
            start,
            end: run.end,
            unload: run.unload,
            ready: run.ready,
            load: run.load[..kinds].iter().map(|&n| u32::from(n)).collect(),
        });
        let unmet =
            self.unmet.iter().map(|&(service, kind, n)| Unmet { service: service.into(), kind, n });
        let at_once = self.at_once.iter().map(|&(run, service, kind, n)| Immediate {
            run,
            service: service.into(),
            kind,
            n,
        });
        let work = self.work.iter().map(|&(kind, slot, minutes)| HandWork {
            kind,
            slot,
            minutes: minutes.unsigned_abs(),
        });
        Plan {
            runs: runs.collect(),
            unmet: unmet.collect(),
            immediate: at_once.collect(),
            hand_work: work.collect(),
        }
    }
}
