//! Every input that the fuzzer kept is read to an answer, never to a stop. Inputs that once stopped
//! the fuzzer lie among them as `found-*`.

use crate::hostile::check;
use cycle::record::{Known, read};
use std::path::Path;

#[test]
fn every_kept_input_is_answered() {
    let corpus = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fuzz/corpus");
    let mut files = 0;
    for target in ["read", "table"] {
        for entry in std::fs::read_dir(corpus.join(target)).unwrap() {
            let path = entry.unwrap().path();
            let bytes = std::fs::read(&path).unwrap();
            files += 1;
            if let Err(why) = check(read(bytes.as_slice(), &Known::default())) {
                panic!("{}: {why}", path.display());
            }
        }
    }
    assert!(files > 200, "{files}");
}
