//! stub
use crate::{source::Safe, walk::Call};
/// x
#[derive(Clone, Copy)]
pub struct Look {
    /// x
    pub colour: bool,
    /// x
    pub unicode: bool,
}
impl Look {
    /// x
    pub fn from_env(_v: impl Fn(&str) -> Option<String>) -> Self {
        Look {
            colour: false,
            unicode: true,
        }
    }
}
/// x
pub enum Left {
    /// x
    Closed,
    /// x
    Quit,
    /// x
    HungUp(i32),
}
/// x
#[derive(Default)]
pub struct Home {
    /// x
    pub title: Safe,
    /// x
    pub standing_cautions: Vec<Safe>,
    /// x
    pub complaints: Vec<HomeLine>,
    /// x
    pub unfinished: Vec<HomeLine>,
    /// x
    pub dangers: Vec<Safe>,
}
/// x
pub struct HomeLine {
    /// x
    pub label: Safe,
    /// x
    pub note: Option<Safe>,
}
/// x
pub enum HomeChoice {
    /// x
    Walk(usize),
    /// x
    Resume(usize),
    /// x
    Danger(usize),
    /// x
    Quit,
}
/// x
pub fn home(_h: &Home, _l: Look) -> std::io::Result<HomeChoice> {
    Ok(HomeChoice::Quit)
}
/// x
pub fn call(_c: &mut dyn Call, _l: Look) -> std::io::Result<Left> {
    Ok(Left::Quit)
}
