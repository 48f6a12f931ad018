//! The fields of a posted form, in the order in which they came; names may repeat.

use crate::acts::Refusal;
use std::str::FromStr;

/// Name and value pairs of a form.
#[derive(Debug, Clone, Default)]
pub struct Fields(pub Vec<(String, String)>);

impl Fields {
    /// The first value with this name that is not blank.
    pub fn one(&self, name: &str) -> Option<&str> {
        self.0
            .iter()
            .find(|(key, value)| key == name && !value.trim().is_empty())
            .map(|(_, value)| value.trim())
    }

    /// Every value with this name that is not blank.
    pub fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.0
            .iter()
            .filter(move |(key, value)| key == name && !value.trim().is_empty())
            .map(|(_, value)| value.trim())
    }

    /// Is the field there with `yes`?
    pub fn yes(&self, name: &str) -> bool {
        self.one(name) == Some("yes")
    }

    /// The value, read as a `T`; a missing or misread one refuses the form.
    pub fn need<T: FromStr>(&self, name: &'static str) -> Result<T, Refusal> {
        self.maybe(name)?.ok_or_else(|| Refusal::rule_with("refused-field-missing", "field", name))
    }

    /// The value where there is one, read as a `T`; a misread one refuses the form.
    pub fn maybe<T: FromStr>(&self, name: &'static str) -> Result<Option<T>, Refusal> {
        self.one(name).map(|text| Self::read(name, text)).transpose()
    }

    /// All values with this name, each read as a `T`.
    pub fn many<T: FromStr>(&self, name: &'static str) -> Result<Vec<T>, Refusal> {
        self.all(name).map(|text| Self::read(name, text)).collect()
    }

    /// Numbers under names that begin alike: `count.manicure` = 2. Blank ones are left out.
    pub fn counted<T: FromStr>(&self, prefix: &str) -> Result<Vec<(T, u32)>, Refusal> {
        let misread = |field: &str| Refusal::rule_with("refused-field-misread", "field", field);
        self.0
            .iter()
            .filter_map(|(name, value)| Some((name.strip_prefix(prefix)?, value.trim())))
            .filter(|(_, value)| !value.is_empty())
            .map(|(word, value)| {
                let word = word.parse().map_err(|_| misread(word))?;
                Ok((word, value.parse().map_err(|_| misread("count"))?))
            })
            .collect()
    }

    fn read<T: FromStr>(name: &'static str, text: &str) -> Result<T, Refusal> {
        // A decimal comma is how half of the world types a decimal point.
        text.parse()
            .or_else(|_| text.replacen(',', ".", 1).parse())
            .map_err(|_| Refusal::rule_with("refused-field-misread", "field", name))
    }
}
#[cfg(test)]
mod tests {
    use super::*;

    fn fields(text: &str) -> Fields {
        let pairs = text.split('&').filter_map(|pair| pair.split_once('='));
        Fields(pairs.map(|(k, v)| (k.to_owned(), v.to_owned())).collect())
    }

    #[test]
    fn a_blank_field_is_a_missing_one_and_a_wrong_one_is_refused() {
        let form = fields("count=5&blank= &bad=x&half=134,5&p=1&p=2");
        assert!(matches!(form.need::<u32>("count"), Ok(5)));
        assert!(matches!(form.maybe::<u32>("blank"), Ok(None)));
        assert!(form.need::<u32>("blank").is_err());
        assert!(form.maybe::<u32>("bad").is_err());
        assert!(matches!(form.need::<f64>("half"), Ok(v) if v == 134.5));
        assert!(matches!(form.many::<u32>("p"), Ok(v) if v == [1, 2]));
    }
}
