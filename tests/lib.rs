//! Shared helpers of the reference checks.
