//! What is cold and hot for fresh concrete, in whole degrees Fahrenheit.

use super::{Read, Source};

/// Below 40 °F it has to be protected; the limit itself is the owner's, `cold below`.
pub const COLD: Source = Source::new("ACI 306R-16", "definition of cold weather", Read::Primary);

/// Air above which rules for hot weather begin, and the warmest concrete at the chute.
pub const HOT_FROM: i32 = 85;
pub const HOTTEST: i32 = 95;
pub const HOT: Source = Source::new("UFGS 03300A 3.8.4, and ACI 301-20", "", Read::Secondary);
