//! Everything a command works on: the takeoff, its business, its price book, the prices of its days.

use std::path::{Path, PathBuf};

use super::business_folder::no_price_book;
use super::files::{self, Files};
use crate::costing::{self, Offer, Prices, Pricing, check_sets, prices};
use crate::documents::offering::{Offering, Shown};
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::job::{self, Placement, Takeoff};
use crate::office::record::Input;
use crate::press::photo::Photo;
use crate::reading::{At, FileId, Place, Problem, Problems, Read};
use crate::values::Day;

/// What lies on the desk once all three files are read without a problem.
#[derive(Debug)]
pub struct Desk {
    pub file: PathBuf,
    /// Where `business.yaml` lies.
    pub folder: PathBuf,
    /// The texts everything was read from: takeoff, business, price book.
    pub texts: [FileId; 3],
    pub takeoff: Takeoff,
    pub business: Business,
    pub book: PriceBook,
    /// The day of the quote.
    pub quoted: Day,
    /// For each pour, the prices of its day.
    pub days: Vec<Prices>,
}

impl Desk {
    /// With the prices of every pour; the folder is the caller's to say.
    pub fn new(
        texts: [FileId; 3],
        on: Option<Day>,
        takeoff: Takeoff,
        business: Business,
        book: PriceBook,
    ) -> Self {
        let quoted = on.or(takeoff.head.quoted).unwrap_or_else(files::today);
        let days = days(&takeoff, quoted, &business, &book);
        Self {
            file: PathBuf::new(),
            folder: PathBuf::new(),
            texts,
            takeoff,
            business,
            book,
            quoted,
            days,
        }
    }

    /// What its quote is made of; a number and photos are the caller's to add.
    pub fn offering<'a>(&'a self, offer: &'a Offer) -> Offering<'a> {
        Offering {
            takeoff: &self.takeoff,
            business: &self.business,
            rules: &self.book.rules,
            offer,
            quoted: self.quoted,
            number: None,
            replaces: None,
            photos: &[],
        }
    }

    /// Every combination priced; what has no price is reported.
    pub fn offer(&self, problems: &mut Problems) -> Read<Offer> {
        costing::offer(&self.takeoff, self.pricing(), problems)
    }

    pub fn pricing(&self) -> Pricing<'_> {
        Pricing {
            book: &self.book,
            business: &self.business,
            days: &self.days,
        }
    }
}

/// Reads the takeoff and its business, and lays the job out by each of these books, or by the usual
/// one if there are none; every problem of all files is reported. There is always a desk.
pub fn lay_out(
    file: &Path,
    on: Option<Day>,
    other_books: &[PathBuf],
    files: &mut Files,
) -> Read<Vec<Desk>> {
    let takeoff_text = files.text(file);
    let written = takeoff_text.and_then(|id| files.read(id, job::read));
    if !files::exists(file) {
        takeoff_text?;
    }
    let home = files::business_file(file).ok_or_else(|| {
        let file = file.display();
        let message = format!("no `business.yaml` beside `{file}` or in any folder above it");
        files.refuse(
            Problem::new("no-business", message)
                .help("copy the one of the demo quotes there and put your own firm and prices in"),
        )
    })?;
    let home_text = files.text(&home);
    let home_node = home_text.and_then(|id| files.tree(id));
    // The books are read even where the business has a slip, so that every problem shows at once.
    let usual = home_node.as_ref().map(business::books).unwrap_or_default();
    let business = home_node.and_then(|node| files.made(&node, business::read));
    let folder = home.parent().unwrap_or(Path::new(".")).to_path_buf();
    let paths: Vec<(PathBuf, Option<Place>)> = if !other_books.is_empty() {
        let others = other_books.iter();
        others.map(|book| (book.clone(), None)).collect()
    } else if let Some(usual) = usual.first() {
        vec![(folder.join(&usual.value), Some(usual.place))]
    } else {
        business?;
        files.problems.none()?;
        return Err(files.refuse(no_price_book()));
    };
    let paths = paths.into_iter();
    let books: Vec<_> = paths
        .map(|(path, place)| read_book(&tidy(&path), place, files))
        .collect();
    let business = business?;
    if let Some(logo) = &business.firm.logo {
        own_file(&folder, logo, "logo", &mut files.problems);
    }
    let written = written?;
    for photo in &written.head.photos {
        own_file(&folder, &photo.file, "photo", &mut files.problems);
    }
    let books: Vec<(FileId, PriceBook)> = books.into_iter().collect::<Read<_>>()?;
    let name = stem(file);
    let (takeoff_text, home_text) = (takeoff_text?, home_text?);
    let all_read = files.problems.is_empty();
    let mut found = Vec::new();
    let mut desks = Vec::new();
    for (book_text, book) in books {
        let mut of_book = Problems::default();
        let looked_up = job::looked_up(written.clone(), &name, &book, &business, &mut of_book);
        let mended = looked_up
            .as_ref()
            .err()
            .and_then(|slipped| slipped.mended.as_deref());
        // What could not even be read may be what a `set` speaks of.
        if let Some(takeoff) = mended.filter(|_| all_read) {
            let quoted = on.or(takeoff.head.quoted).unwrap_or_else(files::today);
            let pours = pours(takeoff, quoted, &business);
            check_sets(takeoff, &book, &business, &pours, &mut of_book);
        }
        found.push((book.place, of_book));
        let texts = [takeoff_text, home_text, book_text];
        let desk = looked_up.map(|takeoff| Desk {
            file: file.to_path_buf(),
            folder: folder.clone(),
            ..Desk::new(texts, on, takeoff, business.clone(), book)
        });
        desks.push(desk.map_err(|slipped| slipped.reported));
    }
    report_by_book(&found, &mut files.problems);
    desks.into_iter().collect()
}

/// The same from texts kept in a record: takeoff, business, price book.
pub fn lay_out_again(texts: [&Input; 3], on: Day, files: &mut Files) -> Read<Desk> {
    let ids = texts.map(|text| files.kept(text));
    let [job, home, book] = ids.map(|id| files.tree(id));
    let written = files.made(&job?, job::read)?;
    let business = files.made(&home?, business::read)?;
    let book = files.made(&book?, book::read)?;
    let name = stem(Path::new(&texts[0].name));
    let takeoff = job::resolve(written, &name, &book, &business, &mut files.problems)?;
    Ok(Desk::new(ids, Some(on), takeoff, business, book))
}

/// A job is called as its file is.
pub(super) fn stem(file: &Path) -> String {
    let stem = file.file_stem().unwrap_or_default();
    stem.to_string_lossy().into_owned()
}

pub fn no_such_book(path: &Path) -> Problem {
    let message = format!("there is no price book `{}`", path.display());
    Problem::new("no-such-book", message)
        .help("paths in `books` start from the folder of business.yaml")
}

/// A book that a business names at this place, or somebody on the command line.
fn read_book(path: &Path, place: Option<Place>, files: &mut Files) -> Read<(FileId, PriceBook)> {
    if files::exists(path) {
        let id = files.text(path)?;
        return Ok((id, files.read(id, book::read)?));
    }
    let mut problem = no_such_book(path);
    problem.place = place;
    Err(files.refuse(problem))
}

/// Reports what was found with each of several books: what all of them have in common once,
/// and the rest with the name of its book.
pub fn report_by_book(found: &[(Place, Problems)], problems: &mut Problems) {
    let everywhere = |problem: &Problem| {
        let knows = |(_, of_book): &(Place, Problems)| of_book.iter().any(|one| one == problem);
        found.iter().all(knows)
    };
    if let Some((_, first)) = found.first() {
        problems.extend(first.iter().filter(|one| everywhere(one)).cloned());
    }
    for (place, of_book) in found {
        let own = of_book.iter().filter(|one| !everywhere(one));
        problems.extend(own.map(|one| match one.place {
            Some(at) if at.file == place.file => one.clone(),
            _ => one.clone().also(*place, "with the prices of this book"),
        }));
    }
}

/// The prices of each pour's day.
pub fn days(takeoff: &Takeoff, quoted: Day, business: &Business, book: &PriceBook) -> Vec<Prices> {
    pours(takeoff, quoted, business)
        .into_iter()
        .map(|day| prices(book, day, &takeoff.name))
        .collect()
}

/// The day of each pour, said or counted from the day of the quote.
pub(super) fn pours(takeoff: &Takeoff, quoted: Day, business: &Business) -> Vec<Day> {
    let lead = i64::from(business.quote.lead_time.0);
    let day = |placement: &Placement| {
        let said = placement.day.as_ref().map(|day| day.value);
        said.unwrap_or_else(|| quoted.plus(lead))
    };
    takeoff.placements.iter().map(day).collect()
}

/// The photos that the customer sees, upright and in a size for paper.
pub fn photos(desk: &Desk, problems: &mut Problems) -> Read<Vec<Shown>> {
    let before = problems.len();
    let mut shown = Vec::new();
    for photo in &desk.takeoff.head.photos {
        let Some(caption) = &photo.caption else {
            continue;
        };
        let At { value, place } = &photo.file;
        let read = files::bytes(&desk.folder.join(value))
            .map_err(|error| error.to_string())
            .and_then(|bytes| Photo::read(&bytes).map_err(|error| error.to_string()));
        match read {
            Ok(photo) => shown.push(Shown {
                photo,
                caption: caption.clone(),
            }),
            Err(error) => {
                let message = format!("cannot use the photo `{value}`: {error}");
                problems.push(
                    Problem::new("unreadable-picture", message)
                        .at(*place)
                        .help("save it as a JPEG picture (.jpg), or take the line out"),
                );
            }
        }
    }
    problems.none_since(before)?;
    Ok(shown)
}

/// Logos and photos lie inside the business folder, so that a copy of it is whole.
fn own_file(folder: &Path, file: &At<String>, what: &str, problems: &mut Problems) {
    let name = &file.value;
    let path = folder.join(name);
    let problem = if !files::exists(&path) {
        Problem::new("missing-picture", format!("there is no {what} `{name}`"))
            .help("put the file beside business.yaml, or take the line out")
    } else if !files::inside(folder, &path) {
        let message = format!("the {what} `{name}` lies outside the business folder");
        Problem::new("picture-outside", message)
            .help("copy it into the folder, so that a backup of the folder is whole")
    } else {
        return;
    };
    problems.push(problem.at(file.place));
}

/// `demo-quotes/../price-books/x.yaml` as `price-books/x.yaml`.
fn tidy(path: &Path) -> PathBuf {
    files::whole(path).map_or_else(|| path.to_path_buf(), |whole| files::relative(&whole))
}
