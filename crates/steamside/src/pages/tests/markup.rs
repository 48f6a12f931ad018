//! Just enough of a reader for the markup that our own pages are made of.

/// A tag with the text that follows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tag {
    /// `form`, `/form`.
    pub name: String,
    attributes: Vec<(String, String)>,
    /// Text up to the next tag.
    pub text: String,
}

impl Tag {
    /// The value of an attribute.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }
}

/// Every tag of a page, in order.
pub fn tags(html: &str) -> Vec<Tag> {
    html.split('<')
        .skip(1)
        .map(|piece| {
            let (inside, text) = piece.split_once('>').expect("a tag ends");
            let (name, rest) = inside.split_once(' ').unwrap_or((inside, ""));
            let text = text.replace("&amp;", "&").replace("&lt;", "<").replace("&gt;", ">");
            Tag { name: name.to_owned(), attributes: attributes(rest), text }
        })
        .collect()
}

fn attributes(mut rest: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    while !rest.trim().is_empty() {
        rest = rest.trim_start();
        let end = rest.find(['=', ' ']).unwrap_or(rest.len());
        let name = rest[..end].to_owned();
        if rest[end..].starts_with("=\"") {
            let value = &rest[end + 2..];
            let close = value.find('"').expect("a value ends");
            found.push((name, value[..close].to_owned()));
            rest = &value[close + 1..];
        } else {
            found.push((name, String::new()));
            rest = &rest[end..];
        }
    }
    found
}

/// The text inside the element that the tag opens.
pub fn visible(tags: &[Tag], at: usize) -> String {
    let name = &tags[at].name;
    let (open, close) = (name.as_str(), format!("/{name}"));
    let mut depth = 0;
    let mut text = Vec::new();
    for tag in &tags[at..] {
        if tag.name == open {
            depth += 1;
        } else if tag.name == close {
            depth -= 1;
            if depth == 0 {
                break;
            }
        }
        text.push(tag.text.trim());
    }
    text.retain(|piece| !piece.is_empty());
    text.join(" ")
}

/// The page as somebody hears it: what can be seen, one element a line, what can be tapped in
/// brackets.
pub fn read_out(html: &str) -> String {
    let mut lines = Vec::new();
    let body = html.split_once("<main").map_or(html, |(_, main)| main);
    let body = body.split_once("</main>").map_or(body, |(main, _)| main);
    let all = tags(&format!("<main{body}"));
    for tag in &all {
        let text = tag.text.split_whitespace().collect::<Vec<_>>().join(" ");
        let mark = match tag.name.as_str() {
            "form" => tag.get("action").map(|action| format!("-> {action}")),
            "a" => tag.get("href").map(|href| format!("[{}]", shortened(href))),
            "input" | "select" if tag.get("type") != Some("hidden") => {
                let value = tag.get("value").map(|value| format!("={}", shortened(value)));
                tag.get("name").map(|name| format!("({name}{})", value.unwrap_or_default()))
            }
            _ => None,
        };
        lines.extend(mark);
        if !text.is_empty() {
            lines.push(text);
        }
    }
    lines.join("\n")
}

/// Ids are long and say nothing to a reader.
fn shortened(text: &str) -> String {
    let mut out = String::new();
    let mut digits = String::new();
    for c in text.chars().chain(['\n']) {
        if c.is_ascii_hexdigit() {
            digits.push(c);
        } else {
            out.push_str(if digits.len() >= 32 { "ID" } else { &digits });
            digits.clear();
            out.push(c);
        }
    }
    out.trim_end().to_owned()
}
