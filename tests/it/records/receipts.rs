//! Receipts: what a payment covers, and that both their columns add up as the customer reads them.

use super::{Firm, firm};

/// The words of a page, cell by cell.
fn cells(firm: &Firm, name: &str) -> Vec<String> {
    let bytes = std::fs::read(firm.path(&format!("records/{name}.pdf"))).unwrap();
    crate::pdf::spoken(&bytes)
        .iter()
        .filter_map(|line| line.trim().strip_prefix('"'))
        .map(|cell| cell.trim_end_matches('"').trim().replace('\u{a0}', " "))
        .collect()
}

fn cents(cell: &str) -> i64 {
    let digits: String = cell.chars().filter(char::is_ascii_digit).collect();
    let amount: i64 = digits
        .parse()
        .unwrap_or_else(|_| panic!("no amount: {cell}"));
    if cell.starts_with('\u{2212}') {
        -amount
    } else {
        amount
    }
}

/// The rows from one cell to another, both included.
fn rows(cells: &[String], from: &str, to: &str) -> Vec<(String, i64)> {
    let start = cells.iter().position(|cell| cell == from);
    let start = start.unwrap_or_else(|| panic!("no `{from}` in {cells:?}"));
    let mut found = Vec::new();
    for pair in cells[start..].chunks(2) {
        found.push((pair[0].clone(), cents(&pair[1])));
        if pair[0] == to {
            return found;
        }
    }
    panic!("no `{to}` in {cells:?}");
}

#[test]
fn both_columns_of_a_receipt_add_up() {
    let firm = firm("receipts");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-05-12");
    firm.done("invoice 2026-0041 --on 2026-05-12");
    firm.done("pay 2026-0041 100.00 --how 'check 7' --on 2026-05-20");
    firm.done("invoice 2026-0041 --on 2026-06-12");
    firm.done("credit 2026-0041 2 50.00 --because 'a crooked joint' --on 2026-06-13");
    firm.done("pay 2026-0041 9000.00 --how card --on 2026-06-20");
    for name in ["2026-0041.04.paid", "2026-0041.07.paid"] {
        let cells = cells(&firm, name);
        let first = cells
            .iter()
            .position(|cell| cell == "What it pays")
            .unwrap()
            + 1;
        let mut pays = rows(&cells[first..], &cells[first].clone(), "This payment");
        let (_, whole) = pays.pop().unwrap();
        assert_eq!(
            pays.iter().map(|(_, amount)| amount).sum::<i64>(),
            whole,
            "{pays:?}"
        );

        let mut stands = rows(&cells, "Paid before", "The agreed total");
        let (_, agreed) = stands.pop().unwrap();
        let paid: i64 = stands[..2].iter().map(|(_, amount)| amount).sum();
        assert_eq!(stands[2], ("Paid so far".to_owned(), paid));
        assert_eq!(
            stands[2..].iter().map(|(_, amount)| amount).sum::<i64>(),
            agreed,
            "{stands:?}"
        );
    }
    let last = cells(&firm, "2026-0041.07.paid");
    for shown in [
        "Invoice 2026-0041-1",
        "Invoice 2026-0041-2",
        "Paid ahead, to your credit",
    ] {
        assert!(
            last.iter().any(|cell| cell == shown),
            "`{shown}` is not in {last:?}"
        );
    }
    let said = firm.done("refund 2026-0041 10.00 --how 'check 88' --on 2026-06-22");
    assert!(said.contains("2026-0041.08.refunded"), "{said}");
    let page = cells(&firm, "2026-0041.08.refunded");
    let rows = rows(&page, "To your credit before", "To your credit now");
    assert_eq!(rows[0].1 - 1_000, rows[2].1, "{rows:?}");
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn money_before_the_signature_has_a_receipt_and_stays_to_the_customer() {
    let firm = firm("receipt-early");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("pay 2026-0041 100.00 --on 2026-05-05");
    let page = cells(&firm, "2026-0041.02.paid").join(" | ");
    assert!(page.contains("$100.00 is to your credit"), "{page}");
    assert!(!page.contains("The agreed total"), "{page}");
}
