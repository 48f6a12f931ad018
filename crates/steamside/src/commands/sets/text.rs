//! What `sets` says to people.

use super::Found;
use day::plan::Problem;
use day::sets::{Assumptions, Basis, Bought, Confirmed, Event, Prices, Purchase};

/// The shares of one kind.
pub fn found(problem: &Problem, found: &Found) {
    let kind = &problem.kinds[found.kind];
    println!("{}: {} owned now.", kind.id, kind.owned);
    for (point, confirmed) in &found.points {
        let share = point.tally.share();
        let [low, share, high] = [share.low, share.share, share.high].map(|s| 100.0 * s);
        println!(
            "  {:3} sets: nobody waits on {share:.1} of 100 days ({low:.1} to {high:.1}){}",
            point.owned,
            confirmed.as_ref().map(planned).unwrap_or_default(),
        );
    }
}

/// What the planner says to the same days.
fn planned(confirmed: &Confirmed) -> String {
    format!(
        "; of {} days planned beforehand {} work, {} of them in the simulation too",
        confirmed.days, confirmed.planner, confirmed.policy
    )
}

/// What else could be bought.
pub fn purchases(problem: &Problem, bought: &[Bought], prices: &Prices) {
    for one in bought {
        let what = match one.purchase {
            Purchase::Set(kind) => match problem.kinds.get(kind) {
                Some(kind) => format!("One more set, {}", kind.id),
                None => continue,
            },
            Purchase::Machine => "A second machine like the first".to_owned(),
            Purchase::Lunch(minutes) => {
                format!("A lunch longer by {minutes} minutes, one person at the back")
            }
        };
        let year = |share: f64| share * prices.working_days;
        let back = match one.pays_back_years {
            Some(years) if one.price > 0.0 => {
                format!("; its price of {:.0} comes back in {years:.1} years", one.price)
            }
            None if one.price > 0.0 => {
                format!("; its price of {:.0} does not come back", one.price)
            }
            _ => String::new(),
        };
        let [low, high] = [one.gain.low, one.gain.high].map(year);
        if low <= 0.0 {
            println!("{what}: no good days more that can be seen ({low:.0} to {high:.0} a year).");
            continue;
        }
        println!(
            "{what}: {:.0} good days a year more ({low:.0} to {high:.0}), {:.0} clients a year fewer \
             wait; {:.0} a year{back}.",
            one.days_a_year, one.clients_a_year, one.saved_a_year,
        );
    }
    if !bought.is_empty() {
        println!(
            "Money a year is what waiting clients cost, less what is paid each day: {} for a client who \
             waits, {} for a longer lunch, {} working days (assumptions; say your own).",
            prices.waiting, prices.lunch_a_day, prices.working_days
        );
    }
}

/// On what the figures rest.
pub fn assumptions(assumptions: &Assumptions, days: u32) {
    println!(
        "From {days} random days that grow out of the booked one, lived by a technician who does \
         not know what comes; intervals are Wilson's, for 95 in 100. Sets more than owned begin the \
         day ready. Planned days have no failed and no wet loads, and the planner knows the whole day \
         beforehand; that is most of the difference."
    );
    for event in Event::ALL {
        let rate = assumptions[event];
        let basis = match rate.basis {
            Basis::Assumed => "assumption".to_owned(),
            Basis::Counted(of) => format!("counted, out of {of}"),
        };
        println!("  {} ({basis})", sentence(assumptions, event, 100.0 * rate.share));
    }
}

fn sentence(assumptions: &Assumptions, event: Event, share: f64) -> String {
    match event {
        Event::WalkIn => format!(
            "For every 100 appointments {share:.0} walk-ins come, at any time, and stay if somebody is \
             free within half an hour."
        ),
        Event::NoShow => format!("To {share:.0} of 100 appointments nobody comes."),
        Event::Late => format!(
            "{share:.0} of 100 clients come late, by at most {} minutes; the appointment moves.",
            assumptions.late_most_min
        ),
        Event::Overrun => format!(
            "{share:.0} of 100 appointments take longer, by at most {} minutes; the next one begins in \
             time.",
            assumptions.overrun_most_min
        ),
        Event::Failed => format!("{share:.0} of 100 runs fail; their sets begin anew."),
        Event::Wet => format!("{share:.0} of 100 dried loads come out wet; their sets begin anew."),
    }
}
