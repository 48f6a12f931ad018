//! One word for each case of a closed list, as the book stores it: written once, never changed.

macro_rules! stored_words {
    ($name:ident, $count:literal, { $($case:ident => $word:literal,)* }) => {
        impl $name {
            /// All of them.
            pub const ALL: [Self; $count] = [$(Self::$case),*];

            /// The word that the book stores.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self {
                    $(Self::$case => $word,)*
                }
            }

            /// The one with this word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                Self::ALL.into_iter().find(|case| case.word() == word)
            }
        }
    };
}

pub(crate) use stored_words;

#[cfg(test)]
mod tests {
    use crate::chamber::{Face, Pattern};
    use crate::implement::{Chemical, Form, Material, Metal, Stands};
    use std::collections::BTreeSet;

    #[test]
    fn every_word_comes_back_and_stands_once() {
        macro_rules! check {
            ($($name:ident),*) => {$(
                let words: BTreeSet<&str> = $name::ALL.into_iter().map($name::word).collect();
                assert_eq!(words.len(), $name::ALL.len(), "{words:?}");
                for case in $name::ALL {
                    assert_eq!($name::from_word(case.word()), Some(case));
                }
                assert_eq!($name::from_word("no such word"), None);
            )*};
        }
        check!(Face, Pattern, Chemical, Form, Material, Metal, Stands);
    }
}
