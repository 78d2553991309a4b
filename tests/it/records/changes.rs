//! Change orders: their price by hand, their answer, their bill, and what is refused.
//!
//! The figures are worked out by hand from the book and the business of these tests. A slab of
//! 20 ft x 10 ft, 4 in: 2.469 cu yd and 0.25 for allowance is 2.75 in quarters; forms 60 ft;
//! hours 3 + 2.75 + 4 + 2 = 11.75 without travel. Overhead 10%, then profit 20%, then tax 6%.

use super::{Firm, firm};

const SLAB: &str = "{slabs: {landing: {size: 20 ft x 10 ft, kind: slab, mesh: none}}}";

fn signed(name: &str) -> Firm {
    let firm = firm(name);
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-12");
    firm
}

fn write(firm: &Firm, text: &str) {
    std::fs::write(firm.path("change.yaml"), text).unwrap();
}

/// What the record of this place says, read as JSON.
fn record(firm: &Firm, name: &str) -> serde_json::Value {
    let text = std::fs::read_to_string(firm.path(&format!("records/{name}.json"))).unwrap();
    serde_json::from_str(&text).unwrap()
}

/// What a screen reader says of the page of this record.
fn spoken(firm: &Firm, name: &str) -> String {
    let bytes = std::fs::read(firm.path(&format!("records/{name}.pdf"))).unwrap();
    crate::pdf::spoken(&bytes).join("\n")
}

#[test]
fn a_change_is_priced_by_the_book_of_its_day() {
    #[track_caller]
    fn case(name: &str, change: &str, price: &str, tax: &str, total: &str) {
        let firm = signed(name);
        write(&firm, change);
        firm.done("change 2026-0041 change.yaml --on 2026-06-12");
        let record = record(&firm, "2026-0041.03.change");
        let figures = &record["what"]["figures"];
        assert_eq!(figures["price"], price, "{change}");
        assert_eq!(figures["taxes"][0]["amount"], tax, "{change}");
        assert_eq!(figures["total"], total, "{change}");
        assert!(firm.done("verify").contains("all sound"));
    }
    // 440.00 + 62.50 short + 45.00 + 587.50 = 1,135.00; x 1.1 = 1,248.50; x 1.2.
    let added = format!("change: A landing\nadd: {SLAB}\n");
    case("change-added", &added, "1498.20", "89.89", "1588.09");
    // From July 1 a yard is 170.00.
    let later = format!("change: A landing\npriced: 2026-07-01\nadd: {SLAB}\n");
    case("change-later", &later, "1534.50", "92.07", "1626.57");
    // A day more brings 2 people x half an hour of travel, once and not for each stage: 1 hour, 50.00 x 1.32.
    let longer = format!("change: A landing\ndays: 1\nadd: {SLAB}\n");
    case("change-longer", &longer, "1564.20", "93.85", "1658.05");
    let two = format!("change: A landing\ndays: 2\nadd: {SLAB}\n");
    case("change-two-days", &two, "1630.20", "97.81", "1728.01");
    // What the work says of its own trips counts.
    let thrice = SLAB.replacen('{', "{trips: 3, ", 1);
    let thrice = format!("change: A landing\ndays: 1\nadd: {thrice}\n");
    case("change-thrice", &thrice, "1696.20", "101.77", "1797.97");
    // It comes with the main load: 62.50 x 1.32 less.
    let with = format!("change: A landing\nsame truck: yes\nadd: {SLAB}\n");
    case("change-with", &with, "1415.70", "84.94", "1500.64");
    // The truck comes all the same: no short load is saved.
    let less = format!("change: No landing\ndeduct: {SLAB}\n");
    case("change-less", &less, "-1415.70", "-84.94", "-1500.64");
    // Tax falls once on the whole.
    let both = format!(
        "change: Another landing\nadd: {SLAB}\ndeduct: {SLAB}\nlines: [Swept twice: 10.00]\n"
    );
    case("change-both", &both, "92.50", "5.55", "98.05");
    // Half a cent goes away from zero below it, too: 0.25 x 6% is 0.015.
    let half = "change: A quarter back\nlines: [Rounded: -0.25]\n";
    case("change-half", half, "-0.25", "-0.02", "-0.27");
}

/// The customer bought at 5% less; what is priced by its own line stays as it is written, and so does
/// a sum that was taken off the job once.
#[test]
fn a_percent_off_the_quote_is_off_its_changes_too() {
    #[track_caller]
    fn case(name: &str, change: &str, figures: [&str; 3], off: &str) {
        let firm = firm(name);
        let job = std::fs::read_to_string(firm.path("one.yaml")).unwrap();
        let off_job = "discounts: [Two at once: 5%, Your gravel: 150.00]\n";
        std::fs::write(firm.path("one.yaml"), job + off_job).unwrap();
        firm.done("quote one.yaml --issue --on 2026-05-04");
        firm.done("accept 2026-0041 --on 2026-05-12");
        write(&firm, change);
        firm.done("change 2026-0041 change.yaml --on 2026-06-12");
        let record = record(&firm, "2026-0041.03.change");
        let what = &record["what"]["figures"];
        let told = [&what["price"], &what["taxes"][0]["amount"], &what["total"]];
        assert_eq!(told, figures, "{change}");
        let page = spoken(&firm, "2026-0041.03.change");
        assert!(page.contains("Two at once, 5% as in the quote"), "{page}");
        assert!(page.contains(off) && !page.contains("gravel"), "{page}");
        assert!(firm.done("verify").contains("all sound"));
    }
    // 1,498.20 less 74.91.
    let added = format!("change: A landing\nadd: {SLAB}\n");
    let figures = ["1423.29", "85.40", "1508.69"];
    case("change-off-added", &added, figures, "74.91");
    // 1,415.70 less 70.79, back to the customer.
    let less = format!("change: No landing\ndeduct: {SLAB}\n");
    let figures = ["-1344.91", "-80.69", "-1425.60"];
    case("change-off-less", &less, figures, "70.79");
    // 74.91 off what is added, 70.79 off what is left out.
    let both =
        format!("change: Another\nadd: {SLAB}\ndeduct: {SLAB}\nlines: [Swept twice: 10.00]\n");
    let figures = ["88.38", "5.30", "93.68"];
    case("change-off-both", &both, figures, "4.12");
}

#[test]
fn what_is_once_a_job_is_in_no_change_and_what_is_left_out_saves_no_pour() {
    #[track_caller]
    fn case(name: &str, change: &str, price: &str) {
        let firm = firm(name);
        let book = std::fs::read_to_string(firm.path("book.yaml")).unwrap();
        let also = "also:\n  setting out: {once a: job, hours: 2 crew hours}\n  washing: {once a: pour, hours: 1 hour}\n";
        std::fs::write(firm.path("book.yaml"), format!("{book}{also}")).unwrap();
        firm.done("quote one.yaml --issue --on 2026-05-04");
        firm.done("accept 2026-0041 --on 2026-05-12");
        write(&firm, change);
        firm.done("change 2026-0041 change.yaml --on 2026-06-12");
        let record = record(&firm, "2026-0041.03.change");
        assert_eq!(record["what"]["figures"]["price"], price, "{change}");
    }
    // As without rules, and one hour of washing: 50.00 x 1.32 more.
    let added = format!("change: A landing\nadd: {SLAB}\n");
    case("change-rules-added", &added, "1564.20");
    let less = format!("change: No landing\ndeduct: {SLAB}\n");
    case("change-rules-less", &less, "-1415.70");
}

#[test]
fn a_signed_change_is_agreed_and_billed_at_the_end() {
    let firm = signed("change-signed");
    let sum = |firm: &Firm| {
        let jobs = firm.done("jobs --format json --on 2026-06-30");
        let jobs: serde_json::Value = serde_json::from_str(&jobs).unwrap();
        jobs[0]["total"]
            .as_str()
            .unwrap()
            .replace('.', "")
            .parse::<i64>()
            .unwrap()
    };
    let before = sum(&firm);
    write(
        &firm,
        &format!("change: A landing\nbecause: You asked\nadd: {SLAB}\n"),
    );
    firm.done("change 2026-0041 change.yaml --on 2026-06-12");
    assert_eq!(sum(&firm), before, "nothing is agreed before it is signed");
    let overview = firm.done("jobs --on 2026-06-12");
    assert!(
        overview.contains("change 1 waits for a signature"),
        "{overview}"
    );
    let said = firm.done("accept 2026-0041 --change 1 --on 2026-06-13");
    assert!(said.contains("agreed now"), "{said}");
    assert_eq!(sum(&firm), before + 158_809);

    firm.done("change 2026-0041 change.yaml --on 2026-06-14");
    firm.done("decline 2026-0041 --change 2 --because dear --on 2026-06-14");
    assert_eq!(sum(&firm), before + 158_809);
    firm.refused(
        "accept 2026-0041 --change 2 --on 2026-06-15",
        "change-declined-already",
    );
    firm.refused(
        "accept 2026-0041 --change 1 --on 2026-06-15",
        "change-accepted-already",
    );

    firm.done("invoice 2026-0041 --final --on 2026-06-20");
    let billed = record(&firm, "2026-0041.07.final-invoice");
    assert_eq!(
        billed["what"]["figures"]["total"]
            .as_str()
            .unwrap()
            .replace('.', ""),
        (before + 158_809).to_string()
    );
    // A change after the final invoice is billed by another final invoice, alone.
    firm.done("change 2026-0041 change.yaml --on 2026-06-21");
    firm.done("accept 2026-0041 --change 3 --on 2026-06-21");
    firm.done("invoice 2026-0041 --final --on 2026-06-22");
    let billed = record(&firm, "2026-0041.10.final-invoice");
    assert_eq!(billed["what"]["figures"]["total"], "1588.09");
    // In its table the first change was billed before, and the third is billed now.
    let page = spoken(&firm, "2026-0041.10.final-invoice");
    let row = |mark: &str| -> Vec<&str> {
        let cells = page
            .lines()
            .map(str::trim)
            .filter_map(|line| line.strip_prefix('"'));
        let cells = cells.map(|cell| cell.trim_end_matches('"').trim());
        cells
            .skip_while(|cell| *cell != mark)
            .skip(2)
            .take(5)
            .collect()
    };
    assert_eq!(row("C1"), ["1,498.20", "1,498.20", "–", "1,498.20", "–"]);
    assert_eq!(row("C3"), ["1,498.20", "–", "1,498.20", "1,498.20", "–"]);
    firm.refused(
        "invoice 2026-0041 --stage 1 --on 2026-06-22",
        "billed-already",
    );
    assert!(firm.done("verify").contains("all sound"));
}

/// 485.00 of 1,135.00 are materials: 1,498.20 x 485 / 1,135 = 640.20, of it 6%; a line has none.
#[test]
fn a_tax_on_materials_falls_on_the_work_and_not_on_a_line() {
    let firm = firm("change-materials");
    let business = std::fs::read_to_string(firm.path("business.yaml")).unwrap();
    let business = business.replace("{on: sale, rate: 6%}", "{on: materials, rate: 6%}");
    std::fs::write(firm.path("business.yaml"), business).unwrap();
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-12");
    let change = format!("change: A landing\nadd: {SLAB}\nlines: [Gate moved: 10.00]\n");
    write(&firm, &change);
    firm.done("change 2026-0041 change.yaml --on 2026-06-12");
    let figures = &record(&firm, "2026-0041.03.change")["what"]["figures"];
    assert_eq!(figures["price"], "1508.20");
    assert_eq!(figures["taxes"][0]["amount"], "38.41");
}

#[test]
fn a_change_of_the_time_alone_has_no_price() {
    let firm = signed("change-days");
    write(&firm, "change: We need longer\ndays: 10\n");
    let said = firm.done("change 2026-0041 change.yaml --on 2026-06-12");
    assert!(said.contains("days        +10"), "{said}");
    let page = spoken(&firm, "2026-0041.03.change");
    assert!(page.contains("The agreed sum stays as it is"), "{page}");
    assert!(page.contains("10 working days more"), "{page}");
    assert!(!page.contains("is billed"), "{page}");
    assert!(!page.contains("The work of this change"), "{page}");
}

#[test]
fn a_change_ends_with_its_contract() {
    let firm = signed("change-ended");
    write(&firm, "change: A landing\nlines: [More: 100.00]\n");
    firm.done("change 2026-0041 change.yaml --on 2026-05-13");
    firm.done("accept 2026-0041 --change 1 --on 2026-05-13");
    let total = |firm: &Firm| {
        let jobs = firm.done("jobs --format json --on 2026-05-20");
        let jobs: serde_json::Value = serde_json::from_str(&jobs).unwrap();
        jobs[0]["total"].as_str().unwrap().to_owned()
    };
    let changed = total(&firm);
    firm.done("cancel 2026-0041 --because 'changed mind' --on 2026-05-14");
    firm.done("quote one.yaml --revise 2026-0041 --on 2026-05-15");
    let quoted = total(&firm);
    firm.done("accept 2026-0041 --on 2026-05-16");
    assert_ne!(changed, quoted);
    assert_eq!(total(&firm), quoted);
    firm.done("change 2026-0041 change.yaml --on 2026-05-17");
    assert!(
        firm.records()
            .contains(&"2026-0041.08.change.pdf".to_owned())
    );
    let page = spoken(&firm, "2026-0041.08.change");
    assert!(page.contains("Change 2: A landing"), "{page}");
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn the_customer_reads_no_cost_and_no_item_of_the_book() {
    let firm = signed("change-page");
    write(
        &firm,
        &format!("change: A landing\nadd: {SLAB}\nlines: [Downspout moved: 85.00]\n"),
    );
    firm.done("change 2026-0041 change.yaml --on 2026-06-12");
    let page = spoken(&firm, "2026-0041.03.change");
    for shown in [
        "Change 1: A landing",
        "landing 20 × 10 ft, 4 in thick",
        "Downspout moved",
        "+ 85.00",
        "1,498.20",
        "Agreed from now on",
        "Signature",
    ] {
        let shown = shown.replace(' ', "");
        let page: String = page.split_whitespace().collect();
        assert!(page.contains(&shown), "`{shown}` is not in\n{page}");
    }
    for hidden in [
        "1,248.50",
        "1,135.00",
        "440.00",
        "587.50",
        "ready-mix",
        "labor",
        "hour",
    ] {
        assert!(!page.contains(hidden), "`{hidden}` is in\n{page}");
    }
}

#[test]
fn a_change_that_cannot_be_is_refused_and_nothing_is_written() {
    let firm = firm("change-refused");
    write(&firm, "change: A landing\nlines: [More: 5.00]\n");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.refused(
        "change 2026-0041 change.yaml --on 2026-06-12",
        "not-accepted",
    );
    firm.done("accept 2026-0041 --on 2026-05-12");
    let before = firm.records();
    let case = |text: &str, code: &str, says: &str| {
        write(&firm, text);
        let said = firm.refused("change 2026-0041 change.yaml --on 2026-06-12", code);
        assert!(said.contains(says), "{said}");
        assert!(said.contains("change.yaml:"), "{said}");
    };
    case("change: Nothing\n", "empty-change", "changes nothing");
    case("lines: [More: 5.00]\n", "missing-key", "`change`");
    case("change: X\ndays: soon\n", "bad-days", "`soon`");
    case(
        "change: X\nlines: [More: -5.001]\n",
        "bad-amount",
        "parts of a cent",
    );
    case(
        "change: X\nadd: {customer: Me, slabs: {slab: 9 ft x 9 ft}}\n",
        "not-in-change",
        "`customer`",
    );
    case(
        "change: X\ndeduct: {extra: [mesh sheet: 2 sheets]}\n",
        "untitled-work",
        "`deduct`",
    );
    case(
        "change: X\nadd: {title: Y, extra: [mesh shoot: 2 sheets]}\n",
        "unknown-price-item",
        "mesh shoot",
    );
    let said = firm.refused("change 2026-0041 none.yaml --on 2026-06-12", "no-such-file");
    assert!(said.contains("none.yaml"), "{said}");
    write(&firm, "change: X\nlines: [More: 5.00]\n");
    let said = firm.done("change 2026-0041 change.yaml --on 2026-06-12 --dry-run");
    assert!(said.contains("nothing was written"), "{said}");
    assert_eq!(firm.records(), before);
}
