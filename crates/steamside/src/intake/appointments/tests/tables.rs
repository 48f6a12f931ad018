//! Tables: columns by their names, dates in the orders of the world.

use super::*;

/// Minutes after Monday 08:00 and length in minutes of each visit.
fn check(text: &str, expected: &[(i64, i64)]) {
    assert!(is_appointments(text.as_bytes()), "{text}");
    let salon = Salon::new();
    let brought = salon.bring(text);
    assert_eq!(brought.odd, [], "{text}");
    let visits = salon.visits();
    let minutes = |span: Span| span.millis() / 60_000;
    let shown = |v: &Visit| (minutes(v.start() - now()), minutes(v.end() - v.start()));
    assert_eq!(visits.iter().map(shown).collect::<Vec<_>>(), expected, "{text}");
}

#[test]
fn columns_are_found_by_their_names() {
    check("Date,Time,Service,Minutes\n2025-06-02,10:00,Gel,45\n", &[(120, 45)]);
    check("Start,End,Title\n2025-06-02 10:00,2025-06-02 11:30,Gel\n", &[(120, 90)]);
    check(
        "Ngày;Giờ;Dịch vụ;Ghế\n02/06/2025;14:00;Sơn gel;3\n13/06/2025;9:00;x;1\n",
        &[(360, 60), (11 * 1_440 + 60, 60)],
    );
    check("Fecha\tHora\tServicio\tHora fin\n2025-06-02\t9h30\tGel\t10h15\n", &[(90, 45)]);
    check("Datum;Uhrzeit;Leistung;Dauer\n02.06.2025;9.30;Gel;PT30M\n", &[(90, 30)]);
    check(
        "A salon's list\n\ndate,start time,SERVICE\n6/2/2025,1:00 pm,Gel\n6/13/2025,12:00 am,x\n",
        &[(300, 60), (11 * 1_440 - 480, 60)],
    );
    // Quotes, a mark at the beginning, line ends of both kinds, an empty line.
    check(
        "\u{feff}\"Date\",\"Time\",\"Service\"\r\n\r\n\"2025-06-02\",\"10:00\",\"Gel, long\"\r\n",
        &[(120, 60)],
    );
}

#[test]
fn a_date_that_can_be_read_in_two_ways_is_a_question() {
    let salon = Salon::new();
    let brought = salon.bring("Date,Time,Service\n06/02/2025,10:00,Gel\n");
    assert_eq!((counts(&brought), brought.odd.len()), ([0, 0, 0, 0], 1));
    // Another line of the same table tells.
    let brought = salon.bring("Date,Time,Service\n06/02/2025,10:00,Gel\n06/20/2025,10:00,Gel\n");
    assert_eq!((counts(&brought), brought.odd.len()), ([2, 0, 0, 0], 0));
}

#[test]
fn a_table_that_comes_again() {
    use VisitState::{Booked, Cancelled};
    let salon = Salon::new();
    let head = "Date,Time,Service,Client\n";
    let two =
        format!("{head}2025-06-02,10:00,Gel,A\n2025-06-02,10:00,Gel,B\n2025-06-02,16:00,Gel,C\n");
    assert_eq!(counts(&salon.bring(&two)), [3, 0, 0, 0], "a pair at one time are two visits");
    assert_eq!(counts(&salon.bring(&two)), [0, 0, 0, 3]);
    // Without an id a row that moved is one that went and one that came.
    let moved =
        format!("{head}2025-06-02,10:00,Gel,A\n2025-06-02,11:00,Gel,B\n2025-06-02,16:00,Gel,C\n");
    assert_eq!(counts(&salon.bring(&moved)), [1, 0, 1, 2]);
    let states: Vec<_> = salon.visits().iter().map(|visit| visit.state).collect();
    assert_eq!(states, [Booked, Cancelled, Booked, Booked]);
    // With an id it moves, and its status calls it off.
    let with_id = |time: &str, status: &str| {
        format!(
            "Booking ID,Date,Time,Service,Status\n7,2025-06-03,{time},Gel,{status}\n8,2025-06-03,15:00,Gel,\n"
        )
    };
    assert_eq!(counts(&salon.bring(&with_id("10:00", ""))), [2, 0, 0, 0]);
    assert_eq!(counts(&salon.bring(&with_id("10:30", "Confirmed"))), [0, 1, 0, 1]);
    assert_eq!(counts(&salon.bring(&with_id("10:30", "Đã hủy"))), [0, 0, 1, 1]);
}

#[test]
fn a_cycle_record_is_no_table_of_appointments() {
    for record in [
        include_str!("../../../../demo/good_a.csv"),
        "time;temp_c;press\n0;20;101\n",
        "date;time;service temp;pressure\n2025-06-02;10:00;134;304\n",
        "",
    ] {
        assert!(!is_appointments(record.as_bytes()));
    }
    // Other encodings: UTF-16 with its mark, and single bytes.
    let text = "Fecha;Hora;Tratamiento\n2025-06-02;10:00;Uñas\n";
    let wide: Vec<u8> =
        [0xff, 0xfe].into_iter().chain(text.encode_utf16().flat_map(u16::to_le_bytes)).collect();
    let single: Vec<u8> = text.chars().map(|c| c as u8).collect();
    for bytes in [wide, single] {
        assert_eq!(table::decoded(&bytes), text);
        assert!(is_appointments(&bytes));
    }
}
