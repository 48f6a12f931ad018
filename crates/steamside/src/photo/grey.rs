//! A picture as grey dots, from JPEG or PNG, unpacked within a limit.

use super::NotRead;
use std::io::Cursor;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

/// Longest side that a header may claim.
const LONGEST_SIDE: usize = 12_000;
/// Passes over a JPEG picture that are followed; cameras write one, or about ten.
const MOST_PASSES: usize = 16;
/// What the PNG reader may hold beside our own row.
const PNG_BYTES: usize = 8 * 1024 * 1024;

/// Grey dots in rows from the top; 0 is black, 255 is white.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Grey {
    width: usize,
    height: usize,
    dots: Vec<u8>,
}

impl Grey {
    /// A picture of these rows; `None` where the dots do not fill it, or it is empty.
    pub fn new(width: usize, height: usize, dots: Vec<u8>) -> Option<Self> {
        let whole = width > 0 && height > 0 && width.checked_mul(height) == Some(dots.len());
        whole.then_some(Self { width, height, dots })
    }

    /// Dots in a row.
    pub const fn width(&self) -> usize {
        self.width
    }

    /// Rows.
    pub const fn height(&self) -> usize {
        self.height
    }

    /// The longer of the two.
    pub fn longer_side(&self) -> usize {
        self.width.max(self.height)
    }

    /// The dot at a place; white outside.
    pub fn at(&self, x: usize, y: usize) -> u8 {
        let inside = x < self.width && y < self.height;
        if inside { self.dots[y * self.width + x] } else { 255 }
    }

    /// All dots, row by row.
    #[cfg(test)]
    pub fn dots(&self) -> &[u8] {
        &self.dots
    }

    /// Do more than a third of the dots differ from their right neighbour by 40 or more? No label
    /// does at a size at which it is read, and the finder takes a minute over such a picture.
    pub fn mere_grain(&self) -> bool {
        let pairs = self.dots.windows(2);
        let rough = pairs.filter(|pair| pair[0].abs_diff(pair[1]) >= 40).count();
        rough > self.dots.len() / 3
    }

    /// Half as wide and high, each dot the mean of four.
    pub fn halved(&self) -> Self {
        let (width, height) = (self.width.div_ceil(2), self.height.div_ceil(2));
        let mut dots = Vec::with_capacity(width * height);
        for y in 0..height {
            for x in 0..width {
                // At an odd edge the last row or column counts twice.
                let (right, below) =
                    ((2 * x + 1).min(self.width - 1), (2 * y + 1).min(self.height - 1));
                let sum: u32 = [(2 * x, 2 * y), (right, 2 * y), (2 * x, below), (right, below)]
                    .into_iter()
                    .map(|(x, y)| u32::from(self.dots[y * self.width + x]))
                    .sum();
                dots.push((sum / 4) as u8);
            }
        }
        Self { width, height, dots }
    }
}

/// Unpacks a JPEG or PNG picture of at most so many dots.
pub fn unpack(bytes: &[u8], most_dots: usize) -> Result<Grey, NotRead> {
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        png(bytes, most_dots)
    } else if bytes.starts_with(&[0xFF, 0xD8, 0xFF]) {
        jpeg(bytes, most_dots)
    } else {
        Err(NotRead::NoPicture)
    }
}

/// Refuses a claimed size before room is made for it.
fn allowed(width: usize, height: usize, most_dots: usize) -> Result<(), NotRead> {
    let sides = width.max(height) <= LONGEST_SIDE;
    let fits = sides && width.checked_mul(height).is_some_and(|dots| dots <= most_dots);
    if fits { Ok(()) } else { Err(NotRead::TooLarge) }
}

fn jpeg(bytes: &[u8], most_dots: usize) -> Result<Grey, NotRead> {
    let broken = |_| NotRead::NoPicture;
    // The larger limits let the size be read; ours decides what is said about it.
    let options = DecoderOptions::default()
        .jpeg_set_out_colorspace(ColorSpace::Luma)
        .jpeg_set_max_scans(MOST_PASSES)
        .set_strict_mode(false)
        .set_max_width(1 << 16)
        .set_max_height(1 << 16);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    decoder.decode_headers().map_err(broken)?;
    let info = decoder.info().ok_or(NotRead::NoPicture)?;
    let (width, height) = (usize::from(info.width), usize::from(info.height));
    allowed(width, height, most_dots)?;
    Grey::new(width, height, decoder.decode().map_err(broken)?).ok_or(NotRead::NoPicture)
}

/// Row by row, so that beside the grey dots only one row of colour is held.
fn png(bytes: &[u8], most_dots: usize) -> Result<Grey, NotRead> {
    let broken = |_| NotRead::NoPicture;
    let limits = png::Limits { bytes: PNG_BYTES };
    let mut decoder = png::Decoder::new_with_limits(Cursor::new(bytes), limits);
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    let mut reader = decoder.read_info().map_err(broken)?;
    let (width, height) = reader.info().size();
    let (width, height) = (width as usize, height as usize);
    allowed(width, height, most_dots)?;
    // Woven rows come from no camera and would have to be held whole.
    if reader.info().interlaced {
        return Err(NotRead::NoPicture);
    }
    let (colour, _) = reader.output_color_type();
    let mut dots = Vec::with_capacity(width * height);
    while let Some(row) = reader.next_row().map_err(broken)? {
        dots.extend(row.data().chunks_exact(colour.samples()).take(width).map(shade));
    }
    Grey::new(width, height, dots).ok_or(NotRead::NoPicture)
}

/// How bright one dot is (weights of ITU-R BT.601 in 256ths, from memory); what is clear is white.
fn shade(dot: &[u8]) -> u8 {
    let (bright, cover) = match *dot {
        [grey] => (u32::from(grey), 255),
        [grey, cover] => (u32::from(grey), u32::from(cover)),
        [red, green, blue, ..] => {
            let sum = 77 * u32::from(red) + 150 * u32::from(green) + 29 * u32::from(blue);
            (sum / 256, dot.get(3).map_or(255, |cover| u32::from(*cover)))
        }
        [] => (255, 255),
    };
    ((bright * cover + 255 * (255 - cover)) / 255) as u8
}
