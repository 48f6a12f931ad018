//! Facts about what goes in, in plain words, for the log.

use super::Names;
use crate::pages::when;
use crate::web::Ctx;
use crate::words::Arg;
use logbook::fact::Loading;

/// One fact about what goes in as one line.
pub(super) fn line(ctx: &Ctx, names: &Names, loading: &Loading) -> String {
    let words = ctx.words();
    match loading {
        Loading::ImplementSet(one) => words.tell(
            "line-implement-set",
            &[
                ("what", one.word.word().into()),
                ("length", one.length_mm.into()),
                ("width", one.width_mm.into()),
                ("mass", when::tenths(i64::from(one.mass_dg) * 100).into()),
            ],
        ),
        Loading::ImplementEnded { word } => {
            words.tell("line-implement-ended", &[("what", word.word().into())])
        }
        Loading::SetOf { kind, pieces } => words.tell(
            "line-set-of",
            &[("kind", kind.word().into()), ("pieces", listed(pieces).into())],
        ),
        Loading::PouchSet(size) => words.tell(
            "line-pouch-set",
            &[
                ("what", size.word.word().into()),
                ("width", size.width_mm.into()),
                ("length", size.length_mm.into()),
            ],
        ),
        Loading::PouchEnded { word } => {
            words.tell("line-pouch-ended", &[("what", word.word().into())])
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
            &[("grams", Arg::from(*grams)), ("sets", listed(sets).into())],
        ),
        Loading::ProgrammeSet(figures) => words.tell(
            "line-programme-set",
            &[
                ("programme", figures.programme.word().into()),
                ("machine", names.machine(ctx, figures.machine).into()),
                ("temperature", figures.set_c.into()),
                ("hold", figures.hold_s.into()),
                ("count", figures.drying_min.into()),
            ],
        ),
    }
}

/// `1 cuticle nipper, 2 pusher`.
fn listed<W: std::fmt::Display>(list: &[(W, u32)]) -> String {
    let each = list.iter().map(|(word, count)| format!("{count} {word}"));
    each.collect::<Vec<_>>().join(", ")
}
