//! Everything a command works on: the takeoff, its business, its price book, the prices of its days.

use std::path::{Path, PathBuf};

use super::files;
use crate::costing::{Prices, prices};
use crate::documents::offering::Shown;
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::job::{self, Takeoff};
use crate::press::photo::Photo;
use crate::reading::{FileId, Problem, Problems, Sources, yaml};
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

/// Reads the takeoff, its business and its book; every problem of all three is reported.
pub fn lay_out(
    file: &Path,
    on: Option<Day>,
    other_book: Option<&Path>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let takeoff_text = files::read(file, sources, problems);
    let written = takeoff_text
        .and_then(|id| yaml::read(id, sources, problems))
        .and_then(|node| job::read(&node, problems));
    if !files::exists(file) {
        return None;
    }
    let Some(home) = files::business_file(file) else {
        problems.push(
            Problem::new(
                "no-business",
                format!(
                    "no `business.yaml` beside `{}` or in any folder above it",
                    file.display()
                ),
            )
            .help("copy the one of the demo quotes there and put your own firm and prices in"),
        );
        return None;
    };
    let home_text = files::read(&home, sources, problems);
    let home_node = home_text.and_then(|id| yaml::read(id, sources, problems));
    // The book is read even where the business has a slip, so that every problem shows at once.
    let books = home_node.as_ref().map(business::books).unwrap_or_default();
    let business = home_node.and_then(|node| business::read(&node, problems));
    let folder = home.parent().unwrap_or(Path::new(".")).to_path_buf();
    let usual = books.first().map(|book| folder.join(&book.value));
    let path = other_book.map(Path::to_path_buf).or(usual)?;
    let place = books
        .first()
        .map(|book| book.place)
        .filter(|_| other_book.is_none());
    let mut book_text = None;
    let book = if files::exists(&path) {
        book_text = files::read(&tidy(&path), sources, problems);
        book_text
            .and_then(|id| yaml::read(id, sources, problems))
            .and_then(|node| book::read(&node, problems))
    } else {
        let problem = Problem::new(
            "no-such-book",
            format!("there is no price book `{}`", tidy(&path).display()),
        )
        .help("paths in `books` start from the folder of business.yaml");
        problems.push(match place {
            Some(place) => problem.at(place),
            None => problem,
        });
        None
    };
    let business = business?;
    if let Some(logo) = &business.firm.logo {
        own_file(&folder, &logo.value, logo.place, "logo", problems);
    }
    let written = written?;
    for photo in &written.photos {
        own_file(
            &folder,
            &photo.file.value,
            photo.file.place,
            "photo",
            problems,
        );
    }
    let book = book?;
    let name = file
        .file_stem()
        .map(|stem| stem.to_string_lossy().into_owned())
        .unwrap_or_default();
    let laid = Laid {
        written,
        name: &name,
        business,
        book,
        on,
    };
    let desk = on_desk(laid, problems)?;
    Some(Desk {
        file: file.to_path_buf(),
        folder,
        texts: [takeoff_text?, home_text?, book_text?],
        ..desk
    })
}

/// The same from texts kept in a record: takeoff, business, price book.
pub fn lay_out_again(
    texts: [(&str, &str); 3],
    on: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let ids = texts.map(|(name, text)| sources.add(name, text.to_owned()));
    let [job, home, book] = ids.map(|id| yaml::read(id, sources, problems));
    let name = Path::new(texts[0].0)
        .file_stem()
        .map(|stem| stem.to_string_lossy().into_owned())
        .unwrap_or_default();
    let laid = Laid {
        written: job::read(&job?, problems)?,
        name: &name,
        business: business::read(&home?, problems)?,
        book: book::read(&book?, problems)?,
        on: Some(on),
    };
    let desk = on_desk(laid, problems)?;
    Some(Desk { texts: ids, ..desk })
}

/// The three files, read.
struct Laid<'a> {
    written: job::JobWritten,
    name: &'a str,
    business: Business,
    book: PriceBook,
    on: Option<Day>,
}

/// Looks up every name, and the prices of every pour.
fn on_desk(laid: Laid<'_>, problems: &mut Problems) -> Option<Desk> {
    let Laid {
        written,
        name,
        business,
        book,
        on,
    } = laid;
    let takeoff = job::resolve(written, name, &book, &business, problems)?;
    let quoted = on.or(takeoff.quoted).unwrap_or_else(files::today);
    let lead = i64::from(business.quote.lead_time.0);
    let pours = takeoff.placements.iter().map(|placement| {
        placement
            .day
            .as_ref()
            .map_or_else(|| quoted.plus(lead), |day| day.value)
    });
    let days = pours.map(|day| prices(&book, day, &takeoff.name)).collect();
    Some(Desk {
        file: PathBuf::new(),
        folder: PathBuf::new(),
        texts: [FileId(0); 3],
        takeoff,
        business,
        book,
        quoted,
        days,
    })
}

/// The photos that the customer sees, upright and in a size for paper.
pub fn photos(desk: &Desk, problems: &mut Problems) -> Vec<Shown> {
    let mut shown = Vec::new();
    for photo in &desk.takeoff.photos {
        let Some(caption) = &photo.caption else {
            continue;
        };
        let path = desk.folder.join(&photo.file.value);
        let read = files::bytes(&path)
            .map_err(|error| error.to_string())
            .and_then(|bytes| Photo::read(&bytes).map_err(|error| error.to_string()));
        match read {
            Ok(photo) => shown.push(Shown {
                photo,
                caption: caption.clone(),
            }),
            Err(error) => problems.push(
                Problem::new(
                    "unreadable-picture",
                    format!("cannot use the photo `{}`: {error}", photo.file.value),
                )
                .at(photo.file.place)
                .help("save it as a JPEG picture (.jpg), or take the line out"),
            ),
        }
    }
    shown
}

/// Logos and photos lie inside the business folder, so that a copy of it is whole.
fn own_file(
    folder: &Path,
    name: &str,
    place: crate::reading::Place,
    what: &str,
    problems: &mut Problems,
) {
    let path = folder.join(name);
    if !files::exists(&path) {
        problems.push(
            Problem::new("missing-picture", format!("there is no {what} `{name}`"))
                .at(place)
                .help("put the file beside business.yaml, or take the line out"),
        );
    } else if !files::inside(folder, &path) {
        problems.push(
            Problem::new(
                "picture-outside",
                format!("the {what} `{name}` lies outside the business folder"),
            )
            .at(place)
            .help("copy it into the folder, so that a backup of the folder is whole"),
        );
    }
}

/// `demo-quotes/../price-books/x.yaml` as `price-books/x.yaml`.
fn tidy(path: &Path) -> PathBuf {
    files::whole(path).map_or_else(|| path.to_path_buf(), |whole| files::relative(&whole))
}
