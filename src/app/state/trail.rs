//! The steps that can be taken back, and made again.

use noonday_engine::scenario::ScenarioDocument;

/// Most steps kept; a document takes about two kilobytes.
const LONGEST: usize = 200;

/// A state of the document, and the key of the field by which it was left; none if the whole was exchanged.
type Step = (Option<&'static str>, ScenarioDocument);

/// Where the document came from, and where it was taken back from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trail {
    behind: Vec<Step>,
    ahead: Vec<Step>,
    /// The field that is being changed: until it rests, all its changes are one step.
    moving: Option<&'static str>,
}

impl Trail {
    /// Remembers a state as it is left by a change of one field, or of the whole.
    pub fn leave(&mut self, before: ScenarioDocument, field: Option<&'static str>) {
        self.ahead.clear();
        if field.is_some() && self.moving == field {
            return;
        }
        self.moving = field;
        self.behind.push((field, before));
        if self.behind.len() > LONGEST {
            self.behind.remove(0);
        }
    }

    /// Ends the step that is being made.
    pub fn rest(&mut self) {
        self.moving = None;
    }

    /// The state before the last step; `now` is where it can be returned to.
    pub fn back(&mut self, now: &ScenarioDocument) -> Option<ScenarioDocument> {
        self.rest();
        pass(&mut self.behind, &mut self.ahead, now)
    }

    /// The state that was last taken back.
    pub fn forward(&mut self, now: &ScenarioDocument) -> Option<ScenarioDocument> {
        self.rest();
        pass(&mut self.ahead, &mut self.behind, now)
    }

    /// What the next step back would undo: the key of a field, or none for the whole; nothing if there is no step.
    pub fn next_back(&self) -> Option<Option<&'static str>> {
        self.behind.last().map(|(field, _)| *field)
    }

    /// What the next step forward would make again.
    pub fn next_forward(&self) -> Option<Option<&'static str>> {
        self.ahead.last().map(|(field, _)| *field)
    }
}

/// Takes a step from one side and puts its counterpart on the other; steps that ended where they began are skipped.
fn pass(
    from: &mut Vec<Step>,
    to: &mut Vec<Step>,
    now: &ScenarioDocument,
) -> Option<ScenarioDocument> {
    loop {
        let (field, document) = from.pop()?;
        if document != *now {
            to.push((field, now.clone()));
            return Some(document);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    const WALLS: &str = "shell.wall_insulation_m";
    const ROOF: &str = "shell.roof_insulation_m";

    fn walls(thickness_m: f64) -> ScenarioDocument {
        let mut document = example();
        document.shell.wall_insulation_m = thickness_m;
        document
    }

    #[test]
    fn steps_are_taken_back_and_made_again_in_order() {
        let mut trail = Trail::default();
        trail.leave(walls(0.01), Some(WALLS));
        trail.leave(walls(0.02), Some(ROOF));
        assert_eq!(trail.next_back(), Some(Some(ROOF)));
        assert_eq!(trail.back(&walls(0.03)), Some(walls(0.02)));
        assert_eq!(trail.back(&walls(0.02)), Some(walls(0.01)));
        assert_eq!(trail.back(&walls(0.01)), None);
        assert_eq!(trail.next_forward(), Some(Some(WALLS)));
        assert_eq!(trail.forward(&walls(0.01)), Some(walls(0.02)));
        assert_eq!(trail.forward(&walls(0.02)), Some(walls(0.03)));
        assert_eq!(trail.forward(&walls(0.03)), None);
    }

    #[test]
    fn a_drag_is_one_step_until_it_rests() {
        let mut trail = Trail::default();
        trail.leave(walls(0.01), Some(WALLS));
        trail.leave(walls(0.02), Some(WALLS));
        assert_eq!(trail.clone().back(&walls(0.03)), Some(walls(0.01)));
        trail.rest();
        trail.leave(walls(0.03), Some(WALLS));
        assert_eq!(trail.back(&walls(0.04)), Some(walls(0.03)));
        assert_eq!(trail.back(&walls(0.03)), Some(walls(0.01)));
    }

    #[test]
    fn a_drag_that_returns_to_where_it_began_is_no_step() {
        let mut trail = Trail::default();
        trail.leave(walls(0.01), Some(ROOF));
        trail.leave(walls(0.02), Some(WALLS));
        assert_eq!(trail.back(&walls(0.02)), Some(walls(0.01)));
    }

    #[test]
    fn a_change_after_a_step_back_leaves_nothing_to_make_again() {
        let mut trail = Trail::default();
        trail.leave(walls(0.01), Some(WALLS));
        trail.back(&walls(0.02));
        trail.leave(walls(0.01), Some(ROOF));
        assert_eq!(trail.next_forward(), None);
    }

    #[test]
    fn the_oldest_steps_are_forgotten() {
        let mut trail = Trail::default();
        for _ in 0..LONGEST + 50 {
            trail.leave(walls(0.01), None);
        }
        assert_eq!(trail.behind.len(), LONGEST);
    }
}
