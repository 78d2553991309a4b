//! What a takeoff says of the job as a whole: the same whatever the customer chooses.

use super::lists::{Discount, Extra, PhotoWritten, SetTo, photos, sets};
use super::options::{ChooseOne, OptionGroup, OptionItem, groups};
use super::pours::{PourWritten, pours};
use crate::input::checks::{
    cubic_yards, number_above_zero, temperature, trips_planned, written, yards_above_zero,
};
use crate::input::job::access::{Access, access};
use crate::input::job::permit::{Permit, permit};
use crate::input::job::removal::Removal;
use crate::input::site::SiteAnswers;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, FormatOne, Problems, Read, Unread, words};
use crate::values::{Amount, Day, Money, Percent};

words! {
    /// What the weather and the owner of the slab will do to it.
    pub enum Exposure("unknown-word", "`exposure` is not `{}`", choose) {
        Mild "mild";
        Frost "frost";
        Salt "salt" "(where de-icer is expected)";
    }
}

keys! {
    pub struct JobHead in "a takeoff" {
        _format: FormatOne = "format", usual "1", "version of this file's keys", "1";
        name: Option<String> = "job", else "the file's name",
            "what you call the job; a supplier's hold may name it", "Garden patio";
        title: Option<String> = "title", else "from the slabs",
            "what the customer reads at the top", "A new patio behind your house";
        _measured: Option<Day> = "measured", none, "the day you were there", "2026-04-30";
        quoted: Option<Day> = "quoted", else "today, or `--on`", "the day of the quote", "2026-05-04";
        pours: Vec<PourWritten> = "pour" as "date or list", else "quote day and lead time",
            "the day of the pour; prices are those of this day", "2026-06-15", by pours, of PourWritten;
        exposure: Option<At<Exposure>> = "exposure", else "frost where a normal night of business.yaml freezes, else mild",
            "mild, frost or salt (de-icer is expected)", "frost";
        access: Access = "access" as "word or keys", else "chute", "how concrete reaches the slab",
            "{by: wheelbarrow, distance: 85 ft, gate: 42 in}", by access, of Access;
        /// A zone of the price book.
        zone: Option<At<String>> = "zone" as "name", none,
            "the part of town, where the plant charges for it", "north";
        allowance: Option<At<Percent>> = "allowance", else "that of each kind or of the business",
            "concrete ordered over the drawing of this job; what a pour or a slab says itself wins", "10%";
        /// Yards of the largest order of each pour that wait for a call.
        hold_back: Option<At<Amount>> = "hold back" as "cubic yards", none,
            "of the largest order of each pour, until you call for it", "1 1/2 cu yd", then written(cubic_yards);
        people: Option<At<Amount>> = "people", else "the crew's",
            "in the crew on this job", "5", then written(number_above_zero);
        truck: Option<At<Amount>> = "truck" as "cubic yards", else "the plant's full load",
            "the most on one truck, where it would stand too long with more", "5 cu yd", then written(yards_above_zero);
        temperature: Option<At<Amount>> = "temperature" as "degrees F", else "that of `pour day`",
            "as you expect it while the concrete sets; a pour may have its own", "85", then written(temperature);
        permit: Permit = "permit" as "word or name", else "not said",
            "`customer` takes it out, `none` is asked for, or the item of the book that we pay", "town permit",
            by permit;
        difficulty: Option<At<Percent>> = "difficulty", else "the crew's",
            "multiplies every task except travel", "115%";
        trips: Option<At<Amount>> = "trips" as "number", else "from the hours",
            "how often the crew comes to work, as you plan it; visits after the pour come beside it", "2",
            then written(trips_planned);
        removals: Vec<Removal> = "remove", none,
            "what is broken out or dug out and hauled away", "[old walk: 22 ft x 3 ft x 4 in]";
        extras: Vec<Extra> = "extra", none, "any item of the book, or a lump", "[topsoil: 1.5 cu yd]";
        sets: Vec<SetTo> = "set" as "keys by quantity", none, "overrules a computed quantity, with a reason",
            "{finish broom hours: {to: 14, because: two people}}", by sets, of SetTo;
        fixed_price: Option<At<Money>> = "price", none, "fixes the price before tax", "9800.00";
        discounts: Vec<Discount> = "discounts" as "list of percents or amounts", none,
            "taken off the price before tax, by words the customer reads",
            "[Two patios at once: 5%, Your own gravel: 150.00]";
        options: Vec<OptionGroup> = "options" as "list", none,
            "what the customer may choose", "[Clear sealer: {add: [clear sealer: 540 sq ft]}]", by groups, of ChooseOne, OptionItem;
        assumptions: Vec<String> = "assumptions", none,
            "what this quote counts on, beside the usual", "[A clear way through the side gate]";
        not_included: Vec<String> = "not included", none,
            "what this quote does not contain, beside the usual", "[Grass seed]";
        /// What stays as it is.
        left_alone: Vec<String> = "left alone" as "list", none,
            "what stays as it is; told to the customer as not included", "[light post base]";
        /// Answers of the takeoff; once looked up, then the usual ones.
        site: SiteAnswers = "site" as "keys by question", else "the usual of business.yaml",
            "what was asked about the site", "{overhead wires: 16 ft}";
        photos: Vec<PhotoWritten> = "photos" as "list of paths", none,
            "JPEG pictures inside the business folder; one with words after it is printed in the quote",
            "[wall.jpg, gate.jpg: The gate we come through]", by photos;
        _notes: Unread = "notes", none, "for yourself; never printed for the customer", "dog";
    }
}

keys! {
    pub struct Customer in "the customer" {
        name: String = "name", required, "who the quote is for", "Dana Example";
        address: Option<String> = "address", none, "where", "\"18 Sample Lane, Quillhaven\"";
        _email: Unread = "email", none, "mail address", "dana@example.com";
        _phone: Unread = "phone", none, "telephone", "555-0117";
    }
}

impl Customer {
    pub const fn new(name: String, address: Option<String>) -> Self {
        Customer {
            name,
            address,
            _email: Unread,
            _phone: Unread,
        }
    }
}

/// `Dana Example, 12 Quarry Rd, Quillhaven`, or keys.
pub(super) fn customer(
    job: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Customer> {
    let node = job.required(key, problems)?;
    if node.is_map() {
        return node.group(problems);
    }
    let text = node.text("the customer", problems)?;
    let (name, address) = match text.split_once(',') {
        Some((name, address)) => (name, Some(address.trim().to_owned())),
        None => (text, None),
    };
    Ok(Customer::new(name.trim().to_owned(), address))
}
