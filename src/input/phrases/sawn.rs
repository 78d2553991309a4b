//! `yes`, `1 1/4 in deep`: whether joints are sawn, and how deep.

use super::positive;
use super::reader::phrase;
use crate::values::Length;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sawn {
    /// They are tooled by hand.
    No,
    /// As deep as the slab asks for, or so deep.
    Yes(Option<Length>),
}

phrase!(
    Sawn,
    "yes, no or depth",
    "bad-sawn",
    "how joints are sawn",
    "write `yes`, `no`, or how deep, for example `1 1/4 in`",
    |said| match said.text() {
        "yes" => Ok(Sawn::Yes(None)),
        "no" => Ok(Sawn::No),
        text => {
            let depth = positive(text.trim_end_matches(" deep")).ok();
            Ok(Sawn::Yes(Some(said.need(depth)?)))
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_whether_joints_are_sawn_and_how_deep() {
        let deep = Sawn::Yes(Some("1 1/4 in".parse().unwrap()));
        let said = ["yes", "no", "1 1/4 in", "1 1/4 in deep"];
        let read = [Sawn::Yes(None), Sawn::No, deep, deep];
        assert_eq!(said.map(|text| text.parse::<Sawn>().unwrap()), read);
        refused::<Sawn>("bad-sawn", &["maybe", "0 in", "deep"]);
    }
}
