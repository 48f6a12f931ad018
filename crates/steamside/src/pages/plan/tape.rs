//! The day as a drawing: a row a chair, a row a machine, and a line from each run to the first
//! appointment that needs it. The list above it says the same in words.

use crate::pages::when;
use crate::planning::agreed::Standing;
use crate::planning::today::Today;
use crate::web::Ctx;
use day::plan::{Run, When, Why};
use logbook::fact::PlannedRun;
use logbook::view::Appointment;
use maud::{Markup, html};
use measure::{Instant, Span};

/// Paper units: a slot is this wide, a row this high.
const SLOT: usize = 12;
const ROW: usize = 44;
/// Room for the names on the left and the hours on top.
const LEFT: usize = 132;
const TOP: usize = 36;
/// Most rows of chairs that are drawn.
const CHAIRS: usize = 12;

/// The drawing.
pub fn draw(ctx: &Ctx, today: &Today, standing: &Standing, why: &[Why]) -> Markup {
    let words = ctx.words();
    let seats = seats(today);
    let chairs = seats.iter().map(|seat| seat.0 + 1).max().unwrap_or(0).min(CHAIRS);
    let wide = LEFT + today.problem.slots * SLOT + 12;
    let high = TOP + (chairs + today.machines.len()) * ROW + 12;
    let label = words.tell(
        "plan-tape-alt",
        &[("visits", today.appointments.len().into()), ("runs", standing.plan.runs.len().into())],
    );
    html! {
        div class="tape" tabindex="0" role="region" aria-label=(words.say("plan-tape")) {
            svg viewBox=(format!("0 0 {wide} {high}")) width=(wide) height=(high) role="img" aria-label=(label) {
                (hours(ctx, today, high))
                @for chair in 0..chairs {
                    (row_name(chair, &words.tell("plan-chair", &[("chair", (chair + 1).into())])))
                }
                @for (m, (_, number)) in today.machines.iter().enumerate() {
                    (row_name(chairs + m, &words.tell("plan-machine", &[("number", (*number).into())])))
                }
                @for (seat, appointment) in seats.iter().filter(|seat| seat.0 < chairs) {
                    (visit(ctx, today, *seat, appointment))
                }
                @for why in why { (run(ctx, today, (standing, chairs), &seats, why)) }
                line class="tape-now" x1=(x(today, ctx.now)) y1="8" x2=(x(today, ctx.now)) y2=(high) {}
            }
        }
    }
}

/// Each appointment at its chair; where none is known, at the first that is free.
fn seats(today: &Today) -> Vec<(usize, &Appointment)> {
    let mut free: Vec<Instant> = Vec::new();
    let mut seats = Vec::new();
    for appointment in &today.appointments {
        let named = appointment.chair.and_then(|chair| usize::try_from(chair.checked_sub(1)?).ok());
        let seat = named.filter(|&chair| chair < CHAIRS).unwrap_or_else(|| {
            free.iter().position(|&until| until <= appointment.start).unwrap_or(free.len())
        });
        if free.len() <= seat {
            free.resize(seat + 1, Instant::from_millis(i64::MIN));
        }
        free[seat] = free[seat].max(appointment.end);
        seats.push((seat, appointment));
    }
    seats
}

fn x(today: &Today, at: Instant) -> usize {
    let minutes = (at - today.origin).minutes().max(0) as usize;
    LEFT + (minutes * SLOT / today.problem.slot_min as usize).min(today.problem.slots * SLOT)
}

fn y(row: usize) -> usize {
    TOP + row * ROW
}

fn hours(ctx: &Ctx, today: &Today, high: usize) -> Markup {
    // Full hours of the salon's clock; a zone may be off by half an hour.
    let full = |slot: &usize| when::clock_of(ctx, today.moment(*slot)).ends_with(":00");
    html! {
        @for slot in (0..=today.problem.slots).filter(full) {
            @let at = today.moment(slot);
            line class="tape-hour" x1=(x(today, at)) y1=(TOP) x2=(x(today, at)) y2=(high) {}
            text class="tape-text" x=(x(today, at)) y="24" text-anchor="middle" { (when::clock_of(ctx, at)) }
        }
    }
}

fn row_name(row: usize, name: &str) -> Markup {
    html! { text class="tape-text" x="4" y=(y(row) + 28) { (name) } }
}

fn visit(ctx: &Ctx, today: &Today, row: usize, appointment: &Appointment) -> Markup {
    let (from, to) = (x(today, appointment.start), x(today, appointment.end));
    let sets: u32 = appointment.needs.iter().map(|need| need.1).sum();
    let title = format!(
        "{} – {}",
        when::clock_of(ctx, appointment.start),
        when::clock_of(ctx, appointment.end)
    );
    html! {
        g {
            title { (title) }
            rect class="tape-visit" x=(from) y=(y(row) + 4) width=((to - from).max(4)) height=(ROW - 8) {}
            text class="tape-text" x=(from + 6) y=(y(row) + 28) { (sets) }
        }
    }
}

fn run(
    ctx: &Ctx,
    today: &Today,
    (standing, chairs): (&Standing, usize),
    seats: &[(usize, &Appointment)],
    why: &Why,
) -> Markup {
    let run = &standing.plan.runs[why.run];
    let row = chairs + run.machine;
    let (from, to) =
        (x(today, today.moment(run.start)), x(today, today.moment(run.unload.max(run.end))));
    let ready = x(today, today.moment(run.ready));
    let sets: u32 = run.load.iter().sum();
    let cycle = &today.problem.machines[run.machine].cycles[run.cycle].id;
    let letter = ctx
        .words()
        .say(&format!("cycle-{cycle}"))
        .chars()
        .next()
        .map_or(String::new(), |c| c.to_string());
    html! {
        g {
            title { (when::clock_of(ctx, today.moment(run.start))) " – " (when::clock_of(ctx, today.moment(run.ready))) }
            rect class="tape-run" x=(from) y=(y(row) + 4) width=((to - from).max(4)) height=(ROW - 8) {}
            rect class="tape-cool" x=(to) y=(y(row) + 4) width=(ready.saturating_sub(to)) height=(ROW - 8) {}
            text class="tape-text" x=(from + 6) y=(y(row) + 28) { (letter) " " (sets) }
            @if let Some(When::Slot(slot)) = why.when {
                @let at = today.moment(slot);
                @if let Some((seat, _)) = seats.iter().find(|seat| seat.1.start >= at && seat.0 < chairs && needs(today, seat.1, why)) {
                    path class="tape-flow" d=(format!("M{ready} {} L{} {}", y(row) + ROW / 2, x(today, at), y(*seat) + ROW - 4)) {}
                }
            }
        }
    }
}

/// Does a visit need one of the kinds that a run is for?
fn needs(today: &Today, appointment: &Appointment, why: &Why) -> bool {
    let kind = |k: usize| today.problem.kinds[k].id.as_str();
    why.missing.iter().any(|m| appointment.needs.iter().any(|need| need.0.word() == kind(m.0)))
}

/// A run as a form carries it: `machine|start|warm|kind:number,...|programme`.
pub fn packed(today: &Today, run: &Run) -> String {
    let machine = &today.problem.machines[run.machine];
    let load = today.problem.kinds.iter().zip(&run.load).filter(|l| *l.1 > 0);
    let load: Vec<String> = load.map(|(kind, n)| format!("{}:{n}", kind.id)).collect();
    let start =
        today.origin + Span::from_minutes(run.start as i64 * i64::from(today.problem.slot_min));
    format!(
        "{}|{}|{}|{}|{}",
        today.machines[run.machine].0,
        start.millis(),
        u8::from(run.warm),
        load.join(","),
        machine.cycles[run.cycle].id
    )
}

/// Reads what [`packed`] wrote. `None`: no page of ours wrote it.
pub fn unpacked(text: &str) -> Option<PlannedRun> {
    let mut parts = text.splitn(5, '|');
    let machine = parts.next()?.parse().ok()?;
    let start = Instant::from_millis(parts.next()?.parse().ok()?);
    let warm = parts.next()? == "1";
    let load = parts.next()?.split(',').map(|part| {
        let (kind, n) = part.rsplit_once(':')?;
        Some((kind.parse().ok()?, n.parse().ok()?))
    });
    let load = load.collect::<Option<Vec<_>>>()?;
    let programme = parts.next()?.parse().ok()?;
    Some(PlannedRun { machine, programme, start, warm, load })
}
