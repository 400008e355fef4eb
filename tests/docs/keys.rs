//! The page of the keys is made from the schemas, the register of formulas and the table of units.

use proofwalk::library::{FileKind, schema};
use proofwalk::measure::{Scale, Unit};
use proofwalk::trade::{self, Formula};
use serde_json::{Map, Value};

use super::kept::keep;

#[test]
fn the_page_of_the_keys_is_what_the_program_knows() {
    keep("docs/keys.md", &written());
}

fn written() -> String {
    let mut page = String::from(
        "# Every key, formula and unit\n\n\
         To look things up; [the guide](guide.md) tells how to begin, and [the format](format.md) what it all means. This page is\n\
         made from what the program knows: see [DEVELOPERS.md](../DEVELOPERS.md#documents).\n",
    );
    for kind in FileKind::ALL {
        page.push_str(&format!("\n## {}\n", kind.files()));
        let schema = schema(kind);
        let mut tables = Tables {
            root: &schema,
            page: &mut page,
            seen: Vec::new(),
        };
        tables.object(&schema, None);
    }
    page.push_str("\n## Formulas\n\nFor `worked_out` of a reading. An argument is a reading, a `plate.FIELD` or a quantity.\n");
    trade::all()
        .iter()
        .for_each(|formula| page.push_str(&about(formula)));
    page.push_str(
        "\n## Units\n\nSpaces and full stops inside a unit do not matter, nor do capitals, except those of a leading `m` or `M`.\n\n\
         | unit | measures | also written |\n|---|---|---|\n",
    );
    Unit::all().for_each(|unit| page.push_str(&row_of(unit)));
    page
}

/// Writes a table for each map of a schema whose keys the format fixes.
struct Tables<'a> {
    root: &'a Value,
    page: &'a mut String,
    /// Those that stand below this kind of file already.
    seen: Vec<String>,
}

impl<'a> Tables<'a> {
    /// A map with fixed keys; `of` is the key it stands behind, none at the top of a file.
    fn object(&mut self, schema: &'a Value, of: Option<&str>) {
        if let Some(of) = of {
            let name = schema["title"].as_str().unwrap_or(of);
            if self.seen.iter().any(|seen| seen == name) {
                return;
            }
            self.seen.push(name.to_owned());
            let within = if name == of {
                String::new()
            } else {
                format!(", in `{of}`")
            };
            self.page.push_str(&format!("\n### {name}{within}\n"));
        }
        let (said, _) = meaning(self.root, schema);
        if !said.is_empty() {
            self.page.push_str(&format!("\n{said}\n"));
        }
        let kinds = kinds(schema);
        if kinds.is_empty() {
            self.table(schema);
        }
        for (kind, schema) in &kinds {
            self.page.push_str(&format!("\n#### `{kind}`\n"));
            self.table(schema);
        }
        let all = kinds.into_iter().map(|(_, schema)| schema).chain([schema]);
        for (key, value) in all.filter_map(properties).flatten() {
            self.behind(value, key);
        }
    }

    /// What stands behind a key: a map with fixed keys, or something that holds such maps.
    fn behind(&mut self, schema: &'a Value, of: &str) {
        if let Some(name) = schema["$ref"].as_str() {
            let (_, name) = name.rsplit_once('/').unwrap();
            return self.behind(&self.root["definitions"][name], of);
        }
        if properties(schema).is_some() || !kinds(schema).is_empty() {
            return self.object(schema, Some(of));
        }
        for inside in ["additionalProperties", "items", "then"] {
            self.behind_each(&schema[inside], of);
        }
        for inside in ["allOf", "anyOf"] {
            let several = schema[inside].as_array().into_iter().flatten();
            several.for_each(|schema| self.behind_each(schema, of));
        }
    }

    fn behind_each(&mut self, schema: &'a Value, of: &str) {
        if schema.is_object() {
            self.behind(schema, of);
        }
    }

    fn table(&mut self, schema: &'a Value) {
        let required: Vec<&str> = schema["required"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(Value::as_str)
            .collect();
        self.page
            .push_str("\n| key | required | meaning | example |\n|---|---|---|---|\n");
        for (key, value) in properties(schema).into_iter().flatten() {
            let (meaning, example) = meaning(self.root, value);
            let required = if required.contains(&key.as_str()) {
                "yes"
            } else {
                ""
            };
            self.page.push_str(&format!(
                "| `{key}` | {required} | {} | {} |\n",
                cell(meaning),
                cell(example)
            ));
        }
        let mut rules = Vec::new();
        messages(&schema["allOf"], &mut rules);
        if !rules.is_empty() {
            self.page.push('\n');
        }
        for rule in rules {
            self.page.push_str(&format!("- {rule}\n"));
        }
    }
}

fn properties(schema: &Value) -> Option<&Map<String, Value>> {
    schema["properties"].as_object()
}

/// Where a map has the key that says what kind it is: each such key, with the schema of its kind.
fn kinds(schema: &Value) -> Vec<(&str, &Value)> {
    let mut kinds = Vec::new();
    let mut rest = schema;
    while let (Some(kind), true) = (
        rest["if"]["required"][0].as_str(),
        rest["then"]["required"].is_array(),
    ) {
        kinds.push((kind, &rest["then"]));
        rest = &rest["else"];
    }
    kinds
}

/// What is said of a key, and the example at its end.
fn meaning<'a>(root: &'a Value, schema: &'a Value) -> (&'a str, &'a str) {
    let described = schema["description"].as_str();
    let referred = || {
        let name = schema["$ref"].as_str()?.rsplit_once('/')?.1;
        root["definitions"][name]["description"].as_str()
    };
    let said = described.or_else(referred).unwrap_or_default();
    said.split_once(" Example: ").unwrap_or((said, ""))
}

/// What the conditions of a schema say where they are not met, each once.
fn messages(schema: &Value, found: &mut Vec<String>) {
    match schema {
        Value::Object(map) => {
            if let Some(message) = map.get("errorMessage").and_then(Value::as_str)
                && !found.iter().any(|known| known == message)
            {
                found.push(message.to_owned());
            }
            map.values().for_each(|inside| messages(inside, found));
        }
        Value::Array(several) => several.iter().for_each(|inside| messages(inside, found)),
        _ => {}
    }
}

fn about(formula: &Formula) -> String {
    let mut text = format!(
        "\n### {}\n\n{} {}\n\n`{}`\n\n| argument | unit | meaning |\n|---|---|---|\n",
        formula.name, formula.sentence, formula.range, formula.equation
    );
    for argument in formula.arguments {
        text.push_str(&format!(
            "| `{}` | {} | {} |\n",
            argument.name,
            unit_of(argument.scale),
            cell(argument.meaning)
        ));
    }
    text.push_str(&format!("| *result* | {} | |\n", unit_of(formula.result)));
    text
}

/// A scale's unit, with a word where it is a difference.
fn unit_of(scale: Scale) -> String {
    let unit = match scale.unit {
        Unit::Number => "number",
        unit => unit.symbol(),
    };
    if scale.difference {
        format!("{unit}, a difference")
    } else {
        unit.to_owned()
    }
}

fn row_of(unit: Unit) -> String {
    let mut spellings: Vec<&str> = unit.spellings().collect();
    spellings.dedup();
    let first = match unit {
        Unit::Number => "number",
        unit => unit.symbol(),
    };
    let others: Vec<String> = (spellings.into_iter())
        .filter(|spelling| *spelling != first)
        .map(|spelling| format!("`{spelling}`"))
        .collect();
    format!(
        "| `{first}` | {} | {} |\n",
        unit.dimension().name(),
        others.join(", ")
    )
}

/// Text in a cell of a table, where a bar would end it.
fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}
