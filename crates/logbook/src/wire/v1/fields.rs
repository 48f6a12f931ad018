//! How each kind of field is stored.

use super::{BasisV1, DrawerRefV1, FiguresV1, JudgedV1, PackedPouchV1, ReasonV1, Wire};
use crate::fact::{Basis, DrawerRef, Judged, KeyFigures, PackedPouch, Reason};
use crate::wire::words::Word;
use cycle::finding::Code;
use load::{SetKind, ShelfCode};
use measure::{Id, Instant, RecordHash};

/// Stored as their text, which they print and read themselves.
macro_rules! as_text {
    ($([$($generic:ident)?] $kind:ty),*) => { $(
        impl$(<$generic>)? Wire for $kind {
            type Form = String;
            fn to_wire(&self) -> Result<String, String> {
                Ok(self.to_string())
            }
            fn from_wire(form: String) -> Result<Self, String> {
                let value = form.parse::<Self>().map_err(|error| error.to_string())?;
                $crate::wire::v1::same_text(&form, &value.to_string())?;
                Ok(value)
            }
        }
    )* };
}

pub(crate) use as_text;

as_text!([T] Id<T>, [] RecordHash, [] SetKind, [] ShelfCode, [] String);

/// Reading forgives blanks and capitals that a person types; what is stored has one form only.
pub(crate) fn same_text(form: &str, value: &str) -> Result<(), String> {
    if form == value { Ok(()) } else { Err(format!("{form:?} should read {value:?}")) }
}

/// Stored as one word.
impl<T: Word> Wire for T {
    type Form = String;
    fn to_wire(&self) -> Result<String, String> {
        Ok(self.word().to_owned())
    }
    fn from_wire(form: String) -> Result<Self, String> {
        Self::from_word(&form)
    }
}

/// Stored as they are.
macro_rules! as_is {
    ($($kind:ty),*) => { $(
        impl Wire for $kind {
            type Form = $kind;
            fn to_wire(&self) -> Result<$kind, String> {
                Ok(*self)
            }
            fn from_wire(form: $kind) -> Result<Self, String> {
                Ok(form)
            }
        }
    )* };
}

as_is!(bool, i64);

/// Stored as a whole number of 64 bits with a sign.
macro_rules! as_int {
    ($($kind:ty),*) => { $(
        impl Wire for $kind {
            type Form = i64;
            fn to_wire(&self) -> Result<i64, String> {
                i64::try_from(*self).map_err(|_| format!("{self} is too large to be stored"))
            }
            fn from_wire(form: i64) -> Result<Self, String> {
                Self::try_from(form).map_err(|_| format!("{form} is out of range"))
            }
        }
    )* };
}

as_int!(u32, u64);

impl Wire for Instant {
    type Form = i64;
    fn to_wire(&self) -> Result<i64, String> {
        Ok(self.millis())
    }
    fn from_wire(form: i64) -> Result<Self, String> {
        Ok(Self::from_millis(form))
    }
}

impl<T: Wire> Wire for Option<T> {
    type Form = Option<T::Form>;
    fn to_wire(&self) -> Result<Self::Form, String> {
        self.as_ref().map(Wire::to_wire).transpose()
    }
    fn from_wire(form: Self::Form) -> Result<Self, String> {
        form.map(T::from_wire).transpose()
    }
}

impl<T: Wire> Wire for Vec<T> {
    type Form = Vec<T::Form>;
    fn to_wire(&self) -> Result<Self::Form, String> {
        self.iter().map(Wire::to_wire).collect()
    }
    fn from_wire(form: Self::Form) -> Result<Self, String> {
        form.into_iter().map(T::from_wire).collect()
    }
}

impl<A: Wire, B: Wire> Wire for (A, B) {
    type Form = (A::Form, B::Form);
    fn to_wire(&self) -> Result<Self::Form, String> {
        Ok((self.0.to_wire()?, self.1.to_wire()?))
    }
    fn from_wire(form: Self::Form) -> Result<Self, String> {
        Ok((A::from_wire(form.0)?, B::from_wire(form.1)?))
    }
}

impl Wire for Code {
    type Form = String;
    fn to_wire(&self) -> Result<String, String> {
        Ok(self.as_str().to_owned())
    }
    fn from_wire(form: String) -> Result<Self, String> {
        Self::from_word(&form).ok_or_else(|| format!("{form:?} is not a reason code"))
    }
}

impl Wire for DrawerRef {
    type Form = DrawerRefV1;
    fn to_wire(&self) -> Result<DrawerRefV1, String> {
        // A record hash is 32 bytes as text too; its printing and reading are borrowed here.
        Ok(DrawerRefV1 {
            entry: self.entry.to_wire()?,
            commitment: RecordHash::from_bytes(self.commitment).to_wire()?,
        })
    }
    fn from_wire(form: DrawerRefV1) -> Result<Self, String> {
        Ok(Self {
            entry: Wire::from_wire(form.entry)?,
            commitment: *RecordHash::from_wire(form.commitment)?.bytes(),
        })
    }
}

impl Wire for Basis {
    type Form = BasisV1;
    fn to_wire(&self) -> Result<BasisV1, String> {
        Ok(match self {
            Self::Record { record, cycle } => {
                BasisV1::Record { record: record.to_wire()?, cycle: cycle.to_wire()? }
            }
            Self::Reading { lowest_mc, held_s, press_pa } => {
                BasisV1::Reading { lowest_mc: *lowest_mc, held_s: *held_s, press_pa: *press_pa }
            }
        })
    }
    fn from_wire(form: BasisV1) -> Result<Self, String> {
        Ok(match form {
            BasisV1::Record { record, cycle } => {
                Self::Record { record: Wire::from_wire(record)?, cycle: Wire::from_wire(cycle)? }
            }
            BasisV1::Reading { lowest_mc, held_s, press_pa } => {
                Self::Reading { lowest_mc, held_s, press_pa }
            }
        })
    }
}

/// Structs whose stored form has the same field names.
macro_rules! structs {
    ($($core:ident = $form:ident { $($field:ident),* })*) => { $(
        impl Wire for $core {
            type Form = $form;
            fn to_wire(&self) -> Result<$form, String> {
                let Self { $($field),* } = self;
                Ok($form { $($field: $field.to_wire()?),* })
            }
            fn from_wire(form: $form) -> Result<Self, String> {
                let $form { $($field),* } = form;
                Ok(Self { $($field: Wire::from_wire($field)?),* })
            }
        }
    )* };
}

pub(crate) use structs;

structs! {
    PackedPouch = PackedPouchV1 { pouch, code, kind, pouched, hollow }
    Reason = ReasonV1 { code, at_ms, lines }
    KeyFigures = FiguresV1 {
        set_mc, needed_ms, held_ms, lowest_mc, highest_mc, deviation_mk, f0_low_mmin, drying_ms,
        total_ms, preheat_ms, heat_up_ms, first_pulse_ms, pulse_depth_pa, exhaust_ms,
        dry_vacuum_pa, air_in_ms
    }
    Judged = JudgedV1 {
        run, basis, judge, limits, contents, outcome, proven_for, conforming, drying, reasons,
        figures, start_clock
    }
}
