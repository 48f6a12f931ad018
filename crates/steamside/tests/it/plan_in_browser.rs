//! The day plan in real Chromium: from NOW to an agreed plan, in three languages; a drawing on a
//! tablet, a list on a phone, nothing wider than the screen.

use super::browser::{Browser, PHONE, Screen, TABLET, browser};
use super::salon::Salon;
use serde_json::Value;

/// The names of the controls, language by language.
const NAMES: [(&str, &str, &str); 3] = [
    ("en", "The day plan", "Agree to this plan HL"),
    ("vi", "Kế hoạch hôm nay", "Đồng ý kế hoạch này HL"),
    ("es", "El plan del día", "Aceptar este plan HL"),
];

async fn ask(browser: &Browser, script: &str) -> Value {
    browser.client.execute(script, vec![]).await.expect("a script")
}

async fn agrees(screen: Screen, (language, way, agree): (&str, &str, &str)) {
    let Some(browser) = browser(screen, language).await else {
        return;
    };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    browser.goto(&format!("{}/", salon.url)).await;
    browser.tap(way).await;
    let wide =
        ask(&browser, "return document.documentElement.scrollWidth - window.innerWidth").await;
    assert!(
        wide.as_i64().is_some_and(|w| w <= 0),
        "{language} on a {}: {wide} too wide",
        screen.name
    );
    browser.picture(&format!("{}-plan-{language}", screen.name)).await;
    // Late in the evening nothing is left of the demo's day.
    if ask(&browser, "return !!document.querySelector('[action=\"/act/accept-plan\"]')").await
        == true
    {
        let drawn = "const t = document.querySelector('.tape'); return !!t && t.offsetHeight > 0";
        assert_eq!(ask(&browser, drawn).await, Value::Bool(screen.name == "tablet"));
        assert_ne!(ask(&browser, "return document.querySelectorAll('.plan-runs').length").await, 0);
        browser.tap(agree).await;
        assert!(!browser.text().await.contains(agree.trim_end_matches(" HL")), "{language}");
    }
    browser.close().await;
}

#[tokio::test]
async fn the_plan_on_a_tablet_and_on_a_phone_in_three_languages() {
    for names in NAMES {
        agrees(TABLET, names).await;
        agrees(PHONE, names).await;
    }
}
