//! A field table as a table of keys for the guides and as a JSON Schema.

use super::fields::{Field, FieldTable, IfLeftOut};
use serde_json::{Map, Value, json};
use std::fmt::Write as _;

/// A Markdown table: key, what it is, what holds without it, what it means, an example.
pub fn markdown(table: &FieldTable) -> String {
    let mut out =
        String::from("| key | what | if left out | meaning | example |\n|---|---|---|---|---|\n");
    for field in table.all() {
        writeln!(
            out,
            "| `{}` | {} | {} | {} | `{}` |",
            field.key,
            cell(field.kind),
            cell(left_out(field.if_left_out)),
            cell(field.meaning),
            cell(field.example),
        )
        .expect("a String takes any text");
    }
    out
}

fn left_out(missing: IfLeftOut) -> &'static str {
    match missing {
        IfLeftOut::Required => "required",
        IfLeftOut::Nothing => "",
        IfLeftOut::Usual(words) | IfLeftOut::Else(words) => words,
    }
}

/// A bar would end the cell.
fn cell(text: &str) -> String {
    text.replace('|', "\\|").replace('\n', " ")
}

/// A JSON Schema object (draft 2020-12) for one map, for editors that check while typing.
///
/// It knows which keys there are and whether each is one value, a list or a group of keys;
/// what a value means is only known to the reader.
pub fn schema(table: &FieldTable) -> Value {
    let properties: Map<String, Value> = table
        .all()
        .iter()
        .map(|field| (field.key.to_owned(), property(field)))
        .collect();
    let required: Vec<&str> = table
        .all()
        .iter()
        .filter(|field| field.if_left_out == IfLeftOut::Required)
        .map(|field| field.key)
        .collect();
    json!({
        "title": table.name,
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    })
}

fn property(field: &Field) -> Value {
    let mut property = Map::new();
    property.insert("description".to_owned(), field.meaning.into());
    if let Some(shape) = shape(field.kind) {
        property.insert("type".to_owned(), shape);
        property.insert("examples".to_owned(), json!([field.example]));
    }
    property.into()
}

/// What YAML makes of the kind; nothing where several shapes are allowed.
fn shape(kind: &str) -> Option<Value> {
    let first = kind.split(' ').next();
    match (first, kind.contains(" or ")) {
        (_, true) if kind == "yes or no" => Some(json!(["boolean", "string"])),
        (_, true) => None,
        (Some("list"), _) => Some(json!("array")),
        (Some("map"), _) => Some(json!("object")),
        // To YAML, `12.50` is a number and `12 ft` is a string.
        _ => Some(json!(["string", "number"])),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SLAB: FieldTable = FieldTable {
        name: "a slab",
        before: &[],
        includes: &[],
        fields: &[
            Field {
                key: "thickness",
                kind: "length",
                if_left_out: IfLeftOut::Required,
                meaning: "of the concrete | as placed",
                example: "4 in",
            },
            Field {
                key: "photos",
                kind: "list of file names",
                if_left_out: IfLeftOut::Else("none"),
                meaning: "printed behind the plan",
                example: "[gate.jpg]",
            },
            Field {
                key: "curb",
                kind: "yes or no",
                if_left_out: IfLeftOut::Usual("no"),
                meaning: "with a curb",
                example: "yes",
            },
            Field {
                key: "size",
                kind: "size or map",
                if_left_out: IfLeftOut::Else("none"),
                meaning: "length by width",
                example: "12 ft x 15 ft",
            },
        ],
    };

    #[test]
    fn a_table_of_keys_has_a_row_for_each() {
        let expected = "\
| key | what | if left out | meaning | example |
|---|---|---|---|---|
| `thickness` | length | required | of the concrete \\| as placed | `4 in` |
| `photos` | list of file names | none | printed behind the plan | `[gate.jpg]` |
| `curb` | yes or no | no | with a curb | `yes` |
| `size` | size or map | none | length by width | `12 ft x 15 ft` |
";
        assert_eq!(markdown(&SLAB), expected);
    }

    #[test]
    fn the_schema_knows_keys_shapes_and_what_is_required() {
        let schema = schema(&SLAB);
        assert_eq!(schema["required"], json!(["thickness"]));
        assert_eq!(schema["additionalProperties"], json!(false));
        let shape = |key: &str| schema["properties"][key]["type"].clone();
        assert_eq!(shape("thickness"), json!(["string", "number"]));
        assert_eq!(shape("photos"), json!("array"));
        assert_eq!(shape("curb"), json!(["boolean", "string"]));
        assert_eq!(shape("size"), Value::Null);
    }
}
