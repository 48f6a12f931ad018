//! The whole loop once in real Chromium, on a tablet and on a phone.

use super::browser::{PHONE, Screen, TABLET, browser};
use super::salon::Salon;

async fn round(screen: Screen) {
    let Some(browser) = browser(screen, "en").await else {
        return;
    };
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::demo(&home.path().join("demo"));
    browser.goto(&salon.url).await;
    browser.picture(&format!("{}-now", screen.name)).await;
    browser.close().await;
}

#[tokio::test]
async fn the_loop_on_a_tablet() {
    round(TABLET).await;
}

#[tokio::test]
async fn the_loop_on_a_phone() {
    round(PHONE).await;
}
