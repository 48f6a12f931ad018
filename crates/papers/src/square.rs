//! A square code for any text, as a picture for a screen.

use crate::label::modules;
use crate::refuse::Unprintable;
use crate::sheet::QUIET;
use fast_qr::{ECL, QRBuilder};

/// Most bytes of a text: an address fits many times over, and the code stays coarse enough for a
/// telephone held at arm's length.
pub const MOST_BYTES: usize = 120;

/// The square code of a text as one SVG element of class `square`: black on white with the quiet
/// zone that ISO/IEC 18004 asks for, one unit a module. `title` says what it is for who cannot see it.
///
/// ```
/// let svg = papers::square("https://10.0.0.7:7443/pair?code=3K7P9W", "Address with the code")?;
/// assert!(svg.starts_with("<svg") && svg.contains("<title>Address with the code</title>"));
/// # Ok::<(), papers::Unprintable>(())
/// ```
///
/// # Errors
/// [`Unprintable`] for an empty text or one that is too long.
pub fn square(text: &str, title: &str) -> Result<String, Unprintable> {
    if text.is_empty() || text.len() > MOST_BYTES {
        return Err(Unprintable::Code(format!("{} bytes in a code", text.len())));
    }
    let code = QRBuilder::new(text)
        .ecl(ECL::M)
        .build()
        .map_err(|why| Unprintable::Code(why.to_string()))?;
    let side = code.size + 2 * QUIET;
    let path = modules(&code, 1.0)?;
    let title = title.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    Ok(format!(
        "<svg class=\"square\" viewBox=\"0 0 {side} {side}\" role=\"img\" \
         shape-rendering=\"crispEdges\"><title>{title}</title>\
         <path fill=\"#fff\" d=\"M0 0h{side}v{side}H0z\"/><path fill=\"#000\" d=\"{path}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_empty_or_too_long_is_no_code() {
        assert!(square("", "x").is_err());
        assert!(square(&"a".repeat(MOST_BYTES + 1), "x").is_err());
        assert!(square(&"a".repeat(MOST_BYTES), "<x>").is_ok_and(|svg| svg.contains("&lt;x&gt;")));
    }
}
