//! Each screen as it is read out, kept beside the tests: what changes shows in a review.

use super::markup::read_out;
use super::screens;
use crate::words::Language;

#[test]
fn every_screen_reads_as_it_did() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("pictures");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        for (name, html) in screens(Language::En) {
            insta::assert_snapshot!(name, read_out(&html));
        }
    });
}
