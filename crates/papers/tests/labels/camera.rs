//! A page on paper and a camera over it: drawn to dots, turned, out of focus, read.

// The camera stands outside the papers; its sines need not be the same everywhere.
#![allow(clippy::disallowed_methods)]

use resvg::{tiny_skia, usvg};

/// A grey picture; 0 is black, 1 is white.
pub struct Picture {
    pub side: usize,
    pub grey: Vec<f32>,
}

/// The square of 25 mm with this upper left corner, in dots of a printer.
pub fn draw(svg: &str, (x, y): (f32, f32), dpi: f32) -> Picture {
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).expect("our page is SVG");
    let side = (25.0 / 25.4 * dpi).ceil() as u32;
    let mut dots = tiny_skia::Pixmap::new(side, side).expect("a square");
    dots.fill(tiny_skia::Color::WHITE);
    // The library reckons with 96 pixels an inch.
    let scale = dpi / 96.0;
    let at = |mm: f32| -mm / 25.4 * dpi;
    let place = tiny_skia::Transform::from_row(scale, 0.0, 0.0, scale, at(x), at(y));
    resvg::render(&tree, place, &mut dots.as_mut());
    let grey = dots.pixels().iter().map(|dot| f32::from(dot.red()) / 255.0);
    Picture { side: side as usize, grey: grey.collect() }
}

impl Picture {
    fn at(&self, x: isize, y: isize) -> f32 {
        let inside = |value: isize| usize::try_from(value).ok().filter(|v| *v < self.side);
        match (inside(x), inside(y)) {
            (Some(x), Some(y)) => self.grey[y * self.side + x],
            _ => 1.0,
        }
    }

    /// Turned about its middle, on a white ground large enough for any angle.
    pub fn turned(&self, degrees: f32) -> Self {
        let side = self.side * 3 / 2;
        let (sin, cos) = degrees.to_radians().sin_cos();
        let (from, to) = (self.side as f32 / 2.0, side as f32 / 2.0);
        let grey = each_dot(side).map(|(x, y)| {
            let (dx, dy) = (x as f32 + 0.5 - to, y as f32 + 0.5 - to);
            let (sx, sy) = (cos * dx + sin * dy + from - 0.5, cos * dy - sin * dx + from - 0.5);
            let (fx, fy) = (sx - sx.floor(), sy - sy.floor());
            let (ix, iy) = (sx.floor() as isize, sy.floor() as isize);
            let row = |y| self.at(ix, y) * (1.0 - fx) + self.at(ix + 1, y) * fx;
            row(iy) * (1.0 - fy) + row(iy + 1) * fy
        });
        Self { side, grey: grey.collect() }
    }

    /// Out of focus: each point becomes a disc of this diameter, in dots.
    pub fn blurred(&self, diameter: f32) -> Self {
        let reach = (diameter / 2.0).ceil() as isize;
        let disc: Vec<(isize, isize)> = (-reach..=reach)
            .flat_map(|dy| (-reach..=reach).map(move |dx| (dx, dy)))
            .filter(|&(dx, dy)| ((dx * dx + dy * dy) as f32) <= diameter * diameter / 4.0)
            .collect();
        let grey = each_dot(self.side).map(|(x, y)| {
            let sum: f32 = disc.iter().map(|(dx, dy)| self.at(x + dx, y + dy)).sum();
            sum / disc.len() as f32
        });
        Self { side: self.side, grey: grey.collect() }
    }

    /// What the decoder of another project reads, when it finds exactly one code.
    pub fn read(&self) -> Option<String> {
        let value = |x: usize, y: usize| (self.grey[y * self.side + x] * 255.0) as u8;
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(self.side, self.side, value);
        match image.detect_grids().as_slice() {
            [grid] => grid.decode().ok().map(|(_, text)| text),
            _ => None,
        }
    }
}

fn each_dot(side: usize) -> impl Iterator<Item = (isize, isize)> {
    let side = side as isize;
    (0..side).flat_map(move |y| (0..side).map(move |x| (x, y)))
}
