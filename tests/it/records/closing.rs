//! The page of the hand-over, with the final invoice and with no other.

use super::firm;

fn text(firm: &super::Firm, name: &str) -> String {
    let record = std::fs::read_to_string(firm.path(&format!("records/{name}.json"))).unwrap();
    assert!(firm.path(&format!("records/{name}.pdf")).exists());
    record
}

#[test]
fn the_final_invoice_hands_the_job_over() {
    let firm = firm("closing");
    let path = firm.path("business.yaml");
    let business = std::fs::read_to_string(&path).unwrap()
        + "promises: [A 10 ft straightedge finds no dip over 1/4 in.]\ninvoices: {notices: [Lien notice: 60 days]}\n";
    std::fs::write(&path, business).unwrap();
    let job = "customer: Dana Example, Quillhaven\npour: 2026-06-15\nslabs: {slab: 12 ft x 9 ft}\n";
    std::fs::write(firm.path("two.yaml"), job).unwrap();
    firm.done("quote two.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    let first = firm.done("invoice 2026-0041 --on 2026-05-06");
    assert!(!first.contains("Lien notice"), "{first}");
    assert!(!text(&firm, "2026-0041.03.invoice").contains("closing"));
    let said = firm.done("invoice 2026-0041 --final --poured 2026-06-18 --on 2026-06-30");
    // 60 days after June 18.
    assert!(said.contains("Lien notice: August 17, 2026"), "{said}");
    let kept = text(&firm, "2026-0041.04.final-invoice");
    assert!(kept.contains("\"poured\": \"2026-06-18\""), "{kept}");
    // 28 days after it, as nobody says otherwise.
    assert!(kept.contains("\"seal\": \"2026-07-16\""), "{kept}");
    assert!(kept.contains("straightedge"), "{kept}");
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn the_day_of_the_pour_is_the_planned_one_unless_another_is_said() {
    let firm = firm("closing-planned");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("invoice 2026-0041 --final --on 2026-06-30");
    // The quote counted 14 days from its own.
    let kept = text(&firm, "2026-0041.03.final-invoice");
    assert!(kept.contains("\"poured\": \"2026-05-18\""), "{kept}");
}

#[test]
fn a_sealer_sold_by_its_item_is_still_to_come() {
    let firm = firm("closing-sealed");
    let path = firm.path("book.yaml");
    let item = "items:\n  clear sealer: {unit: sq ft, class: material, after: 35 days, prices: {2026-01-01: 0.40}}\n";
    let book = std::fs::read_to_string(&path)
        .unwrap()
        .replacen("items:\n", item, 1);
    std::fs::write(&path, book).unwrap();
    let job = "customer: Dana Example, Quillhaven\npour: 2026-06-15\nslabs: {slab: 12 ft x 9 ft}\nextra: [clear sealer: 108 sq ft]\n";
    std::fs::write(firm.path("two.yaml"), job).unwrap();
    firm.done("quote two.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("invoice 2026-0041 --final --poured 2026-06-18 --on 2026-06-30");
    let kept = text(&firm, "2026-0041.03.final-invoice");
    // 35 days after June 18.
    assert!(kept.contains("\"seal\": \"2026-07-23\""), "{kept}");
    assert!(kept.contains("\"is_sealed_by_us\": true"), "{kept}");
}
