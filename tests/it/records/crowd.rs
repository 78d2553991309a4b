//! Many programs at once, programs that die, disks that fail: no number twice, none lost.

use std::collections::BTreeSet;

use super::{Firm, firm};

/// Numbers of the quotes on record.
fn numbers(firm: &Firm) -> BTreeSet<String> {
    firm.records()
        .iter()
        .filter_map(|name| name.strip_suffix(".01.quote.json").map(str::to_owned))
        .collect()
}

#[test]
fn eight_programs_at_once_leave_no_gap_and_repeat_no_number() {
    const EACH: usize = 50;
    let firm = firm("crowd");
    std::thread::scope(|scope| {
        for _ in 0..8 {
            scope.spawn(|| {
                for _ in 0..EACH {
                    firm.done("quote two.yaml --issue --another --on 2026-05-04 -o crowd.pdf");
                }
            });
        }
    });
    let found = numbers(&firm);
    let expected: BTreeSet<String> = (41..41 + 8 * EACH)
        .map(|count| format!("2026-{count:04}"))
        .collect();
    assert_eq!(found, expected);
}

fn records(firm: &Firm) -> usize {
    let names = firm.records();
    names
        .iter()
        .filter(|name| name.strip_suffix(".json").is_some())
        .count()
}

/// Kills the program, or fails its disk, at every touch of the disk in turn.
fn survives(name: &str, fault: &str) {
    let firm = firm(name);
    firm.done("quote one.yaml --issue --on 2026-05-04");
    let mut went_well = 0;
    for at in 1..200 {
        let output = firm
            .command("quote two.yaml --issue --another --on 2026-05-05")
            .env(fault, at.to_string())
            .output()
            .unwrap();
        if output.status.success() {
            went_well += 1;
            if 1 < went_well {
                break;
            }
        }
        // Whatever happened: what is there is whole, no number is missing, and lost PDFs come back.
        let output = firm.run("verify --mend");
        let said = String::from_utf8(output.stdout).unwrap();
        assert!(output.status.success(), "after {fault}={at}: {said}");
    }
    assert!(1 < went_well, "the fault never came too late");
    let found = numbers(&firm);
    let last = 40 + found.len();
    assert!(found.contains(&format!("2026-{last:04}")), "{found:?}");
    // The next one follows as if nothing had been.
    let said = firm.done("quote three.yaml --issue --on 2026-05-06");
    assert!(said.contains(&format!("2026-{:04}", last + 1)), "{said}");
}

#[test]
fn a_program_killed_at_any_touch_of_the_disk_loses_nothing() {
    survives("killed", "FLATWORK_KILLED_AT");
}

#[test]
fn a_disk_that_fails_at_any_touch_loses_nothing() {
    survives("failed", "FLATWORK_DISK_FAILS_AT");
}

#[test]
fn a_killed_payment_is_there_or_not_but_never_half() {
    let firm = firm("killed-payment");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-05");
    for at in 1..40 {
        let before = records(&firm);
        let output = firm
            .command("pay 2026-0041 1.00 --on 2026-05-06")
            .env("FLATWORK_KILLED_AT", at.to_string())
            .output()
            .unwrap();
        let more = records(&firm) - before;
        assert!(more <= 1, "{at}");
        if output.status.success() {
            break;
        }
        // A receipt that was not written yet comes back from its record, byte for byte.
        firm.done("verify --mend");
        assert!(firm.done("verify").contains("all sound"), "{at}");
    }
}
