//! `yes`, `early, 1 1/4 in deep`, `no`: how joints are made, and how deep.

use super::positive;
use super::reader::phrase;
use crate::values::Length;

/// How a joint is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointMethod {
    /// With a groover, while the concrete is soft.
    Tooled,
    /// With a wet or dry saw, once it bears one without ravelling.
    SawnLate,
    /// With a light early-entry saw, the same day.
    SawnEarly,
}

impl JointMethod {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Tooled => "tooled",
            Self::SawnLate => "sawn",
            Self::SawnEarly => "sawn early",
        }
    }

    pub const fn is_sawn(self) -> bool {
        matches!(self, Self::SawnLate | Self::SawnEarly)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sawn {
    pub method: JointMethod,
    /// In place of what the slab asks for.
    pub depth: Option<Length>,
}

phrase!(
    Sawn,
    "yes, early, no or depth",
    "bad-sawn",
    "how joints are made",
    "write `yes`, `early` for a saw that cuts the same day, `no` for a groover, or how deep, for example `1 1/4 in` or `early, 1 in deep`",
    |said| {
        let (mut method, mut depth) = (None, None);
        for part in said.parts(&[","]) {
            let how = match part.text() {
                "yes" => Some(JointMethod::SawnLate),
                "early" => Some(JointMethod::SawnEarly),
                "no" => Some(JointMethod::Tooled),
                _ => None,
            };
            if let Some(how) = how {
                part.once("how they are made", &mut method, how)?;
            } else {
                let deep = positive(part.text().trim_end_matches(" deep")).ok();
                part.once("how deep they are", &mut depth, said.need(deep)?)?;
            }
        }
        // Who says only how deep a key called `sawn` is, saws.
        let method = method.unwrap_or(JointMethod::SawnLate);
        Ok(Sawn { method, depth })
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_how_joints_are_made_and_how_deep() {
        #[track_caller]
        fn case(text: &str, method: JointMethod, depth: Option<&str>) {
            let depth = depth.map(|depth| depth.parse().unwrap());
            assert_eq!(text.parse(), Ok(Sawn { method, depth }), "{text}");
        }
        case("yes", JointMethod::SawnLate, None);
        case("no", JointMethod::Tooled, None);
        case("early", JointMethod::SawnEarly, None);
        case("1 1/4 in", JointMethod::SawnLate, Some("1 1/4 in"));
        case("1 1/4 in deep", JointMethod::SawnLate, Some("1 1/4 in"));
        case("early, 1 in deep", JointMethod::SawnEarly, Some("1 in"));
        case("1 1/2 in, no", JointMethod::Tooled, Some("1 1/2 in"));
        refused::<Sawn>("bad-sawn", &["maybe", "0 in", "deep", "yes,"]);
        refused::<Sawn>("said-twice", &["yes, no", "1 in, 2 in"]);
    }
}
