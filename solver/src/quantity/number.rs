//! Operations on plain numbers that are one instruction in a browser, where those of the same name
//! in the libraries are calls.

/// The length of a vector: √(x² + y²), exact to the last bit but one for sizes of 1e-150 to 1e150.
///
/// `sqrt` is rounded correctly on every machine; `libm::hypot`, which is for any size, computes
/// its root digit by digit in a browser.
pub(crate) fn norm(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

/// The lesser of two numbers, the second where the first is none.
pub(crate) fn lesser(one: f64, other: f64) -> f64 {
    if one <= other { one } else { other }
}

/// The greater of two numbers, the second where the first is none.
pub(crate) fn greater(one: f64, other: f64) -> f64 {
    if one >= other { one } else { other }
}
