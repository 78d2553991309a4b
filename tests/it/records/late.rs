//! Late charges: shown with their working by the terms that were signed, and never billed.

use super::firm;

#[test]
fn a_late_charge_goes_by_the_terms_that_were_signed() {
    let firm = firm("late");
    let terms = |rule: &str| {
        let path = firm.path("business.yaml");
        let text = std::fs::read_to_string(&path).unwrap();
        let kept: Vec<&str> = text
            .lines()
            .filter(|line| !line.starts_with("invoices:"))
            .collect();
        let text = format!(
            "{}\ninvoices: {{late charge: \"{rule}\"}}\n",
            kept.join("\n")
        );
        std::fs::write(&path, text).unwrap();
    };
    terms("1% a month, simple");
    firm.done("quote two.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("invoice 2026-0041 --final --on 2026-05-06");
    // Due on May 16.
    let total = firm.done("statement 2026-0041 --on 2026-05-16");
    assert!(!total.contains("Late charge"), "{total}");
    let told = firm.done("statement 2026-0041 --on 2026-07-20");
    assert!(told.contains("× 1% × 2 months"), "{told}");
    assert!(told.contains("not billed"), "{told}");
    assert!(firm.done("owed --on 2026-07-20").contains("2026-0041-1"));
    // What the owner asks of others since does not change what was signed.
    terms("2% a month, compound");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0042 --on 2026-05-06");
    firm.done("invoice 2026-0042 --final --on 2026-05-06");
    let owed = firm.done("owed --on 2026-08-16");
    assert!(owed.contains("× 1% × 3 months"), "{owed}");
    assert!(owed.contains("× (1 + 2%), 3 months over"), "{owed}");
    let late = owed.split("Late charge").nth(1).unwrap();
    assert!(late.contains("together"), "{owed}");
    // What is owed stays what is billed.
    firm.done("verify");
}
