//! A key that other tabs write too.

use super::{StorageTrouble, read_raw, restore};

/// A key, and what stood there when this tab last read or wrote it, so that nothing is written over unseen.
#[derive(Clone, Debug)]
pub struct Watched {
    key: &'static str,
    known: Option<String>,
}

impl Watched {
    /// With what stands there now.
    pub fn new(key: &'static str) -> Self {
        let known = read_raw(key);
        Self { key, known }
    }

    /// With nothing known, so that whatever stands there counts as another's.
    pub fn unknown(key: &'static str) -> Self {
        Self { key, known: None }
    }

    /// What another tab has put there since, unless it is the same as `own`.
    pub fn foreign(&self, own: &str) -> Option<String> {
        read_raw(self.key).filter(|raw| self.known.as_ref() != Some(raw) && raw != own)
    }

    /// Takes note of what stands there now.
    pub fn accept(&mut self) {
        self.known = read_raw(self.key);
    }

    /// Writes a text over what stands there.
    ///
    /// # Errors
    /// When storage is blocked or full.
    pub fn write(&mut self, text: String) -> Result<(), StorageTrouble> {
        restore(self.key, Some(&text))?;
        self.known = Some(text);
        Ok(())
    }
}
