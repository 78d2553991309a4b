//! Accepting a quote: what has to be chosen, and what is told of the first payment.

use super::firm;

#[test]
fn a_question_that_must_be_answered_is_answered_before_signing() {
    let firm = firm("must-choose");
    std::fs::write(
        firm.path("must.yaml"),
        "customer: Lou Invented, Quillhaven
slabs: {slab: 12 ft x 9 ft}
options:
  - choose one: Which edge?
    must choose: yes
    from:
      - Plain: {add: [mesh sheet: 1 sheets]}
      - Boards: {add: [form board: 20 ft]}
",
    )
    .unwrap();
    firm.done("quote must.yaml --issue --on 2026-05-04");
    let said = firm.refused("accept 2026-0041 --on 2026-05-06", "choice-missing");
    assert!(said.contains("`Plain`, `Boards`"), "{said}");
    let said = firm.done("accept 2026-0041 --with boards --on 2026-05-06");
    assert!(said.contains("with        Boards"), "{said}");
}

#[test]
fn a_deposit_above_your_cap_is_told_when_it_is_signed() {
    let firm = firm("deposit-cap");
    let business = std::fs::read_to_string(firm.path("business.yaml")).unwrap();
    for (cap, told) in [("30%", false), ("25%", true)] {
        let own = business.replace("deposit cap: 33%", &format!("deposit cap: {cap}"));
        std::fs::write(firm.path("business.yaml"), own).unwrap();
        firm.done("quote two.yaml --issue --another --on 2026-05-04");
        let number = if told { "2026-0042" } else { "2026-0041" };
        let said = firm.done(&format!("accept {number} --on 2026-05-06"));
        assert_eq!(said.contains("your cap on a deposit is"), told, "{said}");
    }
}
