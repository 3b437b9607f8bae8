//! Psychrometrics.
