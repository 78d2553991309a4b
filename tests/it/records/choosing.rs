//! Accepting a quote in which one answer has to be chosen.

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
