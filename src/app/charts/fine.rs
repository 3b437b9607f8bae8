//! A canvas whose whole-number places are quarters of a device pixel, so that lines do not wobble on a coarse screen.

use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
};
use plotters_canvas::CanvasBackend;

/// Steps in a device pixel.
pub const STEPS_PER_PIXEL: u32 = 4;

/// What the canvas may complain of.
type Complaint = <CanvasBackend as DrawingBackend>::ErrorType;
/// What drawing gives.
type Drawn = Result<(), DrawingErrorKind<Complaint>>;

/// The canvas; its context has to be scaled by one over [`STEPS_PER_PIXEL`].
pub struct FineCanvas(pub CanvasBackend);

impl DrawingBackend for FineCanvas {
    type ErrorType = Complaint;

    fn get_size(&self) -> (u32, u32) {
        let (width, height) = self.0.get_size();
        (width * STEPS_PER_PIXEL, height * STEPS_PER_PIXEL)
    }

    fn ensure_prepared(&mut self) -> Drawn {
        self.0.ensure_prepared()
    }

    fn present(&mut self) -> Drawn {
        self.0.present()
    }

    fn draw_pixel(&mut self, point: BackendCoord, colour: BackendColor) -> Drawn {
        self.0.draw_pixel(point, colour)
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Drawn {
        self.0.draw_path(path, style)
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        upper_left: BackendCoord,
        bottom_right: BackendCoord,
        style: &S,
        fill: bool,
    ) -> Drawn {
        self.0.draw_rect(upper_left, bottom_right, style, fill)
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        vertices: I,
        style: &S,
    ) -> Drawn {
        self.0.fill_polygon(vertices, style)
    }

    fn draw_text<S: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &S,
        place: BackendCoord,
    ) -> Drawn {
        self.0.draw_text(text, style, place)
    }
}
