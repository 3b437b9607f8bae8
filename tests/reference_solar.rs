//! Reference checks.
