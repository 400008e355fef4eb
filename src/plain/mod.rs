//! stub
use crate::{tui::Left, walk::Call};
/// x
#[derive(Default)]
pub struct Options {
    /// x
    pub echo: bool,
}
/// x
pub fn call(
    _i: impl std::io::BufRead,
    _o: impl std::io::Write,
    _c: &mut dyn Call,
    _x: Options,
) -> std::io::Result<Left> {
    Ok(Left::Quit)
}
