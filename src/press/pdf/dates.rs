//! The document's own day, in the two spellings a PDF wants.

use chrono::{DateTime, Utc};

/// As the Info dictionary and file parameters spell it: `D:20260504000000Z`.
pub fn in_info(seconds: i64) -> String {
    moment(seconds).format("D:%Y%m%d%H%M%SZ").to_string()
}

/// As XMP spells it: `2026-05-04T00:00:00Z`.
pub fn in_xmp(seconds: i64) -> String {
    moment(seconds).format("%Y-%m-%dT%H:%M:%SZ").to_string()
}

fn moment(seconds: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(seconds, 0).expect("a document's day lies within the calendar")
}

#[cfg(test)]
mod tests {
    use super::{in_info, in_xmp};

    #[test]
    fn both_spellings_name_the_same_second() {
        // 2026-05-04 is 20,577 days after 1970-01-01.
        assert_eq!(in_info(20_577 * 86_400 + 3_723), "D:20260504010203Z");
        assert_eq!(in_xmp(20_577 * 86_400 + 3_723), "2026-05-04T01:02:03Z");
    }
}
