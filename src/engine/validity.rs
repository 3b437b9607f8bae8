//! The one form in which a component says that a value it was built from is out of range.

/// A value outside the range that a component accepts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// Name of the input, as in the component's input struct.
    pub quantity: &'static str,
    /// The value given.
    pub value: f64,
    /// The least value accepted.
    pub least: f64,
    /// The greatest value accepted.
    pub greatest: f64,
}

/// Passes a value within `least..=greatest` on.
///
/// * `quantity` — name of the input, for the error
/// * `value`, `least`, `greatest` — in the unit that the name says
///
/// # Errors
/// [`OutOfRange`] if the value lies outside or is not a number.
pub fn require_within(
    quantity: &'static str,
    value: f64,
    least: f64,
    greatest: f64,
) -> Result<f64, OutOfRange> {
    if (least..=greatest).contains(&value) {
        return Ok(value);
    }
    Err(OutOfRange {
        quantity,
        value,
        least,
        greatest,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn refuses_what_lies_outside_and_what_is_not_a_number() {
        assert_eq!(require_within("x", 1.0, 0.0, 1.0), Ok(1.0));
        assert!(require_within("x", 1.1, 0.0, 1.0).is_err());
        assert!(require_within("x", f64::NAN, 0.0, 1.0).is_err());
        assert!(require_within("x", f64::INFINITY, 0.0, 1.0).is_err());
    }
}
