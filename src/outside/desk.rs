//! Everything a command works on: the takeoff, its business, its price book, the prices of its days.

use std::path::{Path, PathBuf};

use super::files;
use crate::costing::{self, Offer, Prices, Pricing, check_sets, prices};
use crate::documents::offering::Shown;
use crate::input::book::{self, PriceBook};
use crate::input::business::{self, Business};
use crate::input::job::{self, LookedUp, Placement, Takeoff};
use crate::press::photo::Photo;
use crate::reading::{FileId, Place, Problem, Problems, Sources, yaml};
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
    /// Every combination priced; what has no price is reported.
    pub fn offer(&self, problems: &mut Problems) -> Option<Offer> {
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

/// Reads the takeoff, its business and its book; every problem of all three is reported.
pub fn lay_out(
    file: &Path,
    on: Option<Day>,
    other_book: Option<&Path>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let other_books: Vec<PathBuf> = other_book.into_iter().map(Path::to_path_buf).collect();
    lay_out_each(file, on, &other_books, sources, problems)?.pop()
}

/// The same takeoff by each of these books, or by the usual one if there are none.
pub fn lay_out_each(
    file: &Path,
    on: Option<Day>,
    other_books: &[PathBuf],
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Vec<Desk>> {
    let takeoff_text = files::read(file, sources, problems);
    let written = takeoff_text
        .and_then(|id| yaml::read(id, sources, problems))
        .and_then(|node| job::read(&node, problems).ok());
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
    // The books are read even where the business has a slip, so that every problem shows at once.
    let usual = home_node.as_ref().map(business::books).unwrap_or_default();
    let business = home_node.and_then(|node| business::read(&node, problems).ok());
    let folder = home.parent().unwrap_or(Path::new(".")).to_path_buf();
    let paths: Vec<(PathBuf, Option<Place>)> = if other_books.is_empty() {
        let usual = usual.first()?;
        vec![(folder.join(&usual.value), Some(usual.place))]
    } else {
        other_books
            .iter()
            .map(|book| (book.clone(), None))
            .collect()
    };
    let books: Vec<Option<PriceBook>> = paths
        .iter()
        .map(|(path, place)| read_book(path, *place, sources, problems))
        .collect();
    let business = business?;
    if let Some(logo) = &business.firm.logo {
        own_file(&folder, &logo.value, logo.place, "logo", problems);
    }
    let written = written?;
    for photo in &written.head.photos {
        own_file(
            &folder,
            &photo.file.value,
            photo.file.place,
            "photo",
            problems,
        );
    }
    let books: Vec<PriceBook> = books.into_iter().collect::<Option<_>>()?;
    let name = file
        .file_stem()
        .map(|stem| stem.to_string_lossy().into_owned())
        .unwrap_or_default();
    let all_read = problems.is_empty();
    let mut found = Vec::new();
    let mut desks = Vec::new();
    for book in books {
        let mut of_book = Problems::default();
        let looked_up = job::looked_up(written.clone(), &name, &book, &business, &mut of_book);
        if let (true, LookedUp::Mended(takeoff)) = (all_read, &looked_up) {
            // What could not even be read may be what a `set` speaks of.
            let quoted = on.or(takeoff.head.quoted).unwrap_or_else(files::today);
            let pours = pours(takeoff, quoted, &business);
            check_sets(takeoff, &book, &business, &pours, &mut of_book);
        }
        found.push((book.place, of_book));
        if let LookedUp::Whole(takeoff) = looked_up {
            let texts = [takeoff_text?, home_text?, book.place.file];
            let desk = desk(texts, on, *takeoff, business.clone(), book);
            desks.push(Desk {
                file: file.to_path_buf(),
                folder: folder.clone(),
                ..desk
            });
        }
    }
    let all = desks.len() == found.len();
    report_by_book(&found, problems);
    all.then_some(desks)
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
    let written = job::read(&job?, problems).ok()?;
    let business = business::read(&home?, problems).ok()?;
    let book = book::read(&book?, problems).ok()?;
    let takeoff = job::resolve(written, &name, &book, &business, problems)?;
    Some(desk(ids, Some(on), takeoff, business, book))
}

/// With the prices of every pour; the folder is the caller's to say.
fn desk(
    texts: [FileId; 3],
    on: Option<Day>,
    takeoff: Takeoff,
    business: Business,
    book: PriceBook,
) -> Desk {
    let quoted = on.or(takeoff.head.quoted).unwrap_or_else(files::today);
    let pours = pours(&takeoff, quoted, &business);
    let days = pours
        .into_iter()
        .map(|day| prices(&book, day, &takeoff.name))
        .collect();
    Desk {
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

fn read_book(
    path: &Path,
    place: Option<Place>,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<PriceBook> {
    if files::exists(path) {
        return files::read(&tidy(path), sources, problems)
            .and_then(|id| yaml::read(id, sources, problems))
            .and_then(|node| book::read(&node, problems).ok());
    }
    let problem = Problem::new(
        "no-such-book",
        format!("there is no price book `{}`", tidy(path).display()),
    )
    .help("paths in `books` start from the folder of business.yaml");
    problems.push(match place {
        Some(place) => problem.at(place),
        None => problem,
    });
    None
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
pub fn photos(desk: &Desk, problems: &mut Problems) -> Vec<Shown> {
    let mut shown = Vec::new();
    for photo in &desk.takeoff.head.photos {
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
            Err(error) => {
                problems.push(
                    Problem::new(
                        "unreadable-picture",
                        format!("cannot use the photo `{}`: {error}", photo.file.value),
                    )
                    .at(photo.file.place)
                    .help("save it as a JPEG picture (.jpg), or take the line out"),
                );
            }
        }
    }
    shown
}

/// Logos and photos lie inside the business folder, so that a copy of it is whole.
fn own_file(folder: &Path, name: &str, place: Place, what: &str, problems: &mut Problems) {
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
