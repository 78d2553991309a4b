//! One job from quote to paid in full, and what stands where on the way.

use super::firm;

fn row<'a>(overview: &'a str, number: &str) -> &'a str {
    overview
        .lines()
        .find(|line| line.starts_with(number))
        .unwrap_or_default()
}

#[test]
fn a_job_goes_from_quote_to_paid_in_full() {
    let firm = firm("story");
    let said = firm.done("quote one.yaml --issue --on 2026-05-04");
    assert!(said.contains("issued      2026-0041"), "{said}");
    firm.done("quote two.yaml --issue --on 2026-05-05");
    let overview = firm.done("jobs --on 2026-05-10");
    assert!(row(&overview, "2026-0041").contains("quoted"), "{overview}");
    assert!(
        row(&overview, "2026-0042").contains("Dana Example"),
        "{overview}"
    );

    let said = firm.done("accept 2026-0041 --with 'mesh in' --on 2026-05-22");
    // Signed on the Friday before Memorial Day: Saturday, Tuesday, Wednesday.
    assert!(said.contains("May 27, 2026"), "{said}");
    assert!(said.contains("with        Mesh in it"), "{said}");
    firm.done("invoice 2026-0041 --on 2026-05-22");
    firm.done("pay 2026-0041 500.00 --how 'check 7' --on 2026-05-25");
    let statement = firm.done("statement 2026-0041");
    assert!(statement.contains("check 7"), "{statement}");
    firm.done("invoice 2026-0041 --on 2026-06-20");
    let owed: Vec<String> = firm
        .done("statement 2026-0041")
        .lines()
        .rfind(|line| line.contains("owed"))
        .unwrap()
        .split_whitespace()
        .map(str::to_owned)
        .collect();
    let owed = owed.last().unwrap().replace(',', "");
    firm.done(&format!("pay 2026-0041 {owed} --how card --on 2026-06-25"));
    let overview = firm.done("jobs --on 2026-07-01");
    let line = row(&overview, "2026-0041");
    assert!(line.contains("paid"), "{overview}");
    assert!(line.trim_end().ends_with("0.00"), "{overview}");
    assert_eq!(firm.done("owed --on 2026-07-01"), "Nothing is owed.\n");
    let verified = firm.done("verify");
    assert!(verified.contains("all sound"), "{verified}");
}

#[test]
fn stages_make_the_contract_and_a_final_bill_only_what_is_left() {
    let firm = firm("stages");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("invoice 2026-0041 --stage 1 --on 2026-05-06");
    firm.done("invoice 2026-0041 --final --on 2026-06-01");
    let said = firm.refused(
        "invoice 2026-0041 --final --on 2026-06-02",
        "nothing-to-bill",
    );
    assert!(said.contains("flatwork statement 2026-0041"), "{said}");
    let json = firm.done("jobs --format json --on 2026-06-03");
    let jobs: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(jobs[0]["total"], jobs[0]["billed"]);
}

#[test]
fn a_revision_takes_the_place_of_what_went_out_before() {
    let firm = firm("revision");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    let said = firm.done("quote one.yaml --revise 2026-0041 --on 2026-05-20");
    assert!(said.contains("2026-0041, revision 2"), "{said}");
    assert_eq!(
        firm.records(),
        [
            "2026-0041.01.quote.json",
            "2026-0041.01.quote.pdf",
            "2026-0041.02.quote.json",
            "2026-0041.02.quote.pdf",
        ]
    );
    let said = firm.done("accept 2026-0041 --on 2026-06-10");
    assert!(said.contains("accepted by Ira Sample"), "{said}");
    let record = std::fs::read_to_string(firm.path("records/2026-0041.03.accepted.json")).unwrap();
    assert!(record.contains("\"revision\": 2"), "{record}");
}

#[test]
fn a_stranger_restores_the_business_from_a_plain_copy() {
    let (firm, copy) = (firm("original"), super::firm("copy"));
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-06");
    firm.done("invoice 2026-0041 --on 2026-05-06");
    for file in ["business.yaml", "book.yaml"] {
        std::fs::copy(firm.path(file), copy.path(file)).unwrap();
    }
    std::fs::create_dir_all(copy.path("records")).unwrap();
    for name in firm.records() {
        let name = format!("records/{name}");
        std::fs::copy(firm.path(&name), copy.path(&name)).unwrap();
    }
    for job in ["one", "two", "three"] {
        std::fs::remove_file(copy.path(&format!("{job}.yaml"))).unwrap();
    }
    let jobs = "jobs --on 2026-05-20";
    assert_eq!(firm.done(jobs), copy.done(jobs));
    assert!(copy.done("verify").contains("all sound"));
    copy.done("pay 2026-0041 100.00 --on 2026-05-21");
}

#[test]
fn every_kind_of_damage_is_seen() {
    let firm = firm("damage");
    for job in ["one", "two", "three"] {
        firm.done(&format!("quote {job}.yaml --issue --on 2026-05-04"));
    }
    firm.done("accept 2026-0042 --on 2026-05-06");
    let whole: Vec<(String, Vec<u8>)> = firm
        .records()
        .into_iter()
        .map(|name| {
            let bytes = std::fs::read(firm.path(&format!("records/{name}"))).unwrap();
            (name, bytes)
        })
        .collect();
    let case = |damage: &dyn Fn(), says: &str| {
        damage();
        let output = firm.run("verify");
        let said = String::from_utf8(output.stdout).unwrap();
        assert_eq!(output.status.code(), Some(1), "{says}: {said}");
        assert!(said.contains(says), "`{says}` is not in\n{said}");
        for name in firm.records() {
            std::fs::remove_file(firm.path(&format!("records/{name}"))).unwrap();
        }
        for (name, bytes) in &whole {
            std::fs::write(firm.path(&format!("records/{name}")), bytes).unwrap();
        }
    };
    let path = |name: &str| firm.path(&format!("records/{name}"));
    let change = |name: &str, from: &str, to: &str| {
        let text = std::fs::read_to_string(path(name)).unwrap();
        assert!(text.contains(from));
        std::fs::write(path(name), text.replacen(from, to, 1)).unwrap();
    };
    case(
        &|| change("2026-0041.01.quote.json", "Ira", "Ina"),
        "changed or cut short",
    );
    case(
        &|| {
            std::fs::remove_file(path("2026-0042.01.quote.json")).unwrap();
        },
        "2026-0042 has no record 1",
    );
    case(
        &|| {
            for name in ["2026-0042.01.quote", "2026-0042.02.accepted"] {
                std::fs::remove_file(path(&format!("{name}.json"))).unwrap();
            }
        },
        "a number is missing",
    );
    case(
        &|| {
            std::fs::copy(
                path("2026-0042.02.accepted.json"),
                path("2026-0042.02.declined.json"),
            )
            .unwrap();
        },
        "two records with place 2",
    );
    case(
        &|| {
            std::fs::copy(
                path("2026-0042.02.accepted.json"),
                path("2026-0042.02.accepted (conflict).json"),
            )
            .unwrap();
        },
        "a copy made by a synced folder",
    );
    case(
        &|| {
            std::fs::copy(
                path("2026-0043.01.quote.pdf"),
                path("2026-0041.01.quote.pdf"),
            )
            .unwrap();
        },
        "is not the PDF that went out",
    );
    case(
        &|| {
            std::fs::copy(
                path("2026-0043.01.quote.json"),
                path("2026-0041.01.quote.json"),
            )
            .unwrap();
        },
        "holds another record than its name says",
    );
    case(
        &|| {
            std::fs::remove_file(path("2026-0041.01.quote.pdf")).unwrap();
        },
        "`--mend` writes it again",
    );
    assert!(firm.done("verify").contains("all sound"));
}
