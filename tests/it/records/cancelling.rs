//! The right to cancel on paper: beside the signature, and twice at the end.

use super::firm;

fn spoken(folder: &std::path::Path) -> Vec<String> {
    let bytes = std::fs::read(folder).unwrap();
    let lines = crate::pdf::spoken(&bytes).into_iter();
    let lines = lines.filter_map(|line| Some(line.trim().strip_prefix('"')?.to_owned()));
    lines
        .map(|line| line.trim_end_matches('"').trim().to_owned())
        .collect()
}

#[test]
fn the_quote_carries_the_statement_and_two_blank_forms_where_switched_on() {
    let firm = firm("right-to-cancel");
    let said = firm.done("quote two.yaml --issue --on 2026-05-04");
    assert!(
        said.contains("write both dates on both cancellation forms"),
        "{said}"
    );
    let lines = spoken(&firm.path("records/2026-0041.01.quote.pdf"));
    let all = lines.join(" ");
    let before_signature = lines
        .iter()
        .position(|line| line.starts_with("You, the buyer, may"));
    let signature = lines.iter().position(|line| line == "Signature").unwrap();
    let distance = signature - before_signature.expect("the statement is there");
    assert!(
        distance <= 3,
        "{distance} lines from the statement to the signature"
    );
    for twice in [
        "You may CANCEL this transaction, without any Penalty or Obligation, within THREE BUSINESS DAYS",
        "returned within TEN BUSINESS DAYS following receipt",
        "remain liable for performance of all obligations under the contract.",
        "to Larkspur Flatwork, at 4 Kiln Yard, Quillhaven, NOT LATER THAN MIDNIGHT OF",
        "I HEREBY CANCEL THIS TRANSACTION.",
        "Date of transaction",
        "Buyer\u{2019}s signature",
    ] {
        assert_eq!(all.matches(twice).count(), 2, "`{twice}` in {all}");
    }
    let form = all.split("Notice of Cancellation").nth(1).unwrap();
    assert!(
        !form.contains("2026"),
        "the day of signing is unknown: {form}"
    );

    let said = firm.done("accept 2026-0041 --on 2026-07-02 --late");
    assert!(
        said.contains("write       July 2, 2026 and July 8, 2026 on both forms"),
        "{said}"
    );
    assert!(said.contains("check your state's law"), "{said}");
}

#[test]
fn a_business_without_the_right_prints_nothing_of_it() {
    let firm = firm("no-right-to-cancel");
    let business = std::fs::read_to_string(firm.path("business.yaml")).unwrap();
    let business = business.replace(", right to cancel: yes", "");
    std::fs::write(firm.path("business.yaml"), business).unwrap();
    let said = firm.done("quote two.yaml --issue --on 2026-05-04");
    assert!(!said.contains("cancellation"), "{said}");
    let all = spoken(&firm.path("records/2026-0041.01.quote.pdf")).join(" ");
    assert!(!all.to_lowercase().contains("cancel"), "{all}");
    let said = firm.done("accept 2026-0041 --on 2026-05-06");
    assert!(!said.contains("cancel"), "{said}");
}
