//! Where one way of a panel may be cut: evenly, or through some of the places given.

/// Cuts between 0 and `long`, each set sorted: evenly for so many parts as these; and through some of
/// the places, with what lies between them divided evenly, as seldom as the limit allows or as often.
pub(super) fn candidates(
    long: i64,
    places: &[i64],
    longest: i64,
    (least, most): (i64, i64),
) -> Vec<Vec<i64>> {
    let mut found: Vec<Vec<i64>> = Vec::new();
    for kept in kept(places) {
        let loosest = (!kept.is_empty()).then_some(longest);
        for target in loosest
            .into_iter()
            .chain((least..=most).map(|parts| long / parts))
        {
            let cuts = between(long, &kept, target);
            if !found.contains(&cuts) {
                found.push(cuts);
            }
        }
    }
    found
}

/// So many alike parts.
pub(super) fn even(long: i64, parts: i64) -> Vec<i64> {
    (1..parts)
        .map(|n| (2 * long * n + parts) / (2 * parts))
        .collect()
}

/// Each gap between the kept places divided evenly, no part longer than the target.
pub(super) fn between(long: i64, kept: &[i64], target: i64) -> Vec<i64> {
    // A hair's breadth is no reason for another part.
    let target = target + 20_000;
    let mut cuts = Vec::new();
    let mut from = 0;
    for (number, &to) in kept.iter().chain([&long]).enumerate() {
        let gap = to - from;
        let many = (gap + target - 1) / target;
        cuts.extend((1..many).map(|n| from + (2 * gap * n + many) / (2 * many)));
        if number < kept.len() {
            cuts.push(to);
        }
        from = to;
    }
    cuts
}

/// Which of the places are cut through: any of up to three, else none, all, or one.
fn kept(places: &[i64]) -> Vec<Vec<i64>> {
    let many = places.len();
    if many <= 3 {
        let chosen = |set: usize| (0..many).filter(move |n| set >> n & 1 == 1);
        return (0..1_usize << many)
            .map(|set| chosen(set).map(|n| places[n]).collect())
            .collect();
    }
    let mut sets = vec![Vec::new(), places.to_vec()];
    sets.extend(places.iter().map(|&place| vec![place]));
    sets
}

/// The parts between cuts, alike ones counted together.
pub(super) fn parts(long: i64, cuts: &[i64]) -> Vec<(i64, i64)> {
    let mut parts: Vec<(i64, i64)> = Vec::new();
    let mut from = 0;
    for &to in cuts.iter().chain([&long]) {
        let part = to - from;
        from = to;
        // Rounded to a nanometre, alike parts may differ by one.
        match parts.iter_mut().find(|known| (known.0 - part).abs() <= 2) {
            Some(known) => known.1 += 1,
            None => parts.push((part, 1)),
        }
    }
    parts
}
