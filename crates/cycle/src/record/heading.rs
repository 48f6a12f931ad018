//! The lines above the rows that name the columns and their units.

use super::cells::{Cells, Split};
use super::names::{Channel, Name};
use super::sniff::{Kind, kinds_of};
use super::source::text;
use super::stamp::Shape;

/// Looks above the rows for one or two lines that name the columns and their units.
pub(super) fn heading<'a>(
    before: &[&'a [u8]],
    split: &Split,
    width: usize,
    first_row: &[u8],
) -> (Vec<Name>, Vec<&'a [u8]>) {
    // Phase words may stand between the heading and the first row.
    let near = || before.iter().rev().filter(|line| has_letters(line)).take(6);
    let cells_of = |line: &&&'a [u8]| heading_cells(line, split, width, first_row);
    let mut found: Vec<(Vec<String>, &'a [u8])> = Vec::new();
    for line in near() {
        match cells_of(&line) {
            Some(cells) if names_something(&cells) => found.push((cells, line)),
            _ if found.is_empty() => {}
            _ => break,
        }
    }
    // Names in no language we know are still a heading, and may stand above units.
    if let (true, Some(line)) = (found.is_empty() && *split != Split::Blanks, near().next())
        && let Some(cells) = cells_of(&line).filter(|cells| cells.iter().all(|c| !c.is_empty()))
    {
        found.push((cells, line));
    }
    found.reverse();
    let mut texts = vec![String::new(); width];
    for (cells, _) in &found {
        for (text, cell) in texts.iter_mut().zip(cells) {
            text.push_str(cell);
            text.push(' ');
        }
    }
    let names = texts.iter().map(|text| Name::read(text)).collect();
    (names, found.into_iter().map(|(_, line)| line).collect())
}

fn has_letters(line: &[u8]) -> bool {
    line.iter().any(|b| b.is_ascii_alphabetic() || *b >= 128)
}

/// Does the line name columns or units of at least two kinds, or one of two columns?
fn names_something(cells: &[String]) -> bool {
    let known = cells
        .iter()
        .map(|cell| Name::read(cell))
        .filter(|name| name.channel != Channel::Unknown || name.said != Default::default())
        .count();
    known >= 2 || (known == 1 && cells.len() <= 2)
}

/// The cells of a heading, one a column; nothing when they do not fit the rows.
fn heading_cells(
    line: &[u8],
    split: &Split,
    width: usize,
    first_row: &[u8],
) -> Option<Vec<String>> {
    let mut cells = Cells::default();
    let kinds = kinds_of(&mut cells, split, line);
    if kinds.contains(&Kind::Number) || kinds.iter().any(|k| matches!(k, Kind::Time(_))) {
        return None;
    }
    let of = |i: usize| text(cells.get(line, i).unwrap_or_default()).trim().to_owned();
    if *split != Split::Blanks {
        // One of heading and rows may end with a separator too many.
        let spare = kinds.len() == width + 1 && kinds[width] == Kind::Empty;
        let lacking = kinds.len() + 1 == width && kinds.len() > 1;
        let fits = kinds.len() == width || spare || lacking;
        return fits.then(|| (0..width).map(of).collect());
    }
    let line = text(line);
    let wide: Vec<String> = line
        .split("  ")
        .flat_map(|part| part.split('\t'))
        .map(|part| part.trim().to_owned())
        .filter(|part| !part.is_empty())
        .collect();
    let narrow: Vec<String> = line.split_whitespace().map(str::to_owned).collect();
    let groups = groups(first_row);
    for words in [&wide, &narrow] {
        if words.len() == width {
            return Some(words.clone());
        }
        if words.len() == groups.len() {
            let mut columns = vec![String::new(); width];
            for (word, column) in words.iter().zip(&groups) {
                columns[*column].clone_from(word);
            }
            return Some(columns);
        }
    }
    let words = if wide.len() < width { wide } else { narrow };
    Some(by_place(&line, width, first_row, words))
}

/// First columns of what belongs together: a day, its clock and its half make one.
fn groups(row: &[u8]) -> Vec<usize> {
    let kinds = kinds_of(&mut Cells::default(), &Split::Blanks, row);
    let follows = |i: usize| match kinds[i] {
        Kind::HalfDay => true,
        Kind::Time(Shape::Clock(_)) => i > 0 && kinds[i - 1] == Kind::Time(Shape::Day),
        _ => false,
    };
    (0..kinds.len()).filter(|i| !follows(*i)).collect()
}

/// Gives each word of a heading to the column whose middle lies nearest.
fn by_place(line: &str, width: usize, first_row: &[u8], words: Vec<String>) -> Vec<String> {
    let mut cells = Cells::default();
    cells.cut(&Split::Blanks, first_row, usize::MAX);
    let middle: Vec<i64> =
        (0..width).map(|i| cells.span(i).map_or(0, |(a, b)| i64::from(a) + i64::from(b))).collect();
    let mut columns = vec![String::new(); width];
    let mut from = 0;
    for word in words {
        let Some(at) = line[from..].find(&word).map(|at| at + from) else {
            continue;
        };
        from = at + word.len();
        let place = line[..at].chars().count() * 2 + word.chars().count();
        let nearest = (0..width).min_by_key(|i| (middle[*i] - place as i64).abs());
        if let Some(column) = nearest {
            columns[column].push_str(&word);
            columns[column].push(' ');
        }
    }
    columns
}

/// Does a heading of so many names stand above rows in which every number fell in two, because
/// commas part the columns and mark the decimals as well?
pub(super) fn is_glued(before: &[&[u8]], split: &Split, width: usize) -> bool {
    *split == Split::At(b',')
        && before.iter().rev().take(6).any(|line| {
            let mut cells = Cells::default();
            let names = kinds_of(&mut cells, split, line).len();
            let texts: Vec<String> =
                (0..names).filter_map(|i| Some(text(cells.get(line, i)?).into_owned())).collect();
            let plain = !line.iter().any(u8::is_ascii_digit);
            plain && names > 1 && width == 2 * names - 1 && names_something(&texts)
        })
}
