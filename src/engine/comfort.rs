//! Comfort and heat safety.
