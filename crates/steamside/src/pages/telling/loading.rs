//! Facts about what goes in, in plain words, for the log.

use super::Names;
use crate::pages::{say, units};
use crate::web::Ctx;
use logbook::fact::Loading;

/// One fact about what goes in as one line.
pub(super) fn line(ctx: &Ctx, names: &Names, loading: &Loading) -> String {
    let words = ctx.words();
    match loading {
        Loading::ImplementSet(one) => {
            let (length, width) = units::width_and_length(ctx, one.length_mm, one.width_mm);
            words.tell(
                "line-implement-set",
                &[
                    ("what", say::implement(ctx, &one.word).into()),
                    ("length", length.into()),
                    ("width", width.into()),
                    ("mass", units::mass(ctx, f64::from(one.mass_dg) / 10.0).into()),
                ],
            )
        }
        Loading::ImplementEnded { word } => {
            words.tell("line-implement-ended", &[("what", say::implement(ctx, word).into())])
        }
        Loading::SetOf { kind, pieces } => words.tell(
            "line-set-of",
            &[
                ("kind", say::kind(ctx, kind).into()),
                ("pieces", listed(pieces, |word| say::implement(ctx, word)).into()),
            ],
        ),
        Loading::PouchSet(size) => {
            let (width, length) = units::width_and_length(ctx, size.width_mm, size.length_mm);
            words.tell(
                "line-pouch-set",
                &[
                    ("what", say::pouch_size(ctx, &size.word).into()),
                    ("width", width.into()),
                    ("length", length.into()),
                ],
            )
        }
        Loading::PouchEnded { word } => {
            words.tell("line-pouch-ended", &[("what", say::pouch_size(ctx, word).into())])
        }
        Loading::InsideSet { machine, inside } => words.tell(
            "line-inside-set",
            &[
                ("machine", names.machine(ctx, *machine).into()),
                ("count", inside.trays.len().into()),
            ],
        ),
        Loading::TrayWeighed { grams, sets, .. } => words.tell(
            "line-tray-weighed",
            &[
                ("grams", units::mass(ctx, f64::from(*grams)).into()),
                ("sets", listed(sets, |kind| say::kind(ctx, kind)).into()),
            ],
        ),
        Loading::ProgrammeSet(figures) => words.tell(
            "line-programme-set",
            &[
                ("programme", say::programme(ctx, figures.programme.word()).into()),
                ("machine", names.machine(ctx, figures.machine).into()),
                ("temperature", units::degrees(ctx, figures.set_c).into()),
                ("hold", figures.hold_s.into()),
                ("count", figures.drying_min.into()),
            ],
        ),
    }
}

/// `1 cuticle nipper, 2 pusher`.
fn listed<W>(list: &[(W, u32)], said: impl Fn(&W) -> String) -> String {
    let each = list.iter().map(|(word, count)| format!("{count} {}", said(word)));
    each.collect::<Vec<_>>().join(", ")
}
