//! Progress invoices by a schedule of values: what was signed is what is billed, and no more.

use rust_decimal_macros::dec;

use super::published::{billed, signed};

const DONE: &str = "retainage: 10%
lines:
  - Base and forms: {value: 2400.00, done: 100%}
  - Concrete: {value: 6000.00, done: 40%, stored: 800.00}
  - Sealing: {value: 1600.00, retainage: no}
";

#[test]
fn deposit_progress_and_final_make_the_contract() {
    let firm = signed("progress", "10000.00", "{on: sale, rate: 6%}");
    firm.done("invoice 2026-0041 --stage 1 --on 2026-05-06");
    std::fs::write(firm.path("values.yaml"), DONE).unwrap();
    let said = firm.done("invoice 2026-0041 --progress values.yaml --on 2026-06-01");
    assert!(said.contains("2026-0041-2"), "{said}");
    // 2,400 + 2,400 + 800 stored, less a tenth, less the deposit of 3,000; tax in proportion.
    assert_eq!(billed(&firm, 4), [dec!(2040), dec!(122.40), dec!(2162.40)]);
    firm.refused(
        "invoice 2026-0041 --stage 2 --on 2026-06-02",
        "billed-already",
    );
    firm.refused(
        "invoice 2026-0041 --progress values.yaml --on 2026-06-02",
        "nothing-to-bill",
    );
    firm.done("pay 2026-0041 5342.40 --on 2026-06-02");
    let jobs = firm.done("jobs --on 2026-06-02");
    assert!(jobs.contains("--progress FILE"), "{jobs}");
    firm.done("invoice 2026-0041 --final --on 2026-07-01");
    assert_eq!(billed(&firm, 6)[0], dec!(4960));
    let json = firm.done("jobs --format json --on 2026-07-02");
    let jobs: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(jobs[0]["total"], jobs[0]["billed"]);
    std::fs::write(firm.path("values.yaml"), DONE.replace("40%", "80%")).unwrap();
    firm.refused(
        "invoice 2026-0041 --progress values.yaml --on 2026-07-03",
        "below-billed",
    );
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn a_schedule_that_does_not_fit_the_contract_is_refused_with_its_reason() {
    let firm = signed("progress-wrong", "10000.00", "none");
    let case = |schedule: &str, code: &str| {
        std::fs::write(firm.path("values.yaml"), schedule).unwrap();
        let line = "invoice 2026-0041 --progress values.yaml --on 2026-06-01";
        firm.refused(line, code)
    };
    let said = case(&DONE.replace("1600", "1650"), "values-not-contract");
    assert!(said.contains("10,050.00"), "{said}");
    case(&DONE.replace("40%", "90%"), "over-value");
    case(
        &DONE.replace("10%", "10%\nreleased: 600.00"),
        "released-too-much",
    );
    case(&DONE.replace("Sealing", "Concrete"), "line-twice");
    case(
        "lines: [All: {value: 11000.00, done: 100%}, Less: {value: -1000.00}]",
        "over-contract",
    );
    std::fs::write(firm.path("values.yaml"), DONE).unwrap();
    firm.done("invoice 2026-0041 --progress values.yaml --on 2026-06-01");
    case(&DONE.replace("Sealing", "Sealer"), "line-missing");
    case(&DONE.replace("40%", "10%"), "below-billed");
    // A void bill never was.
    firm.done("void 2026-0041 1 --because 'too early' --on 2026-06-02");
    std::fs::write(firm.path("values.yaml"), DONE.replace("Sealing", "Sealer")).unwrap();
    firm.done("invoice 2026-0041 --progress values.yaml --on 2026-06-03");
    assert_eq!(billed(&firm, 3), billed(&firm, 5));
}
