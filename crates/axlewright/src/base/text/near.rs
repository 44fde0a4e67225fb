//! Known words near a misspelt one.

use super::print::{QUOTED, shortened};
use super::unit::distance;

/// True if a word may be a misspelling of another: at most a third of its letters differ. A long word is never compared.
pub(crate) fn is_near(word: &str, known: &str) -> bool {
    word.len() <= QUOTED && distance(word, known) <= (word.chars().count() * 2 / 3).max(4)
}

/// The known word nearest to a misspelt one.
pub(crate) fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > QUOTED {
        return None;
    }
    let near = known.map(|known| (distance(word, known), known)).min();
    near.map(|(_, known)| known).filter(|known| is_near(word, known))
}

/// The question for a misspelt word, such as "; did you mean `front.spring.rate`?"; empty if no known word is near. A word longer than
/// [`QUOTED`] is never compared.
pub fn did_you_mean<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> String {
    nearest(word, known).map_or(String::new(), |near| format!("; did you mean `{near}`?"))
}

/// Message for a key that a table does not have.
pub(crate) fn unknown_key<'a>(key: &str, known: impl Iterator<Item = &'a str> + Clone) -> String {
    let all: Vec<String> = known.clone().map(|key| format!("`{key}`")).collect();
    let near = did_you_mean(key, known);
    let end = if near.is_empty() { "." } else { "" };
    format!("there is no key `{}`{near}{end} Keys here: {}", shortened(key), all.join(", "))
}
