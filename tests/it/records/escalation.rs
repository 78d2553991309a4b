//! The escalation clause: printed with the terms, worked out by what was signed, sent as a change order.

use super::firm;

const CLAUSE: &str =
    "escalation: {index: the ready-mix price the county posts, reference: 178.00, over: 5%}\n";

#[test]
fn what_was_signed_follows_the_posted_price() {
    let firm = firm("escalation");
    let path = firm.path("business.yaml");
    let plain = std::fs::read_to_string(&path).unwrap();
    std::fs::write(&path, plain.clone() + CLAUSE).unwrap();
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.refused("escalate 2026-0041 --index 192.00", "not-accepted");
    firm.done("accept 2026-0041 --on 2026-05-06");
    let kept = std::fs::read_to_string(firm.path("records/2026-0041.01.quote.json")).unwrap();
    assert!(kept.contains("is over 5% above or below $178.00 a cubic yard"));
    // What the owner writes later changes nothing that is signed.
    std::fs::write(&path, plain).unwrap();
    // 20 × 18 ft × 4 in and 5 % are 4.67 cu yd, so 4.75 are ordered; 5.10 × 4.75 is 24.225 (by hand).
    let said = firm.done("escalate 2026-0041 --index 192.00");
    assert!(
        said.contains("($192.00 − $178.00 × 105%) × 4.75 cu yd"),
        "{said}"
    );
    assert!(said.contains("comes to    $24.23 before tax"), "{said}");
    assert!(
        firm.done("escalate 2026-0041 --index 186.90")
            .contains("nothing to follow")
    );
    let less = firm.done("escalate 2026-0041 --index 160.00 --yards 4");
    assert!(less.contains("comes to    -$36.40"), "{less}");
    // The change order it writes is one.
    let order = said.split("FILE`:\n\n").nth(1).unwrap();
    std::fs::write(firm.path("clause.change.yaml"), order).unwrap();
    let change = firm.done("change 2026-0041 clause.change.yaml --on 2026-06-01");
    assert!(change.contains("price       $24.23"), "{change}");
    firm.done("accept 2026-0041 --change 1 --on 2026-06-02");
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn a_contract_without_a_clause_follows_nothing() {
    let firm = firm("no-escalation");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.refused("escalate 2026-0041 --index 192.00", "no-clause");
}
