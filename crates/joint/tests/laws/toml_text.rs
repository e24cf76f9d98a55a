//! TOML as a tree and back as text, in any order of keys and rows, so that laws can change files.

use jointwright_units::Length;
use toml::{Table, Value};

/// A whole-number generator with a seed (splitmix64), so that a failing order can be repeated.
pub struct Order(pub u64);

impl Order {
    pub fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % n as u64) as usize
    }

    pub fn shuffle<T>(&mut self, items: &mut [T]) {
        for i in (1..items.len()).rev() {
            items.swap(i, self.below(i + 1));
        }
    }
}

#[track_caller]
pub fn tree(text: &str) -> Table {
    text.parse().expect("the file is TOML")
}

/// The tree as text, keys and rows in the order of `order` and with comments between, or as they are.
pub fn text(table: &Table, mut order: Option<&mut Order>) -> String {
    let mut keys: Vec<&String> = table.keys().collect();
    if let Some(order) = order.as_deref_mut() {
        order.shuffle(&mut keys);
    }
    let mut text = String::new();
    for key in keys {
        if let Some(order) = order.as_deref_mut() {
            let comment = ["", "# a note\n", "\n# leg = \"Z\"\n"][order.below(3)];
            text.push_str(comment);
        }
        let value = inline(&table[key], order.as_deref_mut());
        text.push_str(&format!("{key} = {value}\n"));
    }
    text
}

fn inline(value: &Value, mut order: Option<&mut Order>) -> String {
    match value {
        Value::String(s) => serde_json::Value::from(s.as_str()).to_string(),
        Value::Integer(n) => n.to_string(),
        Value::Float(x) => format!("{x:?}"),
        Value::Boolean(b) => b.to_string(),
        Value::Datetime(d) => d.to_string(),
        Value::Array(items) => {
            let mut items: Vec<&Value> = items.iter().collect();
            // Only rows may change places; papers print the words of a list in their order.
            if let (Some(order), true) = (order.as_deref_mut(), items.iter().all(|i| i.is_table()))
            {
                order.shuffle(&mut items);
            }
            let items: Vec<String> = items
                .into_iter()
                .map(|item| inline(item, order.as_deref_mut()))
                .collect();
            format!("[{}]", items.join(", "))
        }
        Value::Table(table) => {
            let mut keys: Vec<&String> = table.keys().collect();
            if let Some(order) = order.as_deref_mut() {
                order.shuffle(&mut keys);
            }
            let fields: Vec<String> = keys
                .into_iter()
                .map(|key| format!("{key} = {}", inline(&table[key], order.as_deref_mut())))
                .collect();
            format!("{{ {} }}", fields.join(", "))
        }
    }
}

/// Rows of a kind.
pub fn rows<'t>(table: &'t mut Table, kind: &str) -> impl Iterator<Item = &'t mut Table> {
    table
        .get_mut(kind)
        .and_then(Value::as_array_mut)
        .into_iter()
        .flatten()
        .filter_map(Value::as_table_mut)
}

/// Row with a kind and a name.
#[track_caller]
pub fn row<'t>(table: &'t mut Table, kind: &str, id: &str) -> &'t mut Table {
    rows(table, kind)
        .find(|row| row.get("id").and_then(Value::as_str) == Some(id))
        .unwrap_or_else(|| panic!("no {kind} {id}"))
}

/// Calls `change` on every length in a tree.
pub fn each_length(value: &mut Value, change: &mut impl FnMut(Length) -> Length) {
    match value {
        Value::String(text) => {
            if let Ok(length) = Length::parse_diameter(text) {
                *text = change(length).exact_mm();
            }
        }
        Value::Array(items) => items.iter_mut().for_each(|item| each_length(item, change)),
        Value::Table(table) => table
            .iter_mut()
            .for_each(|(_, item)| each_length(item, change)),
        _ => {}
    }
}

#[test]
fn text_of_a_tree_is_read_back_as_the_same_tree() {
    for case in crate::cases::everything() {
        let before = tree(case.job);
        assert_eq!(tree(&text(&before, None)), before, "{}", case.slug);
    }
}
