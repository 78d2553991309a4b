//! Steps that cannot be taken, each with its reason and the command that helps.

use super::firm;

#[test]
fn a_step_out_of_turn_is_refused_and_nothing_is_written() {
    let firm = firm("refusals");
    firm.refused("accept 2026-0041 --on 2026-05-06", "no-such-quote");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    let before = firm.records();
    firm.refused("quote one.yaml --issue --on 2026-05-05", "issued-already");
    firm.refused("accept 2026-0014 --on 2026-05-06", "no-such-quote");
    firm.refused("invoice 2026-0041 --on 2026-05-06", "not-accepted");
    firm.refused(
        "cancel 2026-0041 --because 'no' --on 2026-05-06",
        "not-accepted",
    );
    firm.refused("accept 2026-0041 --on 2026-08-06", "quote-expired");
    firm.refused(
        "accept 2026-0041 --with rose --on 2026-05-06",
        "no-such-option",
    );
    firm.refused("accept 2026-0041 --with m --on 2026-05-06", "which-option");
    firm.refused(
        "accept 2026-0041 --with mesh --with 'mesh in' --on 2026-05-06",
        "chosen-twice",
    );
    firm.refused(
        "accept 2026-0041 --change 1 --on 2026-05-06",
        "not-accepted",
    );
    firm.refused(
        "void 2026-0041 1 --because 'slip' --on 2026-05-06",
        "no-such-invoice",
    );
    firm.refused(
        "returned 2026-0041 1 --because 'no cover' --on 2026-05-06",
        "no-such-payment",
    );
    firm.refused("refund 2026-0041 5.00 --on 2026-05-06", "nothing-to-refund");
    assert_eq!(firm.records(), before);

    firm.done("accept 2026-0041 --late --on 2026-08-06");
    let said = firm.refused("accept 2026-0041 --on 2026-08-07", "already-accepted");
    assert!(said.contains("flatwork change 2026-0041"), "{said}");
    firm.refused(
        "decline 2026-0041 --because 'dear' --on 2026-08-07",
        "already-accepted",
    );
    firm.refused(
        "quote one.yaml --revise 2026-0041 --on 2026-08-07",
        "already-accepted",
    );
    firm.refused(
        "accept 2026-0041 --change 1 --on 2026-08-07",
        "no-such-change",
    );
    firm.refused(
        "invoice 2026-0041 --stage 3 --on 2026-08-07",
        "no-such-stage",
    );
    firm.done("invoice 2026-0041 --on 2026-08-07");
    firm.refused(
        "invoice 2026-0041 --stage 1 --on 2026-08-07",
        "billed-already",
    );
    firm.refused(
        "credit 2026-0041 1 99999.00 --because 'all of it' --on 2026-08-07",
        "credit-too-high",
    );
    firm.refused(
        "pay 2026-0041 10.00 --invoice 2 --on 2026-08-07",
        "no-such-invoice",
    );
    firm.done("pay 2026-0041 10.00 --on 2026-08-07");
    firm.refused(
        "void 2026-0041 1 --because 'slip' --on 2026-08-08",
        "invoice-in-use",
    );
    firm.done("returned 2026-0041 1 --because 'no cover' --on 2026-08-08");
    firm.refused(
        "returned 2026-0041 1 --because 'no cover' --on 2026-08-08",
        "returned-twice",
    );
    firm.done("void 2026-0041 1 --because slip --on 2026-08-09");
    firm.refused(
        "pay 2026-0041 10.00 --invoice 1 --on 2026-08-09",
        "invoice-void",
    );
    firm.done("invoice 2026-0041 --stage 1 --on 2026-08-09");
    firm.done("invoice 2026-0041 --on 2026-08-09");
    firm.refused("invoice 2026-0041 --on 2026-08-09", "all-billed");
    assert!(firm.done("verify").contains("all sound"));
}

#[test]
fn an_answer_closes_a_quote_until_a_revision_opens_it() {
    let firm = firm("closed");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("postpone 2026-0041 --because 'the dog' --until 2026-06-01 --on 2026-05-06");
    firm.done("decline 2026-0041 --because 'too dear' --on 2026-05-08");
    let said = firm.refused("accept 2026-0041 --on 2026-05-09", "already-closed");
    assert!(said.contains("is declined"), "{said}");
    firm.done("quote one.yaml --revise 2026-0041 --on 2026-05-10");
    firm.done("withdraw 2026-0041 --because 'no crew' --on 2026-05-11");
    let overview = firm.done("jobs --on 2026-05-12");
    assert!(overview.contains("withdrawn"), "{overview}");
}

#[test]
fn a_customer_who_cancels_in_time_gets_the_money_back() {
    let firm = firm("cancelled");
    firm.done("quote one.yaml --issue --on 2026-05-04");
    firm.done("accept 2026-0041 --on 2026-07-02 --late");
    firm.done("pay 2026-0041 200.00 --on 2026-07-02");
    // July 4 is a Saturday, observed on Friday: Monday, Tuesday, Wednesday.
    let said = firm.done("cancel 2026-0041 --because 'changed mind' --on 2026-07-08");
    assert!(said.contains("pay back $200.00 by July 20, 2026"), "{said}");
    firm.done("refund 2026-0041 200.00 --how check --on 2026-07-10");
    let overview = firm.done("jobs --on 2026-07-12");
    assert!(overview.contains("cancelled"), "{overview}");
}

#[test]
fn a_dry_run_says_what_it_would_write_and_writes_nothing() {
    let firm = firm("dry");
    let said = firm.done("quote one.yaml --issue --dry-run --on 2026-05-04");
    assert!(said.contains("would issue 2026-0041"), "{said}");
    assert!(firm.records().is_empty());
    assert!(!firm.path("one.pdf").exists());
    firm.done("quote one.yaml --issue --on 2026-05-04");
    let said = firm.done("accept 2026-0041 --dry-run --on 2026-05-06");
    assert!(said.contains("nothing was written"), "{said}");
    assert_eq!(firm.records().len(), 2);
}
