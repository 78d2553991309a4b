//! Tables in plain text: columns side by side, numbers on their decimal point.

use unicode_width::UnicodeWidthStr;

/// How a column stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    Left,
    Right,
    /// Decimal points below each other; a number without one ends where the point would be.
    Point,
}

/// Rows of one shape, set under each other; two spaces between columns, none at a line's end.
pub fn table(aligns: &[Align], rows: &[Vec<String>]) -> Vec<String> {
    let mut columns: Vec<Vec<String>> = aligns
        .iter()
        .enumerate()
        .map(|(i, align)| {
            let column: Vec<String> = rows
                .iter()
                .map(|row| row.get(i).cloned().unwrap_or_default())
                .collect();
            column_of(*align, &column)
        })
        .collect();
    columns.retain(|column| column.iter().any(|cell| !cell.trim().is_empty()));
    (0..rows.len())
        .map(|i| {
            let line: Vec<&str> = columns.iter().map(|column| column[i].as_str()).collect();
            line.join("  ").trim_end().to_owned()
        })
        .collect()
}

fn column_of(align: Align, cells: &[String]) -> Vec<String> {
    let pointed: Vec<String> = if align == Align::Point {
        let after = |cell: &String| cell.find('.').map_or(0, |at| cell.len() - at);
        let most = cells.iter().map(after).max().unwrap_or(0);
        cells
            .iter()
            .map(|cell| format!("{cell}{}", " ".repeat(most - after(cell))))
            .collect()
    } else {
        cells.to_vec()
    };
    let widest = pointed.iter().map(|cell| cell.width()).max().unwrap_or(0);
    pointed
        .into_iter()
        .map(|cell| {
            let space = " ".repeat(widest - cell.width());
            if align == Align::Left {
                cell + &space
            } else {
                space + &cell
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_stand_below_each_other_and_lines_have_no_tail() {
        let row = |cells: [&str; 3]| cells.map(str::to_owned).to_vec();
        let lines = table(
            &[Align::Left, Align::Point, Align::Right],
            &[row(["a", "7.5", "1"]), row(["bcd", "1,120", ""])],
        );
        assert_eq!(lines, ["a        7.5  1", "bcd  1,120"]);
    }

    #[test]
    fn a_column_that_is_never_filled_takes_no_room() {
        let row = |cells: [&str; 3]| cells.map(str::to_owned).to_vec();
        let lines = table(&[Align::Left; 3], &[row(["a", "", "c"])]);
        assert_eq!(lines, ["a  c"]);
    }
}
