//! What goes in: of each word, kind, machine and programme, what was said last holds.

use super::Fold;
use super::kinds::Fit;
use crate::error::BookError;
use crate::fact::Loading;
use load::Programme;
use measure::MachineId;

/// What a setting is about.
pub(crate) mod topic {
    /// An implement, by its word.
    pub(crate) const IMPLEMENT: &str = "implement";
    /// An implement that is not used, by its word.
    pub(crate) const IMPLEMENT_ENDED: &str = "implement ended";
    /// What a set is made of, by its kind.
    pub(crate) const SET: &str = "set of";
    /// A size of pouch, by its word.
    pub(crate) const POUCH: &str = "pouch size";
    /// A size of pouch that is not kept, by its word.
    pub(crate) const POUCH_ENDED: &str = "pouch size ended";
    /// The room inside a machine, by its id.
    pub(crate) const INSIDE: &str = "inside";
    /// A tray on a scale, by the place of its fact: each one counts.
    pub(crate) const TRAY: &str = "tray weighed";
    /// A programme, by its machine and its word.
    pub(crate) const PROGRAMME: &str = "programme figures";
}

/// The name under which a programme's figures are kept.
pub(crate) fn programme_name(machine: MachineId, programme: &Programme) -> String {
    format!("{machine} {programme}")
}

impl Fold<'_> {
    /// Folds a fact about what goes in.
    pub(super) fn loading(&self, loading: &Loading) -> Result<(), BookError> {
        match loading {
            Loading::ImplementSet(implement) => {
                // Described anew, it is used again.
                self.unset(topic::IMPLEMENT_ENDED, implement.word.word())?;
                self.setting(topic::IMPLEMENT, implement.word.word())
            }
            Loading::ImplementEnded { word } => self.setting(topic::IMPLEMENT_ENDED, word.word()),
            Loading::SetOf { kind, .. } => self.setting(topic::SET, kind.word()),
            Loading::PouchSet(size) => {
                self.unset(topic::POUCH_ENDED, size.word.word())?;
                self.setting(topic::POUCH, size.word.word())
            }
            Loading::PouchEnded { word } => self.setting(topic::POUCH_ENDED, word.word()),
            Loading::InsideSet { machine, .. } => self.setting(topic::INSIDE, &machine.to_string()),
            Loading::TrayWeighed { .. } => self.setting(topic::TRAY, &self.seq.to_string()),
            Loading::ProgrammeSet(figures) => {
                self.setting(topic::PROGRAMME, &programme_name(figures.machine, &figures.programme))
            }
        }
    }

    /// Takes a fact about what goes in back: a weighing no longer counts. A setting is said anew,
    /// not taken back.
    pub(super) fn loading_back(&self, seq: u64, loading: &Loading) -> Result<Fit, BookError> {
        match loading {
            Loading::TrayWeighed { .. } => {
                self.unset(topic::TRAY, &seq.to_string())?;
                Ok(Fit::Yes)
            }
            _ => Ok(Fit::No),
        }
    }
}
