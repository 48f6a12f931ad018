//! How each kind of field of the fifth form is stored.

use crate::wire::v1::Wire;
use measure::RecordHash;

/// SHA-256 of a key. A record hash is 32 bytes as text too; its printing and reading are borrowed.
impl Wire for [u8; 32] {
    type Form = String;
    fn to_wire(&self) -> Result<String, String> {
        RecordHash::from_bytes(*self).to_wire()
    }
    fn from_wire(form: String) -> Result<Self, String> {
        Ok(*RecordHash::from_wire(form)?.bytes())
    }
}
