//! Leak tests of the cold, empty chamber.

use super::{Outcome, Verdict, open, reason, with_findings};
use crate::limits::{Limits, Name};
use cycle::figures::Figures;
use cycle::finding::{Code, Finding};

pub(super) fn judge(figures: &Figures, limits: &Limits) -> Verdict {
    let Some(leak) = figures.leak.filter(|leak| leak.kpa_per_min.is_finite()) else {
        let text = "the chamber was drawn and closed, but too few samples show how pressure rose";
        return open(reason(Code::LeakRate, text.to_owned()), figures);
    };
    let limit = limits.get(Name::Leak);
    let rate = leak.kpa_per_min;
    let seconds = leak.at_s.1 - leak.at_s.0;
    let said = |what: &str| Finding {
        at_s: Some(leak.at_s),
        ..reason(
            Code::LeakRate,
            format!(
                "pressure rises by {rate:.3} kPa a minute over {seconds:.0} s, {limit} allowed{what}"
            ),
        )
    };
    let least = limits.get(Name::LeakTime);
    if seconds + 2.0 * figures.step_s < least {
        return open(
            said(&format!("; measured for less than {least:.0} s, which shows too little")),
            figures,
        );
    }
    if rate < -limit {
        return open(
            said("; it falls instead, so the chamber was not closed or still cooled"),
            figures,
        );
    }
    if rate > limit && leak.moisture {
        let what = "; it levels off like water boiling away, not like air coming in: dry the chamber and test again";
        return open(said(what), figures);
    }
    Verdict {
        outcome: if rate > limit { Outcome::LeakFail } else { Outcome::LeakPass },
        proven_for: Vec::new(),
        conforming: None,
        reasons: with_findings(said(""), figures),
    }
}
