//! A field table as a table of keys for the guides and as a JSON Schema.

use super::fields::{Below, Field, FieldTable, IfLeftOut};
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

/// A JSON Schema (draft 2020-12) for a file, for editors that check while typing.
///
/// It knows which keys there are, and whether each is one value, a list or a group of keys;
/// what a value means is only known to the reader.
pub fn schema(table: &FieldTable) -> Value {
    let mut schema = group(table);
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema".into();
    schema
}

fn group(table: &FieldTable) -> Value {
    let all = table.all();
    let properties: Map<String, Value> = all
        .iter()
        .map(|field| (field.key.to_owned(), property(field)))
        .collect();
    let required = all
        .iter()
        .filter(|field| field.if_left_out == IfLeftOut::Required);
    json!({
        "title": table.name,
        "type": "object",
        "properties": properties,
        "required": required.map(|field| field.key).collect::<Vec<_>>(),
        "additionalProperties": false,
    })
}

fn property(field: &Field) -> Value {
    let mut property = shape(field);
    property["description"] = field.meaning.into();
    property["examples"] = json!([field.example]);
    property
}

/// What YAML makes of it; nothing where several shapes are allowed.
fn shape(field: &Field) -> Value {
    let kind = field.kind;
    let is_list = kind.starts_with("list");
    match field.below {
        Below::Keys(table) => group(table),
        Below::Each(tables) if is_list => {
            let named = json!({"additionalProperties": or_short(tables)});
            let mut items = or_short(tables);
            items["anyOf"].as_array_mut().expect("a list").push(named);
            json!({"type": "array", "items": items})
        }
        Below::Each(tables) if kind.contains(" by ") => {
            json!({"type": "object", "additionalProperties": or_short(tables)})
        }
        Below::Each(tables) => or_short(tables),
        Below::Nothing if kind == "yes or no" => json!({"type": ["boolean", "string"]}),
        Below::Nothing if is_list => json!({"type": "array"}),
        Below::Nothing if kind.contains(" or ") => json!({}),
        Below::Nothing if kind.starts_with("keys") || kind.contains(" by ") => {
            json!({"type": "object"})
        }
        // To YAML, `12.50` is a number and `12 ft` is a string.
        Below::Nothing => json!({"type": ["string", "number"]}),
    }
}

/// One of these groups, or its short form in one line or a list. Which of its keys are needed is
/// left to the reader: one may stand for the others.
fn or_short(tables: &[&FieldTable]) -> Value {
    let mut shapes = vec![json!({"not": {"type": "object"}})];
    shapes.extend(tables.iter().map(|table| {
        let mut group = group(table);
        group["required"] = json!([]);
        group
    }));
    json!({"anyOf": shapes})
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
                key: "edges",
                kind: "keys",
                if_left_out: IfLeftOut::Nothing,
                meaning: "what stands there",
                example: "{north: house}",
                below: Below::Keys(&FieldTable {
                    name: "`edges`",
                    before: &[],
                    fields: &[],
                    includes: &[],
                }),
            },
            Field {
                key: "thickness",
                kind: "length",
                if_left_out: IfLeftOut::Required,
                meaning: "of the concrete | as placed",
                example: "4 in",
                below: Below::Nothing,
            },
            Field {
                key: "photos",
                kind: "list of file names",
                if_left_out: IfLeftOut::Else("none"),
                meaning: "printed behind the plan",
                example: "[gate.jpg]",
                below: Below::Nothing,
            },
            Field {
                key: "curb",
                kind: "yes or no",
                if_left_out: IfLeftOut::Usual("no"),
                meaning: "with a curb",
                example: "yes",
                below: Below::Nothing,
            },
            Field {
                key: "size",
                kind: "size or keys",
                if_left_out: IfLeftOut::Else("none"),
                meaning: "length by width",
                example: "12 ft x 15 ft",
                below: Below::Nothing,
            },
        ],
    };

    #[test]
    fn a_table_of_keys_has_a_row_for_each() {
        let expected = "\
| key | what | if left out | meaning | example |
|---|---|---|---|---|
| `edges` | keys |  | what stands there | `{north: house}` |
| `thickness` | length | required | of the concrete \\| as placed | `4 in` |
| `photos` | list of file names | none | printed behind the plan | `[gate.jpg]` |
| `curb` | yes or no | no | with a curb | `yes` |
| `size` | size or keys | none | length by width | `12 ft x 15 ft` |
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
        assert_eq!(schema["properties"]["edges"]["title"], json!("`edges`"));
    }
}
