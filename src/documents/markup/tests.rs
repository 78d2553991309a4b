//! What the vocabulary refuses, and where it says the fault is.

use super::read;
use crate::press::layout::block::{Block, Flow};
use crate::press::text::{Span, Voice};

fn body(text: &str) -> String {
    format!("<document>\n<body>\n{text}\n</body>\n</document>")
}

#[test]
fn faults_are_told_with_line_and_column() {
    #[track_caller]
    fn case(text: &str, message: &str) {
        let error = read(&body(text)).expect_err(text);
        assert_eq!(error.to_string(), message);
    }

    case(
        "<blink>now</blink>",
        "line 3, column 1: `<blink>` has no meaning inside `<body>`",
    );
    case(
        "<p>now <i>or</i></p>",
        "line 3, column 8: `<i>` has no meaning inside `<p>`",
    );
    case(
        "<p\n gap='wide'>now</p>",
        "line 3, column 1: `gap` is `wide`, but must be a whole number up to 40",
    );
    case(
        "<section rule='double'/>",
        "line 3, column 1: `rule` is `double`, but must be `none` or `thin` or `heavy` or `dashed`",
    );
    case(
        "<p color='red'>now</p>",
        "line 3, column 1: `<p>` has no attribute `color`",
    );
    case(
        "<figure/>",
        "line 3, column 1: `<figure>` needs the attribute `name`",
    );
    case(
        "<section>now</section>",
        "line 3, column 10: words stand directly inside `<section>`: `now`",
    );
    case(
        "<table><col/><col/><tbody>\n<tr><td>one</td></tr></tbody></table>",
        "line 4, column 1: a row has 1 cells, its table 2 columns",
    );
    case(
        "<table><col/><tbody>\n<tr><td><p>one</p><hr/></td></tr></tbody></table>",
        "line 4, column 19: `<hr>` has no meaning inside `<td>`",
    );
    case(
        "<table><col/><tbody>\n<tr><td>one<figure name='x'/></td></tr></tbody></table>",
        "line 4, column 9: words stand directly inside `<td>`: `one`",
    );
    let error = read("<document><body></document>").expect_err("not well formed");
    assert_eq!((error.line, error.column), (1, 17), "{error}");
}

#[test]
fn page_numbers_and_voices_are_told_apart() {
    let Flow { blocks, .. } = read(&body(
        "<p>see <b>page {page:x}</b>, <small>{page</small></p>",
    ))
    .expect("this is fine");
    let [Block::Paragraph { text, .. }] = blocks.as_slice() else {
        panic!("one paragraph: {blocks:?}");
    };
    let plain = |words: &str, voice| Span::Text(words.to_owned(), voice);
    assert_eq!(
        text.0,
        [
            plain("see ", Voice::Plain),
            plain("page ", Voice::Bold),
            Span::PageOf("x".to_owned(), Voice::Bold),
            plain(", ", Voice::Plain),
            plain("{page", Voice::Soft),
        ]
    );
}
