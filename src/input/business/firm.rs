//! The letterhead.

use crate::reading::At;
use crate::reading::keys::keys;

keys! {
    /// Who makes the offer.
    pub struct Firm in "the firm" {
        name: String = "name", required, "your firm's name", "Larkspur Flatwork";
        does: Option<String> = "does", none, "one line below the name", "Concrete patios and walks";
        phone: Option<String> = "phone", none, "telephone", "555-0142";
        email: Option<String> = "email", none, "mail address", "office@example.com";
        address: Option<String> = "address", none, "street and town", "4 Kiln Yard, Quillhaven";
        license: Option<String> = "license", none, "licence number, where you have one", "0000-118";
        insurance: Option<String> = "insurance", none,
            "what you are insured for", "Liability insured to $1,000,000";
        logo: Option<At<String>> = "logo" as "path", none,
            "a PNG or JPEG inside the business folder", "logo.png";
    }
}
