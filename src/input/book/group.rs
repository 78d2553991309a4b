//! Where lines of direct cost stand together: by class, or under a heading of the owner's own.

use super::class::Class;

/// Lines of direct cost that stand together, with a sum below them.
#[derive(Clone, Debug)]
pub enum CostGroup {
    Class(Class),
    /// The owner's own, and which of the price book's it is; one of a takeoff comes after them.
    Own {
        name: String,
        order: usize,
    },
}

/// Two that differ in capitals only are one.
impl PartialEq for CostGroup {
    fn eq(&self, other: &Self) -> bool {
        self.name().to_lowercase() == other.name().to_lowercase()
    }
}

impl CostGroup {
    /// As the owner writes it; the word of a class, or its heading, means that class.
    pub fn said(name: &str) -> Self {
        let word = name.trim().to_lowercase();
        let is_meant = |class: &Class| word.strip_suffix('s').unwrap_or(&word) == class.name();
        let class = Class::ALL.into_iter().find(is_meant);
        class.map_or_else(
            || Self::Own {
                name: name.trim().to_owned(),
                order: usize::MAX,
            },
            Self::Class,
        )
    }

    pub fn name(&self) -> &str {
        match self {
            Self::Class(class) => class.name(),
            Self::Own { name, .. } => name,
        }
    }

    /// Class by class, then the owner's own as they first stand in the price book.
    pub fn place(&self) -> (Option<usize>, Class) {
        match self {
            Self::Class(class) => (None, *class),
            Self::Own { order, .. } => (Some(*order), Class::Fee),
        }
    }
}

/// Numbers the groups as they first stand in the book, and gives each its first spelling.
pub(super) fn numbered<'a>(groups: impl Iterator<Item = &'a mut CostGroup>) {
    let mut known: Vec<CostGroup> = Vec::new();
    for group in groups {
        if let Some(first) = known.iter().find(|one| *one == group) {
            *group = first.clone();
            continue;
        }
        if let CostGroup::Own { order, .. } = group {
            *order = known.len();
        }
        known.push(group.clone());
    }
}
