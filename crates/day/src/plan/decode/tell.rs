//! The plan of a day that was lived through.

use super::super::answer::{Immediate, Plan, Run, Unmet};
use super::super::order::{Criteria, Criterion};
use super::super::problem::{Drying, MOST_KINDS};
use super::{Decoder, Genome, Made};

impl Decoder<'_> {
    /// The plan itself.
    pub fn plan(&mut self, genome: &Genome, order: &[Criterion]) -> (Plan, Criteria) {
        self.washing.work = Some(Vec::new());
        self.dealt = Some(Vec::new());
        let sum = self.decode(genome, order);
        let hand_work = self.washing.work.take().unwrap_or_default();
        let dealt = self.dealt.take().unwrap_or_default();
        let table = self.table;
        let runs = self.made.iter().map(|made| Run {
            machine: usize::from(made.machine),
            cycle: usize::from(made.cycle),
            warm: made.warm,
            start: usize::from(made.start),
            end: usize::from(made.end),
            unload: usize::from(made.unload),
            ready: usize::from(made.ready),
            load: made.load[..table.kinds].iter().map(|&n| u32::from(n)).collect(),
        });
        let unmet = self.unmet.iter().map(|&(i, n)| {
            let need = table.needs[i];
            Unmet { service: need.service, kind: need.kind, n }
        });
        let immediate = self.deal(&dealt);
        (Plan { runs: runs.collect(), unmet: unmet.collect(), immediate, hand_work }, sum)
    }

    /// Which run each set that was used at once came from: the one whose time runs out first.
    fn deal(&self, dealt: &[(usize, usize, u32)]) -> Vec<Immediate> {
        let table = self.table;
        let mut left: Vec<(usize, &Made, [u16; MOST_KINDS])> = Vec::new();
        for (run, made) in self.made.iter().enumerate() {
            let cycle = &table.machines[usize::from(made.machine)].cycles[usize::from(made.cycle)];
            if cycle.drying == Drying::None {
                left.push((run, made, made.load));
            }
        }
        left.sort_by_key(|(_, made, _)| made.end);
        let mut immediate = Vec::new();
        for &(t, i, mut n) in dealt {
            let need = table.needs[i];
            for (run, made, rest) in &mut left {
                let open =
                    (usize::from(made.ready)..=usize::from(made.end) + table.window).contains(&t);
                let here = if open { n.min(u32::from(rest[need.kind])) } else { 0 };
                if here > 0 {
                    rest[need.kind] -= here as u16;
                    n -= here;
                    immediate.push(Immediate {
                        run: *run,
                        service: need.service,
                        kind: need.kind,
                        n: here,
                    });
                }
            }
        }
        immediate
    }
}
