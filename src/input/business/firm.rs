//! The letterhead.

use super::tables;
use crate::reading::{At, Node, Problems};

/// Who makes the offer.
#[derive(Clone, Debug)]
pub struct Firm {
    pub name: String,
    pub does: Option<String>,
    pub phone: Option<String>,
    pub email: Option<String>,
    pub address: Option<String>,
    pub license: Option<String>,
    pub insurance: Option<String>,
    pub logo: Option<At<String>>,
}

pub(super) fn read(node: &Node, problems: &mut Problems) -> Option<Firm> {
    let fields = node.fields(&tables::FIRM, problems).ok()?;
    let name = fields
        .required("name", problems)
        .ok()
        .and_then(|_| fields.read::<String>("name", problems));
    let logo = fields.read::<String>("logo", problems);
    let mut text = |key: &str| fields.read::<String>(key, problems).map(|text| text.value);
    let (does, phone, email) = (text("does"), text("phone"), text("email"));
    let (address, license, insurance) = (text("address"), text("license"), text("insurance"));
    Some(Firm {
        name: name?.value,
        does,
        phone,
        email,
        address,
        license,
        insurance,
        logo,
    })
}
