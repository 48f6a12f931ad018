//! Words as they stand in headings and notes, made comparable.

/// Lower case, without accents; the degree sign stays.
pub(super) fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.chars().flat_map(char::to_lowercase) {
        match c {
            '²' => folded.push('2'),
            'ß' => folded.push_str("ss"),
            'æ' => folded.push_str("ae"),
            '\u{300}'..='\u{36F}' => {}
            _ if c.is_ascii() => folded.push(c),
            _ => folded.push(plain_letter(c)),
        }
    }
    folded
}

/// The letter under an accent. Latin-1, Latin Extended-A and the Vietnamese block.
fn plain_letter(c: char) -> char {
    match c {
        'à'..='å' | 'ā' | 'ă' | 'ą' | 'ạ'..='ặ' => 'a',
        'ç' | 'ć' | 'č' => 'c',
        'đ' | 'ď' => 'd',
        'è'..='ë' | 'ē' | 'ė' | 'ę' | 'ě' | 'ẹ'..='ệ' => 'e',
        'ğ' => 'g',
        'ì'..='ï' | 'ĩ' | 'ī' | 'ı' | 'ỉ' | 'ị' => 'i',
        'ł' => 'l',
        'ñ' | 'ń' | 'ň' => 'n',
        'ò'..='ö' | 'ø' | 'ő' | 'ơ' | 'ọ'..='ợ' => 'o',
        'ř' => 'r',
        'ś' | 'š' | 'ş' | 'ș' => 's',
        'ť' | 'ţ' | 'ț' => 't',
        'ù'..='ü' | 'ũ' | 'ū' | 'ů' | 'ű' | 'ư' | 'ụ'..='ự' => 'u',
        'ý' | 'ÿ' | 'ỳ'..='ỹ' => 'y',
        'ź' | 'ż' | 'ž' => 'z',
        other => other,
    }
}

/// Folded words: parted at everything that is no letter, digit or degree sign, and inside
/// `TempC` where a small letter meets a capital.
pub(super) fn split(text: &str) -> Vec<String> {
    let mut words = Vec::new();
    let mut word = String::new();
    let mut was_small = false;
    for c in text.chars() {
        let inside = c.is_alphanumeric() || matches!(c, '°' | 'º' | '\u{300}'..='\u{36F}');
        // Not inside `kPa`.
        let hump = was_small && c.is_uppercase() && word.len() > 1;
        if (!inside || hump || matches!(c, '°' | 'º')) && !word.is_empty() {
            words.push(fold(&word));
            word.clear();
        }
        if inside {
            word.push(c);
        }
        was_small = c.is_lowercase();
    }
    if !word.is_empty() {
        words.push(fold(&word));
    }
    words
}

/// Does one of the words begin with one of the stems?
pub(super) fn any_stem(words: &[String], stems: &[&str]) -> bool {
    words.iter().any(|word| stems.iter().any(|stem| word.starts_with(stem)))
}

/// Is one of the words one of these?
pub(super) fn any_word(words: &[String], wanted: &[&str]) -> bool {
    words.iter().any(|word| wanted.contains(&word.as_str()))
}
