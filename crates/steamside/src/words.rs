//! The words that people see, in their own language.
//!
//! One file a language under `i18n`, built into the executable. English is the language that the
//! lines are written in; a line that a translation does not have yet is shown in English, never
//! left out. Every translated line says in a comment whether somebody of the trade who grew up
//! with the language has read it (`# checked`) or not (`# draft`), and the setup page counts them.

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::sync::LazyLock;
use unic_langid::LanguageIdentifier;

/// A language that the pages speak.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    En,
    /// Vietnamese.
    Vi,
    /// Spanish.
    Es,
    /// Korean: the most important lines, the rest in English.
    Ko,
    /// Chinese in simplified characters: the most important lines, the rest in English.
    Zh,
}

impl Language {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 5] = [Self::En, Self::Vi, Self::Es, Self::Ko, Self::Zh];

    /// Does it have every line? Otherwise English stands in, line by line.
    pub const fn is_whole(self) -> bool {
        matches!(self, Self::En | Self::Vi | Self::Es)
    }

    /// The code that `lang` attributes and forms use.
    pub const fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Vi => "vi",
            Self::Es => "es",
            Self::Ko => "ko",
            Self::Zh => "zh",
        }
    }

    /// The language with this code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.code() == code)
    }

    /// Its own name, as its readers write it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::En => "English",
            Self::Vi => "Tiếng Việt",
            Self::Es => "Español",
            Self::Ko => "한국어",
            Self::Zh => "中文",
        }
    }

    /// For the plural rules. The codes are well formed; the test of plurals would show an
    /// undetermined language.
    fn identifier(self) -> LanguageIdentifier {
        self.code().parse().unwrap_or_default()
    }

    const fn lines(self) -> &'static str {
        match self {
            Self::En => include_str!("../i18n/en.ftl"),
            Self::Vi => include_str!("../i18n/vi.ftl"),
            Self::Es => include_str!("../i18n/es.ftl"),
            Self::Ko => include_str!("../i18n/ko.ftl"),
            Self::Zh => include_str!("../i18n/zh.ftl"),
        }
    }

    /// How many lines are still drafts, and how many there are.
    pub fn drafts(self) -> (usize, usize) {
        let count = |start: fn(&str) -> bool| self.lines().lines().filter(|l| start(l)).count();
        let lines = count(|line| line.starts_with(|c: char| c.is_ascii_lowercase()));
        (count(|line| line.trim_end() == "# draft"), lines)
    }
}

/// A value inside a line.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// Shown as it is.
    Text(String),
    /// A count: the line may choose its form by it.
    Count(u64),
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<u32> for Arg {
    fn from(count: u32) -> Self {
        Self::Count(u64::from(count))
    }
}

impl From<u64> for Arg {
    fn from(count: u64) -> Self {
        Self::Count(count)
    }
}

impl From<usize> for Arg {
    fn from(count: usize) -> Self {
        Self::Count(count as u64)
    }
}

/// The lines of one language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    own: bool,
}

static WORDS: LazyLock<[Words; 5]> = LazyLock::new(|| Language::ALL.map(Words::load));

impl Words {
    /// The words of a language.
    pub fn of(language: Language) -> &'static Self {
        match language {
            Language::En => &WORDS[0],
            Language::Vi => &WORDS[1],
            Language::Es => &WORDS[2],
            Language::Ko => &WORDS[3],
            Language::Zh => &WORDS[4],
        }
    }

    /// A line without values.
    pub fn say(&self, key: &str) -> String {
        self.tell(key, &[])
    }

    /// A line with its values. `key.part` names a part of a line. A line that no language has is
    /// shown as its key: ugly, but nobody is left without a word; a test keeps it from happening.
    pub fn tell(&self, key: &str, args: &[(&str, Arg)]) -> String {
        let mut values = FluentArgs::new();
        for (name, value) in args {
            match value {
                Arg::Text(text) => values.set(*name, FluentValue::from(text.as_str())),
                Arg::Count(count) => values.set(*name, FluentValue::from(*count)),
            }
        }
        self.line(key, &values)
            .or_else(|| (!self.own).then(|| Self::of(Language::En).line(key, &values)).flatten())
            .unwrap_or_else(|| key.to_owned())
    }

    /// Is there such a line in this language, or at least in English?
    pub fn has(&self, key: &str) -> bool {
        let none = FluentArgs::new();
        self.line(key, &none).is_some() || !self.own && Self::of(Language::En).has(key)
    }

    fn line(&self, key: &str, values: &FluentArgs<'_>) -> Option<String> {
        let (id, part) = key.split_once('.').map_or((key, None), |(id, part)| (id, Some(part)));
        let message = self.bundle.get_message(id)?;
        let pattern = match part {
            None => message.value()?,
            Some(part) => message.get_attribute(part)?.value(),
        };
        // A value that a line asks for and is not given shows as its name in braces; the page is
        // still worth more than none.
        let mut errors = Vec::new();
        Some(self.bundle.format_pattern(pattern, Some(values), &mut errors).into_owned())
    }

    fn load(language: Language) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // All these languages run from left to right: marks around values would only be copied
        // into labels and file names.
        bundle.set_use_isolating(false);
        // A line that cannot be read is left out, and English stands in; a test reads them all.
        let lines = match FluentResource::try_new(language.lines().to_owned()) {
            Ok(lines) | Err((lines, _)) => lines,
        };
        bundle.add_resource_overriding(lines);
        Self { bundle, own: language == Language::En }
    }
}

#[cfg(test)]
mod tests;
