//! Texts that the library hands out, and the words of codes.
use crate::guard::record;
use crate::status::Failure;
use std::collections::BTreeSet;
use std::ffi::{CStr, CString, c_char};
use std::sync::{Arc, Mutex, PoisonError};

/// Texts that a model handed out, each once: they live as long as its handle.
#[derive(Default)]
pub(crate) struct Texts(Mutex<BTreeSet<Arc<CStr>>>);

impl Texts {
    pub(crate) fn keep(&self, text: &str) -> *const c_char {
        let text = c_text(text);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        match kept.get(&*text) {
            Some(same) => same.as_ptr(),
            None => {
                let new: Arc<CStr> = text.into();
                let place = new.as_ptr();
                kept.insert(new);
                place
            }
        }
    }
}

/// Text for C; a NUL inside would end it.
pub(crate) fn c_text(text: &str) -> CString {
    CString::new(text.replace('\0', " ")).unwrap_or_default()
}

/// Word of a code, or NULL for an unknown code: an error never passes for a word.
pub(crate) fn word_of(choice: &str, code: i32, words: &[&'static CStr]) -> *const c_char {
    let word = usize::try_from(code).ok().and_then(|place| words.get(place));
    word.map_or_else(
        || {
            record(&Failure::NotThere(format!(
                "{choice} = {code} is not a code; the codes are 0 to {}",
                words.len() - 1
            )));
            std::ptr::null()
        },
        |word| word.as_ptr(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_kept_once_and_where_it_is() {
        let texts = Texts::default();
        let first = texts.keep("lower ball joint");
        let others: Vec<_> = (0..100).map(|n| texts.keep(&format!("joint {n}"))).collect();
        assert_eq!(texts.keep("lower ball joint"), first);
        assert_eq!(texts.keep("joint 7"), others[7]);
        assert_eq!(unsafe { CStr::from_ptr(first) }, c"lower ball joint");
        assert_eq!(unsafe { CStr::from_ptr(texts.keep("top\0mount")) }, c"top mount");
    }
}
