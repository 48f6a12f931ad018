//! Bytes in, physical lines out, in bounded memory.
//!
//! Text in one of the 16-bit encodings is decoded on the way in. Everything else stays as it is:
//! numbers and times are ASCII in every 8-bit encoding that a machine writes, so only the few
//! lines of words are ever decoded, one by one, by [`text`].

use super::Unreadable;
use super::reshape::Reshape;
use encoding_rs::{Decoder, UTF_16BE, UTF_16LE, WINDOWS_1252};
use std::borrow::Cow;
use std::io::Read;

/// Bytes asked for at a time.
const CHUNK: usize = 64 * 1024;

/// Bytes by which it is decided what kind of file this is.
const LOOKED_AT: usize = 8 * 1024;

/// The longest line that is looked at; of a longer one only this much is kept.
pub(super) const LONGEST_LINE: usize = 64 * 1024;

/// A physical line without its line end.
pub(super) struct Line<'a> {
    /// Number in the file, from 1.
    pub no: u32,
    /// The bytes.
    pub bytes: &'a [u8],
    /// The file went on after it; only a last line without a line end is not closed.
    pub closed: bool,
}

/// A file being read.
#[derive(Debug)]
pub(super) struct Source<R> {
    inner: R,
    decoder: Option<Decoder>,
    /// Makes lines of what is not written line by line.
    reshape: Option<Reshape>,
    /// What was read in, and behind it room that is not cleared again for every read.
    buffer: Vec<u8>,
    filled: usize,
    at: usize,
    line: u32,
    /// Where the last line given begins.
    last: usize,
    ended: bool,
    line_end: u8,
    encoding: &'static str,
}

impl<R: Read> Source<R> {
    /// Reads the first bytes and decides on the encoding. The buffer may be one that was used before.
    pub fn open(inner: R, buffer: Vec<u8>) -> Result<Self, Unreadable> {
        let mut source = Self {
            inner,
            decoder: None,
            reshape: None,
            buffer,
            filled: 0,
            at: 0,
            line: 0,
            last: 0,
            ended: false,
            line_end: b'\n',
            encoding: "utf-8",
        };
        // A pipe may give the first bytes one by one.
        while source.filled < LOOKED_AT && !source.ended {
            source.fill()?;
        }
        if source.filled == 0 {
            return Err(Unreadable::new(
                None,
                "the file is empty",
                "copy the record from the machine again",
            ));
        }
        source.settle_encoding();
        source.refuse_what_is_not_text()?;
        let text = source.unread();
        if !text.contains(&b'\n') && text.contains(&b'\r') {
            source.line_end = b'\r';
        }
        source.settle_shape();
        Ok(source)
    }

    /// The buffer, for the next file.
    pub fn into_buffer(self) -> Vec<u8> {
        self.buffer
    }

    fn unread(&self) -> &[u8] {
        &self.buffer[self.at..self.filled]
    }

    /// Name of the encoding, in lower case, as far as the file was read.
    pub fn encoding(&self) -> &'static str {
        self.encoding
    }

    /// Unread bytes, at least `wanted` of them unless the file ends before, and whether it does.
    pub fn window(&mut self, wanted: usize) -> Result<(&[u8], bool), Unreadable> {
        while self.filled - self.at < wanted && !self.ended {
            self.fill()?;
        }
        Ok((self.unread(), self.ended))
    }

    /// The number of the line that [`Self::next_line`] would give.
    pub fn coming_line(&self) -> u32 {
        let made = self.reshape.as_ref().and_then(Reshape::coming);
        made.unwrap_or_else(|| self.line.saturating_add(1))
    }

    /// Do its lines differ from the physical ones?
    pub fn is_reshaped(&self) -> bool {
        self.reshape.is_some()
    }

    /// The byte that ends a line.
    pub fn line_end(&self) -> u8 {
        self.line_end
    }

    /// The next line, or nothing at the end of the file.
    pub fn next_line(&mut self) -> Result<Option<Line<'_>>, Unreadable> {
        let mut looked = self.at;
        let (end, closed) = loop {
            if let Some(found) = position(&self.buffer[looked..self.filled], self.line_end) {
                break (looked + found, true);
            }
            if self.ended {
                break (self.filled, false);
            }
            if self.filled - self.at > LONGEST_LINE {
                break self.skip_to_line_end()?;
            }
            looked = self.filled - self.at;
            self.fill()?;
        };
        if self.at >= self.filled {
            return Ok(None);
        }
        let start = self.at;
        self.last = start;
        let next = if closed { end + 1 } else { end };
        self.at = next.min(self.filled);
        self.line = match &mut self.reshape {
            Some(reshape) => reshape.take(),
            None => self.line.saturating_add(1),
        };
        let mut bytes = &self.buffer[start..end.min(start + LONGEST_LINE)];
        if let [head @ .., b'\r'] = bytes {
            bytes = head;
        }
        Ok(Some(Line { no: self.line, bytes, closed }))
    }

    /// Puts the last line back, to be given again.
    pub fn back(&mut self) {
        self.at = self.last;
        match &mut self.reshape {
            Some(reshape) => reshape.back(self.line),
            None => self.line = self.line.saturating_sub(1),
        }
    }

    /// Unread bytes, as far as they have been read in, and how many lines were given before them.
    pub fn rest(&self) -> (&[u8], u32) {
        (self.unread(), self.line)
    }

    /// Goes past so many bytes of [`Self::rest`], which are so many whole lines.
    pub fn skip(&mut self, bytes: usize, lines: u32) {
        self.at += bytes;
        self.line = self.line.saturating_add(lines);
    }

    /// Drops the rest of an over-long line, so that it costs no memory however long it is.
    fn skip_to_line_end(&mut self) -> Result<(usize, bool), Unreadable> {
        self.filled = self.at + LONGEST_LINE;
        loop {
            if self.ended {
                return Ok((self.filled, false));
            }
            self.fill()?;
            let kept = self.at + LONGEST_LINE;
            match position(&self.buffer[kept..self.filled], self.line_end) {
                Some(found) => {
                    self.buffer.copy_within(kept + found..self.filled, kept);
                    self.filled -= found;
                    return Ok((kept, true));
                }
                None => self.filled = kept,
            }
        }
    }

    /// Appends one more chunk; what was read before `at` is forgotten first.
    fn fill(&mut self) -> Result<(), Unreadable> {
        self.buffer.copy_within(self.at..self.filled, 0);
        self.filled -= self.at;
        self.at = 0;
        if !self.is_hungry()? {
            return Ok(());
        }
        if self.buffer.len() < self.filled + CHUNK {
            self.buffer.resize(self.filled + CHUNK, 0);
        }
        let got = loop {
            match self.inner.read(&mut self.buffer[self.filled..self.filled + CHUNK]) {
                Err(error) if error.kind() == std::io::ErrorKind::Interrupted => {}
                Err(error) => {
                    return Err(Unreadable::new(
                        None,
                        format!("the file could not be read ({error})"),
                        "check that it is a file and that it may be opened, then try again",
                    ));
                }
                Ok(got) => break got,
            }
        };
        let (before, last) = (self.filled, got == 0);
        let chunk = &self.buffer[before..before + got];
        if self.decoder.is_some() {
            let chunk = chunk.to_vec();
            self.append_decoded(&chunk, last);
        } else {
            if !chunk.is_ascii() && self.encoding == "utf-8" {
                self.encoding = eight_bit_name(chunk);
            }
            self.filled += got;
        }
        match &mut self.reshape {
            Some(reshape) => {
                reshape.feed(&self.buffer[before..self.filled], last);
                self.filled = before;
            }
            None => self.ended = last,
        }
        Ok(())
    }

    /// Appends lines that can be made of what was read before. Is more needed?
    fn is_hungry(&mut self) -> Result<bool, Unreadable> {
        let Some(reshape) = &mut self.reshape else {
            return Ok(true);
        };
        self.buffer.truncate(self.filled);
        let hungry = reshape.go(&mut self.buffer)?;
        self.filled = self.buffer.len();
        self.ended = reshape.is_done();
        Ok(hungry)
    }

    /// What is not written line by line gets lines.
    fn settle_shape(&mut self) {
        self.reshape = Reshape::wanted(self.unread(), self.line_end);
        if let Some(reshape) = &mut self.reshape {
            reshape.feed(&self.buffer[self.at..self.filled], self.ended);
            (self.at, self.filled) = (0, 0);
            self.ended = false;
            self.line_end = b'\n';
        }
    }

    /// By the byte order mark, or by where the zero bytes stand.
    fn settle_encoding(&mut self) {
        let head = &self.buffer[..self.filled.min(LOOKED_AT)];
        let any = head.contains(&0);
        let zeros = |odd: usize| head.iter().skip(odd).step_by(2).filter(|b| **b == 0).count();
        let wide =
            |zeros: usize, others: usize| zeros * 10 > head.len() && others * 50 < head.len();
        let (encoding, name, mark) = if head.starts_with(b"\xEF\xBB\xBF") {
            (None, "utf-8", 3)
        } else if head.starts_with(b"\xFF\xFE") {
            (Some(UTF_16LE), "utf-16le", 2)
        } else if head.starts_with(b"\xFE\xFF") {
            (Some(UTF_16BE), "utf-16be", 2)
        } else if any && wide(zeros(1), zeros(0)) {
            (Some(UTF_16LE), "utf-16le", 0)
        } else if any && wide(zeros(0), zeros(1)) {
            (Some(UTF_16BE), "utf-16be", 0)
        } else {
            return;
        };
        self.encoding = name;
        self.at = mark;
        if let Some(encoding) = encoding {
            self.decoder = Some(encoding.new_decoder_without_bom_handling());
            let raw = self.unread().to_vec();
            (self.at, self.filled) = (0, 0);
            self.append_decoded(&raw, false);
        }
    }

    /// Pictures, archives and the like hold bytes that no text has.
    fn refuse_what_is_not_text(&self) -> Result<(), Unreadable> {
        let odd = |b: u8| b < 32 && !matches!(b, b'\t' | b'\n' | b'\r' | 0x0C | 0x1A | 0x1B);
        let text = self.unread();
        let head = &text[..text.len().min(LOOKED_AT)];
        // Looking at all of them without counting is much the cheaper, and mostly enough.
        let any = head.iter().fold(false, |any, &b| any | odd(b));
        if any && head.iter().filter(|&&b| odd(b)).count() * 20 > head.len() {
            return Err(Unreadable::new(
                Some(1),
                "the file is not text",
                "export the record from the machine as text or as a table (CSV)",
            ));
        }
        Ok(())
    }

    /// Puts what the decoder makes of these bytes behind what is there.
    fn append_decoded(&mut self, mut raw: &[u8], last: bool) {
        let Some(decoder) = &mut self.decoder else {
            return;
        };
        self.buffer.truncate(self.filled);
        let mut piece = [0; 4096];
        loop {
            let (result, read, written, _) = decoder.decode_to_utf8(raw, &mut piece, last);
            self.buffer.extend_from_slice(&piece[..written]);
            raw = &raw[read..];
            if result == encoding_rs::CoderResult::InputEmpty {
                break;
            }
        }
        self.filled = self.buffer.len();
    }
}

/// Reads bytes of an 8-bit encoding, or of text decoded before, as words.
pub(super) fn text(bytes: &[u8]) -> Cow<'_, str> {
    match std::str::from_utf8(bytes) {
        Ok(text) => Cow::Borrowed(text),
        Err(_) => WINDOWS_1252.decode_without_bom_handling(bytes).0,
    }
}

/// The first place of `wanted`, eight bytes at a time.
pub(super) fn position(bytes: &[u8], wanted: u8) -> Option<usize> {
    const ONES: u64 = 0x0101_0101_0101_0101;
    let pattern = ONES * u64::from(wanted);
    let mut chunks = bytes.chunks_exact(8);
    let mut at = 0;
    for chunk in &mut chunks {
        let mut word = [0; 8];
        word.copy_from_slice(chunk);
        let word = u64::from_le_bytes(word) ^ pattern;
        // A byte that became zero is the only one whose high bit the subtraction can set first.
        let hit = word.wrapping_sub(ONES) & !word & (ONES << 7);
        if hit != 0 {
            return Some(at + hit.trailing_zeros() as usize / 8);
        }
        at += 8;
    }
    let rest = chunks.remainder();
    rest.iter().position(|b| *b == wanted).map(|found| at + found)
}

fn eight_bit_name(chunk: &[u8]) -> &'static str {
    // A character may be cut at either end of the chunk.
    let inside = |b: &u8| (0x80..0xC0).contains(b);
    let start = chunk.iter().take(3).take_while(|b| inside(b)).count();
    match std::str::from_utf8(&chunk[start..]) {
        Ok(_) => "utf-8",
        Err(error) if error.error_len().is_none() => "utf-8",
        Err(_) if chunk.iter().any(|b| (0x80..0xA0).contains(b)) => "windows-1252",
        Err(_) => "latin-1",
    }
}

#[cfg(test)]
mod tests {
    // tests may stop at once
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use proptest::prelude::*;

    fn lines(bytes: &[u8]) -> Vec<(u32, String, bool)> {
        let mut source = Source::open(bytes, vec![b'x'; 70_000]).unwrap();
        let mut all = Vec::new();
        while let Some(line) = source.next_line().unwrap() {
            all.push((line.no, text(line.bytes).into_owned(), line.closed));
        }
        all
    }

    #[test]
    fn every_line_end_and_encoding_gives_the_same_lines() {
        let wanted = vec![
            (1, "T °C".to_owned(), true),
            (2, String::new(), true),
            (3, "21".to_owned(), false),
        ];
        let wide = |big: bool| -> Vec<u8> {
            "T °C\r\n\r\n21"
                .encode_utf16()
                .flat_map(|u| if big { u.to_be_bytes() } else { u.to_le_bytes() })
                .collect()
        };
        let marked = |mark: &[u8], rest: Vec<u8>| [mark, &rest].concat();
        let cases = [
            "T °C\n\n21".as_bytes().to_vec(),
            "T °C\r\r21".as_bytes().to_vec(),
            "T °C\r\n\r\n21".as_bytes().to_vec(),
            b"T \xB0C\n\n21".to_vec(),
            marked(b"\xEF\xBB\xBF", "T °C\n\n21".into()),
            marked(b"\xFF\xFE", wide(false)),
            marked(b"\xFE\xFF", wide(true)),
            wide(false),
            wide(true),
        ];
        for case in cases {
            assert_eq!(lines(&case), wanted, "{case:?}");
        }
    }

    #[test]
    fn an_over_long_line_is_cut_and_the_next_one_is_whole() {
        let mut bytes = vec![b'x'; 10_000_000];
        bytes.extend_from_slice(b"\nnext\n");
        let all = lines(&bytes);
        assert_eq!(all[0].1.len(), LONGEST_LINE);
        assert_eq!(all[1], (2, "next".to_owned(), true));
    }

    #[test]
    fn what_is_not_text_is_refused() {
        for bytes in [&b""[..], &[0; 5_000], &[1, 2, 3, 200, 4, 5]] {
            assert!(Source::open(bytes, Vec::new()).is_err());
        }
    }

    proptest! {
        /// The plain search is the yardstick.
        #[test]
        fn the_fast_search_finds_what_the_plain_one_finds(
            bytes in proptest::collection::vec(any::<u8>(), 0..60), wanted: u8,
        ) {
            prop_assert_eq!(position(&bytes, wanted), bytes.iter().position(|b| *b == wanted));
        }

        #[test]
        fn lines_are_those_of_the_library(text in "[a-z ,;\n]{1,400}") {
            let ours: Vec<String> = lines(text.as_bytes()).into_iter().map(|l| l.1).collect();
            let theirs: Vec<String> = text.lines().map(str::to_owned).collect();
            prop_assert_eq!(ours, theirs);
        }
    }
}
