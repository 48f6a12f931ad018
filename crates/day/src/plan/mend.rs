//! Mending a plan in the middle of the day.

use super::answer::{Plan, Run};
use super::decode::{Decoder, Genome, Wish};
use super::later::Rest;
use super::order::{Criteria, MENDING};
use super::problem::{MOST_KINDS, Unusable};
use super::search::{Chain, Found, Manner};
use super::table::Table;

/// A mended plan for the rest of a day.
#[derive(Debug, Clone)]
pub struct Mended {
    /// The plan, in the slots of the rest.
    pub plan: Plan,
    /// All that it comes to, [`super::Criterion::Changed`] among it.
    pub criteria: Criteria,
    /// Runs that were not planned, indices into the plan.
    pub new: Vec<usize>,
    /// Planned runs that are gone.
    pub dropped: Vec<Run>,
    /// Days that were tried.
    pub tried: u64,
}

/// Steps of each chain, one after the other: first close to what was planned, then further away and
/// for longer.
const STEPS: [u32; 10] = [1_000, 1_000, 2_000, 2_000, 3_000, 3_000, 3_000, 3_000, 4_000, 4_000];

/// Mends what was planned for the rest of a day: nobody waits who need not, tomorrow begins well,
/// and as much as can stays as it was ([`MENDING`]).
///
/// It ends after a fixed number of steps, sooner where nobody waits and nothing had to be changed,
/// and when `stop` says so.
///
/// # Errors
/// A rest that [`super::Problem::check`] does not take.
pub fn mend(rest: &Rest, stop: &dyn Fn() -> bool) -> Result<Mended, Unusable> {
    rest.problem.check()?;
    let table = Table::new(&rest.problem);
    let starts = [as_loaded(rest, &table), as_asked(&rest.planned), Genome::default()];
    let mut tried = 0;
    let mut best: Option<Found> = None;
    for (chain, steps) in (0_u32..).zip(STEPS) {
        let good = best.as_ref().is_some_and(|b| b.values[..2] == [0, 0]);
        if good && (chain >= 4 || best.as_ref().is_some_and(|b| b.values[2] == 0))
            || (chain > 0 && stop())
        {
            break;
        }
        let manner = Manner::of_mending(chain);
        let from = match (&best, chain) {
            (Some(_), 1) => starts[1].clone(),
            (Some(_), _) if manner.fresh => starts[2].clone(),
            (Some(best), _) => best.genome.clone(),
            (None, _) => starts[0].clone(),
        };
        let mut chain = Chain::new(&table, MENDING, manner, u64::from(chain), from);
        chain.keep_close_to(&rest.planned);
        chain.anneal(steps, stop);
        tried += chain.count;
        if best.as_ref().is_none_or(|b| chain.best.values < b.values) {
            best = Some(chain.best);
        }
    }
    let mut decoder = Decoder::new(&table);
    decoder.planned(&rest.planned);
    let genome = best.map(|best| exchanged(&mut decoder, best, stop)).unwrap_or_default();
    let (plan, criteria) = decoder.plan(&genome, MENDING);
    let same = |a: &Run, b: &Run| (a.start, a.machine, a.cycle) == (b.start, b.machine, b.cycle);
    let new = |run: &Run| !rest.planned.iter().any(|planned| same(planned, run));
    let dropped = rest.planned.iter().filter(|&run| !plan.runs.iter().any(|kept| same(kept, run)));
    Ok(Mended {
        new: (0..plan.runs.len()).filter(|&i| new(&plan.runs[i])).collect(),
        dropped: dropped.cloned().collect(),
        plan,
        criteria,
        tried,
    })
}

/// As long as it helps: leaves somebody without a set who counts less, so that it is there for one
/// who counts more and comes later.
fn exchanged(decoder: &mut Decoder<'_>, mut best: Found, stop: &dyn Fn() -> bool) -> Genome {
    let table = decoder.table;
    let mut better = best.values[0] > 0;
    while better && !stop() {
        better = false;
        decoder.decode(&best.genome, MENDING);
        // Whoever goes without does so on purpose now, so that a set that is left over goes on.
        let mut without: Vec<u16> = (decoder.unmet.iter())
            .flat_map(|&(need, n)| std::iter::repeat_n(need as u16, n as usize))
            .collect();
        without.sort_unstable();
        let pairs =
            (0..without.len()).flat_map(|at| (0..table.needs.len()).map(move |light| (at, light)));
        for (at, light) in pairs {
            let (heavy, lighter) = (table.needs[usize::from(without[at])], table.needs[light]);
            let refused = without.iter().filter(|&&r| usize::from(r) == light).count();
            let fits = lighter.kind == heavy.kind
                && lighter.weight < heavy.weight
                && refused < lighter.n as usize;
            if !fits {
                continue;
            }
            let mut trial = Genome { refused: without.clone(), ..best.genome.clone() };
            trial.refused[at] = light as u16;
            trial.refused.sort_unstable();
            let values = decoder.decode(&trial, MENDING).in_order(MENDING);
            if values < best.values {
                best = Found { values, genome: trial };
                better = true;
                break;
            }
        }
    }
    best.genome
}

/// The plan as it was: no more of each kind than was planned, and the same go without.
fn as_loaded(rest: &Rest, table: &Table) -> Genome {
    let wishes = wishes(&rest.planned, |run| {
        let mut most = [0; MOST_KINDS];
        most.iter_mut().zip(&run.load).for_each(|(m, &n)| *m = u8::try_from(n).unwrap_or(u8::MAX));
        most
    });
    let refused = table.needs.iter().enumerate().flat_map(|(i, need)| {
        let unmet = rest.unmet.iter().filter(|u| (u.service, u.kind) == (need.service, need.kind));
        std::iter::repeat_n(i as u16, unmet.map(|u| u.n.min(need.n)).sum::<u32>() as usize)
    });
    Genome { refused: refused.collect(), wishes }
}

/// The planned runs, loaded with what is needed now.
fn as_asked(planned: &[Run]) -> Genome {
    Genome { wishes: wishes(planned, |_| [u8::MAX; MOST_KINDS]), refused: Vec::new() }
}

fn wishes(planned: &[Run], most: impl Fn(&Run) -> [u8; MOST_KINDS]) -> Vec<Wish> {
    let wish = |run: &Run| Wish {
        start: run.start as u16,
        machine: run.machine as u8,
        cycle: run.cycle as u8,
        most: most(run),
    };
    let mut wishes: Vec<Wish> = planned.iter().map(wish).collect();
    wishes.sort_unstable();
    wishes
}
