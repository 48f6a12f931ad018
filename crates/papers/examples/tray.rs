//! A made-up packing as SVG on the standard output, to be looked at:
//! `cargo run -p papers --example tray -- screen|pouch|rack|sheet|sheet-vi|sheets > tray.svg`.
#![allow(clippy::unwrap_used, clippy::disallowed_methods)] // an example is a tool for the desk

use load::geometry::{Outline, Point, Rect};
use load::picture::{Distance, Part, Picture, Role};
use papers::{
    Caption, DrawingNames, PictureWords, TrayOfSheet, TrayWords, Unprintable, drawing, tray_sheet,
};

const CODES: [&str; 8] = ["3K7P", "9F2M", "WWH4", "7C0D", "K2N8", "5T6R", "H1XA", "P8E3"];

fn rect(role: Role, (x, y): (i32, i32), (width, height): (i32, i32), names: Option<usize>) -> Part {
    Part { role, outline: Outline::rectangle(width, height).unwrap().moved(x, y), names }
}

fn polygon(role: Role, corners: &[(i32, i32)], names: Option<usize>) -> Part {
    let corners = corners.iter().map(|&(x, y)| Point { x, y }).collect();
    Part { role, outline: Outline::new(corners).unwrap(), names }
}

fn frame(width: i32, height: i32) -> Rect {
    Rect { x: 0, y: 0, width, height }
}

/// Six pouches on a tray of 180 × 285 mm; in the row at the back two lie over their neighbours.
fn tray() -> Picture {
    let mut parts = vec![
        rect(Role::Tray, (0, 0), (1800, 2850), None),
        rect(Role::Free, (100, 100), (1600, 2650), None),
        rect(Role::Paper, (120, 120), (900, 1300), Some(0)),
        rect(Role::Film, (1080, 120), (600, 1000), Some(1)),
        rect(Role::Film, (1080, 1150), (600, 260), Some(2)),
    ];
    for (at, role) in [(0, Role::Paper), (1, Role::Film), (2, Role::Paper)] {
        parts.push(rect(role, (120 + at * 480, 1480), (600, 1250), Some(3 + at as usize)));
        if at > 0 {
            parts.push(rect(Role::Over, (120 + at * 480, 1480), (120, 1250), None));
        }
    }
    let point = |x, y| Point { x, y };
    let distances = vec![
        Distance { from: point(0, 600), to: point(120, 600) },
        Distance { from: point(1680, 2300), to: point(1800, 2300) },
        Distance { from: point(400, 0), to: point(400, 120) },
    ];
    Picture { frame: frame(1800, 2850), parts, distances }
}

/// Twelve places on edge, nine of them taken.
fn rack() -> Picture {
    let mut parts = vec![rect(Role::Tray, (0, 0), (1900, 2300), None)];
    for at in 0..12 {
        parts.push(rect(Role::Place, (50 + at * 150, 50), (150, 2200), None));
    }
    for at in 0..9 {
        let role = if at % 2 == 0 { Role::Paper } else { Role::Film };
        parts.push(rect(role, (60 + at * 150, 80), (130, 2000), Some(at as usize)));
    }
    Picture { frame: frame(1900, 2300), parts, distances: Vec::new() }
}

/// A pouch of 90 × 230 mm with three pieces.
fn pouch() -> Picture {
    let parts = vec![
        rect(Role::Film, (0, 0), (900, 2300), Some(0)),
        rect(Role::Face, (80, 80), (740, 2140), None),
        rect(Role::Fold, (80, 1900), (740, 320), None),
        polygon(
            Role::Piece,
            &[
                (120, 150),
                (200, 150),
                (260, 800),
                (300, 800),
                (360, 150),
                (440, 150),
                (340, 1000),
                (320, 1200),
                (240, 1200),
                (220, 1000),
            ],
            Some(0),
        ),
        polygon(
            Role::Piece,
            &[(560, 150), (620, 150), (630, 1450), (600, 1500), (550, 1450)],
            Some(1),
        ),
        polygon(
            Role::Piece,
            &[(700, 150), (760, 150), (770, 1350), (740, 1400), (690, 1350)],
            Some(2),
        ),
    ];
    let point = |x, y| Point { x, y };
    let distances = vec![
        Distance { from: point(440, 300), to: point(560, 300) },
        Distance { from: point(0, 0), to: point(900, 0) },
        Distance { from: point(0, 0), to: point(0, 2300) },
    ];
    Picture { frame: frame(900, 2300), parts, distances }
}

fn caption(role: Role, name: usize) -> Option<Caption> {
    if role == Role::Piece {
        return Some(Caption { main: (name + 1).to_string(), more: String::new() });
    }
    let kind = ["manicure", "pedicure", "bits"][name % 3];
    Some(Caption { main: CODES[name % 8].to_owned(), more: kind.to_owned() })
}

const ENGLISH: PictureWords<'_> = PictureWords {
    paper: "paper up",
    film: "film up",
    over: "lies over by 2.5 cm",
    fold: "kept free for the fold",
    near: Some("door"),
    caption: &caption,
    distance: &|tenths| format!("{} mm", (f64::from(tenths) / 10.0).round()),
};

const VIETNAMESE: PictureWords<'_> = PictureWords {
    paper: "mặt giấy lên trên",
    film: "mặt nhựa trong lên trên",
    over: "túi này đè lên túi kia khoảng 2,5 cm",
    fold: "chừa trống để gấp mép túi lại",
    near: Some("cửa máy"),
    ..ENGLISH
};

fn sheet(words: &TrayWords<'_>, heading: &str, facts: (&str, &str)) -> Result<String, Unprintable> {
    let picture = tray();
    let tray = TrayOfSheet { picture: &picture, heading, mass: facts.0, clearance: Some(facts.1) };
    Ok(tray_sheet(&[tray], words)?.concat())
}

/// Three trays that are wide and not deep: two go on a page.
fn low_trays() -> Result<String, Unprintable> {
    let parts = vec![
        rect(Role::Tray, (0, 0), (1800, 1250), None),
        rect(Role::Paper, (120, 120), (760, 1000), Some(0)),
        rect(Role::Film, (920, 120), (760, 1000), Some(1)),
    ];
    let picture = Picture { frame: frame(1800, 1250), parts, distances: Vec::new() };
    let (mass, clearance) = ("Pouches and tray 0.71\u{a0}kg", Some("12\u{a0}mm free to the wall"));
    let headings = ["Tray 1 from the top", "Tray 2 from the top", "Tray 3 from the top"];
    let trays = headings.map(|heading| TrayOfSheet { picture: &picture, heading, mass, clearance });
    Ok(tray_sheet(&trays, &english())?.remove(0))
}

fn english() -> TrayWords<'static> {
    TrayWords {
        id: "tray",
        title: "What goes into machine 1",
        printed: "Printed 28 NOV 2026, 14:02",
        page: &|page, of| format!("page {page} of {of}"),
        scale: &|tenths| format!("scale 1 : {}", f64::from(tenths) / 10.0),
        bar: "50 mm. If it is not, print again at 100 %.",
        picture: ENGLISH,
        total: "All together 2.31\u{a0}kg in 12 pouches",
        limit: "Limit of this machine: 3.0\u{a0}kg (its manual, page\u{a0}21)",
        programme: "Proposed: wrapped, 134\u{a0}°C, dry 20\u{a0}min. In pouches, nothing hollow.",
        cautions: &[
            "The machine's own manual comes first.",
            "Hot: use tongs or heat gloves.",
            "Let it cool before you touch it.",
            "Never open it under pressure.",
        ],
    }
}

fn vietnamese() -> TrayWords<'static> {
    TrayWords {
        title: "Những gì cho vào máy hấp số 1",
        printed: "In ngày 28 tháng 11 năm 2026, 14:02",
        page: &|page, of| format!("trang {page} trên {of}"),
        scale: &|tenths| format!("tỷ lệ 1 : {}", f64::from(tenths) / 10.0),
        bar: "50 mm. Nếu không đúng, hãy in lại ở 100 %.",
        picture: VIETNAMESE,
        total: "Tất cả nặng 2,31\u{a0}kg trong 12 túi",
        limit: "Giới hạn của máy này: 3,0\u{a0}kg (sách hướng dẫn của máy, trang\u{a0}21)",
        programme: "Đề nghị: đồ có bọc, 134\u{a0}°C, sấy khô 20 phút. Đồ trong túi, không có ống rỗng.",
        cautions: &[
            "Sách hướng dẫn của chính chiếc máy này luôn được ưu tiên trước hết.",
            "Nóng: hãy dùng kẹp gắp hoặc găng tay chịu nhiệt khi lấy khay ra.",
            "Hãy để nguội hẳn trước khi chạm vào túi và dụng cụ bên trong.",
            "Không bao giờ mở cửa máy khi bên trong còn áp suất.",
        ],
        ..english()
    }
}

fn main() -> Result<(), Unprintable> {
    let what = std::env::args().nth(1).unwrap_or_default();
    let named = |title, words| DrawingNames { id: "d1", title, desc: "A made-up picture.", words };
    let svg = match what.as_str() {
        "pouch" => {
            let words = PictureWords { near: None, ..ENGLISH };
            drawing(&pouch(), &named("A pouch", words))?
        }
        "rack" => {
            let words = PictureWords { paper: "paper right", film: "film right", ..ENGLISH };
            drawing(&rack(), &named("The rack", words))?
        }
        "sheet" => sheet(
            &english(),
            "Tray 1 from the top",
            ("Pouches and tray 1.24\u{a0}kg", "12 mm free to the wall"),
        )?,
        "sheets" => low_trays()?,
        "sheet-vi" => sheet(
            &vietnamese(),
            "Khay thứ 1 từ trên xuống",
            ("Túi và khay nặng 1,24\u{a0}kg", "Cách thành khay 12\u{a0}mm, đủ chỗ trống"),
        )?,
        _ => drawing(&tray(), &named("Tray 1 from the top", ENGLISH))?,
    };
    println!("{svg}");
    Ok(())
}
