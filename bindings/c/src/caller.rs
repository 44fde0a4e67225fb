//! Pointers of the caller: lists, texts, handles and structs, read and filled.
use crate::status::{Failure, Outcome};
use axlewright::Error;
use axlewright::base::document::{Document, Field};
use std::ffi::{CStr, c_char};

/// Writes a result to the caller's pointer.
#[inline(always)]
pub(crate) unsafe fn put<T>(out: *mut T, value: T) {
    if !out.is_null() {
        unsafe { out.write(value) }
    }
}

/// Bytes to fill of the caller's struct of results, which begins with its size: it may come from an older or a newer header. Fields
/// are 8 bytes at most and aligned, so a multiple of the struct's alignment cuts none of them.
pub(crate) unsafe fn room<T>(name: &'static str, result: *const T) -> Outcome<usize> {
    if result.is_null() {
        return Err(Failure::Null(name));
    }
    let size = unsafe { result.cast::<usize>().read() };
    if size < size_of::<usize>() + size_of::<f64>() || !size.is_multiple_of(align_of::<T>()) {
        return Err(Failure::Size { name, size, whole: size_of::<T>() });
    }
    Ok(size.min(size_of::<T>()))
}

/// Fills this many bytes of the caller's struct of results, without its own size.
pub(crate) unsafe fn fill<T: Copy>(result: *mut T, filled: &T, room: usize) {
    const SIZE: usize = size_of::<usize>();
    let from = std::ptr::from_ref(filled).cast::<u8>();
    unsafe { std::ptr::copy_nonoverlapping(from.add(SIZE), result.cast::<u8>().add(SIZE), room - SIZE) }
}

/// Refuses a length whose bytes are more than memory can have.
#[inline(always)]
pub(crate) fn within_memory<T>(name: &'static str, length: usize) -> Outcome<()> {
    if length <= isize::MAX as usize / size_of::<T>() {
        return Ok(());
    }
    Err(Error::Length { argument: name, length, wanted: "no memory is large enough" }.into())
}

/// A list of the caller; NULL is allowed if it is empty.
#[inline(always)]
pub(crate) unsafe fn list<'a, T>(name: &'static str, pointer: *const T, length: usize) -> Outcome<&'a [T]> {
    if length == 0 {
        Ok(&[])
    } else if pointer.is_null() {
        Err(Failure::Null(name))
    } else {
        within_memory::<T>(name, length)?;
        Ok(unsafe { std::slice::from_raw_parts(pointer, length) })
    }
}

/// Text of the caller.
pub(crate) unsafe fn words<'a>(name: &'static str, pointer: *const c_char) -> Outcome<&'a str> {
    if pointer.is_null() {
        return Err(Failure::Null(name));
    }
    unsafe { CStr::from_ptr(pointer) }.to_str().map_err(|_| Failure::Utf8(name))
}

/// A list of texts of the caller.
pub(crate) unsafe fn texts<'a>(
    name: &'static str,
    pointer: *const *const c_char,
    length: usize,
) -> Outcome<Vec<&'a str>> {
    let all = unsafe { list(name, pointer, length) }?;
    let text = |(place, text): (usize, &*const c_char)| {
        unsafe { words(name, *text) }.map_err(|failure| match failure {
            Failure::Null(name) => Failure::NullAt(name, place),
            _ => Failure::Utf8At(name, place),
        })
    };
    all.iter().enumerate().map(text).collect()
}

/// A document from the caller's paths: the text of each, or its number if it has no text.
pub(crate) unsafe fn document(
    paths: *const *const c_char,
    values: *const f64,
    texts: *const *const c_char,
    count: usize,
) -> Outcome<Document> {
    let paths = unsafe { self::texts("paths", paths, count) }?;
    let texts = if texts.is_null() { &[] } else { unsafe { list("texts", texts, count) }? };
    let field = |place: usize| match texts.get(place) {
        Some(text) if !text.is_null() => {
            unsafe { words("texts", *text) }.map(Field::Text).map_err(|_| Failure::Utf8At("texts", place))
        }
        _ if values.is_null() => Err(Failure::Null("values")),
        _ => Ok(Field::Si(unsafe { values.add(place).read() })),
    };
    let fields = (0..count).map(field).collect::<Outcome<Vec<_>>>()?;
    Ok(Document::from_si(paths.into_iter().zip(fields))?)
}

/// A handle of the caller.
pub(crate) unsafe fn handle<'a, T>(name: &'static str, pointer: *const T) -> Outcome<&'a T> {
    unsafe { pointer.as_ref() }.ok_or(Failure::Null(name))
}

/// A handle of the caller, for a change.
pub(crate) unsafe fn handle_mut<'a, T>(name: &'static str, pointer: *mut T) -> Outcome<&'a mut T> {
    unsafe { pointer.as_mut() }.ok_or(Failure::Null(name))
}

/// Gives a handle to the caller, who frees it.
pub(crate) unsafe fn give<T>(
    name: &'static str,
    out: *mut *mut T,
    make: impl FnOnce() -> Outcome<Box<T>>,
) -> Outcome<()> {
    if out.is_null() {
        return Err(Failure::Null(name));
    }
    let made = make()?;
    unsafe { out.write(Box::into_raw(made)) };
    Ok(())
}

/// Frees what the library gave to the caller.
pub(crate) unsafe fn free<T>(pointer: *mut T) {
    if !pointer.is_null() {
        drop(unsafe { Box::from_raw(pointer) });
    }
}

/// Checks that text and its closing NUL fit; a NULL buffer asks for nothing.
pub(crate) fn fits(name: &'static str, text: &str, buffer: *mut c_char, size: usize) -> Outcome<()> {
    let needed = text.len() + 1;
    if buffer.is_null() || needed <= size { Ok(()) } else { Err(Failure::Buffer { name, needed }) }
}

/// Copies text and its closing NUL into a buffer that holds them.
pub(crate) unsafe fn copy(text: &str, buffer: *mut c_char, size: usize) {
    if !buffer.is_null() && text.len() < size {
        unsafe {
            std::ptr::copy_nonoverlapping(text.as_ptr().cast(), buffer, text.len());
            buffer.add(text.len()).write(0);
        }
    }
}

/// Writes text and its size to the caller's pointers.
pub(crate) unsafe fn write(text: &str, buffer: *mut c_char, size: usize, needed: *mut usize) -> Outcome<()> {
    fits("buffer", text, buffer, size)?;
    unsafe {
        copy(text, buffer, size);
        put(needed, text.len() + 1);
    }
    Ok(())
}

/// Writes texts to the caller's buffer, one a line.
pub(crate) unsafe fn write_lines(
    lines: impl IntoIterator<Item: std::fmt::Display>,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> Outcome<()> {
    let text: String = lines.into_iter().map(|line| format!("{line}\n")).collect();
    unsafe { write(&text, buffer, size, needed) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_longer_than_memory_is_refused() {
        let one = 1.0_f64;
        let refused = unsafe { list("cap", &one, usize::MAX) };
        assert!(matches!(refused, Err(Failure::Core(Error::Length { argument: "cap", .. }))));
    }
}
