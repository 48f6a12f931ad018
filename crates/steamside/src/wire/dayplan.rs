//! The JSON form `dayplan-1`: a day to plan, and its plan.

use day::plan::{
    Answer, Carry, Criterion, Cycle, Drying, Kind, Machine, Plan, Problem, Service, Unusable,
};
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

#[derive(Deserialize)]
struct Instance {
    format: String,
    #[serde(default)]
    name: String,
    slot_min: u32,
    slots: usize,
    passive_min: u32,
    immediate_window_min: u32,
    kinds: Vec<KindForm>,
    machines: Vec<MachineForm>,
    services: Vec<ServiceForm>,
    hands: Vec<u32>,
    #[serde(default)]
    carry: CarryForm,
}

#[derive(Deserialize)]
struct KindForm {
    id: String,
    owned: u32,
    ready: u32,
    mass_g: u32,
    area: u32,
    hand_min: u32,
    target_ready: u32,
    pouch_cost: u32,
}

#[derive(Deserialize)]
struct MachineForm {
    id: String,
    warm_window_min: u32,
    #[serde(default)]
    free_from_slot: usize,
    #[serde(default = "never")]
    warm_until_slot: i64,
    cycles: Vec<CycleForm>,
}

fn never() -> i64 {
    -1
}

#[derive(Deserialize)]
struct CycleForm {
    id: String,
    dur_cold_min: u32,
    dur_warm_min: u32,
    max_mass_g: u32,
    max_area: u32,
    drying: DryingForm,
    wrapped: bool,
    load_min: u32,
    unload_min: u32,
    cool_min: u32,
    cost_cold: u32,
    cost_warm: u32,
}

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum DryingForm {
    None,
    Short,
    Full,
}

#[derive(Deserialize)]
struct ServiceForm {
    id: String,
    start_min: u32,
    end_min: u32,
    weight: u32,
    needs: BTreeMap<String, u32>,
}

type Later = BTreeMap<String, Vec<(usize, u32)>>;

#[derive(Deserialize, Default)]
#[serde(default)]
struct CarryForm {
    dirty: BTreeMap<String, u32>,
    worked: BTreeMap<String, u32>,
    loadable: BTreeMap<String, u32>,
    dirty_at: Later,
    loadable_at: Later,
    ready_at: Later,
}

/// Reads a day.
///
/// # Errors
/// A sentence with the line where the JSON breaks off, or with what does not fit.
pub fn read(bytes: &[u8]) -> Result<Problem, String> {
    let form: Instance = serde_json::from_slice(bytes)
        .map_err(|e| format!("line {}: this is no day to plan: {e}", e.line()))?;
    if form.format != "dayplan-1" {
        return Err(format!("line 1: the format is \"{}\"; only dayplan-1 is read", form.format));
    }
    if form.slot_min == 0 {
        return Err("line 1: a slot must be longer than no time".to_owned());
    }
    one_of_each("service", form.services.iter().map(|s| &s.id))?;
    one_of_each("kind", form.kinds.iter().map(|k| &k.id))?;
    one_of_each("machine", form.machines.iter().map(|m| &m.id))?;
    let problem = problem(form)?;
    problem.check().map_err(|Unusable(why)| format!("line 1: the day cannot be planned: {why}"))?;
    Ok(problem)
}

/// A plan names things by their ids: two alike could not be told apart.
fn one_of_each<'a>(what: &str, ids: impl Iterator<Item = &'a String>) -> Result<(), String> {
    let mut seen = BTreeSet::new();
    for id in ids {
        if !seen.insert(id) {
            return Err(format!("line 1: the {what} \"{id}\" stands there twice"));
        }
    }
    Ok(())
}

fn problem(form: Instance) -> Result<Problem, String> {
    let ids: Vec<String> = form.kinds.iter().map(|k| k.id.clone()).collect();
    let index = |id: &String| {
        ids.iter()
            .position(|known| known == id)
            .ok_or_else(|| format!("line 1: the kind \"{id}\" is needed but not listed"))
    };
    let slot = |minutes: u32| (minutes / form.slot_min) as usize;
    let mut services = Vec::with_capacity(form.services.len());
    for s in form.services {
        let needs = s.needs.iter().map(|(id, &n)| Ok((index(id)?, n)));
        services.push(Service {
            start: slot(s.start_min),
            end: slot(s.end_min),
            weight: s.weight,
            needs: needs.collect::<Result<_, String>>()?,
            id: s.id,
        });
    }
    let carry = carry(&form.carry, &form.kinds, index)?;
    Ok(Problem {
        name: form.name,
        slot_min: form.slot_min,
        slots: form.slots,
        passive_min: form.passive_min,
        immediate_window_min: form.immediate_window_min,
        kinds: form.kinds.into_iter().map(kind).collect(),
        machines: form.machines.into_iter().map(machine).collect(),
        services,
        hands: form.hands,
        carry,
    })
}

fn carry(
    form: &CarryForm,
    kinds: &[KindForm],
    index: impl Fn(&String) -> Result<usize, String>,
) -> Result<Vec<Carry>, String> {
    let mut carry: Vec<Carry> = kinds
        .iter()
        .map(|k| Carry { dirty: k.owned.saturating_sub(k.ready), ..Carry::default() })
        .collect();
    for (id, &n) in &form.dirty {
        carry[index(id)?].dirty = n;
    }
    for (id, &n) in &form.worked {
        carry[index(id)?].worked = n;
    }
    for (id, &n) in &form.loadable {
        carry[index(id)?].loadable = n;
    }
    for (id, list) in &form.dirty_at {
        carry[index(id)?].dirty_at.clone_from(list);
    }
    for (id, list) in &form.loadable_at {
        carry[index(id)?].loadable_at.clone_from(list);
    }
    for (id, list) in &form.ready_at {
        carry[index(id)?].ready_at.clone_from(list);
    }
    Ok(carry)
}

fn kind(k: KindForm) -> Kind {
    Kind {
        id: k.id,
        owned: k.owned,
        ready: k.ready,
        mass_g: k.mass_g,
        area: k.area,
        hand_min: k.hand_min,
        target_ready: k.target_ready,
        pouch_cost: k.pouch_cost,
    }
}

fn machine(m: MachineForm) -> Machine {
    Machine {
        id: m.id,
        warm_window_min: m.warm_window_min,
        free_from: m.free_from_slot,
        warm_until: usize::try_from(m.warm_until_slot).ok(),
        cycles: m.cycles.into_iter().map(cycle).collect(),
    }
}

fn cycle(c: CycleForm) -> Cycle {
    Cycle {
        id: c.id,
        dur_cold_min: c.dur_cold_min,
        dur_warm_min: c.dur_warm_min,
        max_mass_g: c.max_mass_g,
        max_area: c.max_area,
        drying: match c.drying {
            DryingForm::None => Drying::None,
            DryingForm::Short => Drying::Short,
            DryingForm::Full => Drying::Full,
        },
        wrapped: c.wrapped,
        load_min: c.load_min,
        unload_min: c.unload_min,
        cool_min: c.cool_min,
        cost_cold: c.cost_cold,
        cost_warm: c.cost_warm,
    }
}

/// The plan, in the names of its day.
pub fn plan(problem: &Problem, plan: &Plan) -> Value {
    let service = |i: usize| &problem.services[i].id;
    let kind = |i: usize| &problem.kinds[i].id;
    let runs = plan.runs.iter().map(|run| {
        let machine = &problem.machines[run.machine];
        let load = run.load.iter().enumerate().filter(|&(_, &n)| n > 0);
        json!({
            "machine": machine.id,
            "cycle": machine.cycles[run.cycle].id,
            "temp": if run.warm { "warm" } else { "cold" },
            "start_slot": run.start,
            "end_slot": run.end,
            "unload_slot": run.unload,
            "ready_slot": run.ready,
            "load": load.map(|(k, &n)| (kind(k).clone(), n)).collect::<BTreeMap<_, _>>(),
        })
    });
    json!({
        "instance": problem.name,
        "runs": runs.collect::<Vec<_>>(),
        "unmet": plan.unmet.iter().map(|u| json!({
            "service": service(u.service), "kind": kind(u.kind), "n": u.n,
        })).collect::<Vec<_>>(),
        "immediate": plan.immediate.iter().map(|i| json!({
            "run": i.run, "service": service(i.service), "kind": kind(i.kind), "n": i.n,
        })).collect::<Vec<_>>(),
        "hand_work": plan.hand_work.iter().map(|w| json!({
            "kind": kind(w.kind), "slot": w.slot, "minutes": w.minutes,
        })).collect::<Vec<_>>(),
    })
}

/// What `steamside plan` prints: the plan, what it comes to, what is proven, and a sentence a run.
/// `salon` is the order where it is not the one of `dayplan-1`.
pub fn answer(
    problem: &Problem,
    answer: &Answer,
    explain: &[String],
    seconds: f64,
    salon: Option<&[Criterion]>,
) -> Value {
    let mut out = plan(problem, &answer.plan);
    out["objective"] = json!(answer.objective);
    out["bound"] = json!(answer.bound);
    out["seconds"] = json!((seconds * 1000.0).round() / 1000.0);
    out["explain"] = json!(explain);
    if let Some(order) = salon {
        out["order"] = json!(order.iter().map(|which| which.name()).collect::<Vec<_>>());
        out["salon"] = json!(order.iter().map(|&which| answer.criteria[which]).collect::<Vec<_>>());
    }
    out
}
