//! The outer layer of a JSON value, its parts still as text: so numbers can be read to the last bit, and what is not wanted is
//! never built.

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;
use std::fmt;

/// The members of an object, in order, doubles included.
pub(super) struct Members<'text>(pub(super) Vec<(String, &'text RawValue)>);

/// The items of an array, up to one more than are wanted.
pub(super) struct Items<'text>(pub(super) Vec<&'text RawValue>);

/// Most items that are kept of an array.
const MOST_ITEMS: usize = super::MOST_SCENARIOS + 1;

struct MembersVisitor;
struct ItemsVisitor;

impl<'text> Deserialize<'text> for Members<'text> {
    fn deserialize<D: Deserializer<'text>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(MembersVisitor)
    }
}

impl<'text> Visitor<'text> for MembersVisitor {
    type Value = Members<'text>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("an object")
    }

    fn visit_map<A: MapAccess<'text>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut members = Vec::new();
        while let Some(member) = map.next_entry()? {
            members.push(member);
        }
        Ok(Members(members))
    }
}

impl<'text> Deserialize<'text> for Items<'text> {
    fn deserialize<D: Deserializer<'text>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_seq(ItemsVisitor)
    }
}

impl<'text> Visitor<'text> for ItemsVisitor {
    type Value = Items<'text>;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("an array")
    }

    fn visit_seq<A: SeqAccess<'text>>(self, mut sequence: A) -> Result<Self::Value, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = sequence.next_element()? {
            if items.len() < MOST_ITEMS {
                items.push(item);
            }
        }
        Ok(Items(items))
    }
}

/// The members of an object; nothing if it is not one.
pub(super) fn members(value: &RawValue) -> Option<Vec<(String, &RawValue)>> {
    let read: Members<'_> = serde_json::from_str(value.get()).ok()?;
    Some(read.0)
}

/// The items of an array; nothing if it is not one.
pub(super) fn items(value: &RawValue) -> Option<Vec<&RawValue>> {
    let read: Items<'_> = serde_json::from_str(value.get()).ok()?;
    Some(read.0)
}

/// A string; nothing if it is not one.
pub(super) fn string(value: &RawValue) -> Option<String> {
    serde_json::from_str(value.get()).ok()
}
