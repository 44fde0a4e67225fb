//! The Arrow C data interface, written out by hand: it is small and stable (Apache Arrow format specification,
//! "The Arrow C data interface" and "The Arrow C stream interface").
use axlewright::base::table::Table;
use pyo3::prelude::*;
use std::ffi::{CString, c_char, c_int, c_void};
use std::ptr::{null, null_mut};
use std::sync::Arc;

#[repr(C)]
pub struct Schema {
    format: *const c_char,
    name: *const c_char,
    metadata: *const c_char,
    flags: i64,
    children_count: i64,
    children: *mut *mut Schema,
    dictionary: *mut Schema,
    pub release: Option<unsafe extern "C" fn(*mut Schema)>,
    private: *mut c_void,
}

#[repr(C)]
pub struct Array {
    pub length: i64,
    null_count: i64,
    offset: i64,
    buffer_count: i64,
    children_count: i64,
    buffers: *mut *const c_void,
    children: *mut *mut Array,
    dictionary: *mut Array,
    pub release: Option<unsafe extern "C" fn(*mut Array)>,
    private: *mut c_void,
}

#[repr(C)]
pub struct Stream {
    pub get_schema: unsafe extern "C" fn(*mut Stream, *mut Schema) -> c_int,
    pub get_next: unsafe extern "C" fn(*mut Stream, *mut Array) -> c_int,
    pub get_last_error: unsafe extern "C" fn(*mut Stream) -> *const c_char,
    pub release: Option<unsafe extern "C" fn(*mut Stream)>,
    pub private: *mut c_void,
}

/// Memory behind the pointers of a schema or an array; dropped by its `release`.
struct Owned<T> {
    children: Vec<*mut T>,
    dictionary: *mut T,
    _names: Vec<CString>,
    _metadata: Vec<u8>,
    _buffers: Vec<*const c_void>,
    _data: Vec<Data>,
}

/// Memory behind a buffer.
#[expect(dead_code, reason = "held only to be dropped with the array")]
pub enum Data {
    Python(Py<PyAny>),
    Bytes(Vec<u8>),
    Codes(Vec<i32>),
    Table(Arc<Table>),
}

macro_rules! releasable {
    ($($type:ident)+) => {$(
        impl $type {
            /// Releases the parts that were not moved out; a consumer that moves a part clears `release`.
            fn let_go(&mut self) {
                if let Some(release) = self.release {
                    // SAFETY: `release` is ours and was not called before, or it would be cleared.
                    unsafe { release(self) }
                }
            }
        }
        impl Drop for $type {
            fn drop(&mut self) {
                self.let_go();
            }
        }
        // SAFETY: the memory behind the pointers is owned, never changed, and may be dropped by any thread.
        unsafe impl Send for $type {}
    )+};
}
releasable!(Schema Array Stream);

macro_rules! release {
    ($name:ident, $type:ident) => {
        unsafe extern "C" fn $name(this: *mut $type) {
            // SAFETY: `private` was made by `Box::into_raw`, as were the children and the dictionary.
            unsafe {
                let owned = Box::from_raw((*this).private.cast::<Owned<$type>>());
                for child in owned.children.iter().copied().chain([owned.dictionary]) {
                    if !child.is_null() {
                        drop(Box::from_raw(child));
                    }
                }
                (*this).release = None;
            }
        }
    };
}
release!(release_schema, Schema);
release!(release_array, Array);

const NULLABLE: i64 = 2;

pub fn schema(
    format: &str,
    name: &str,
    metadata: &[(&str, &str)],
    children: Vec<Schema>,
    dictionary: Option<Schema>,
) -> PyResult<Schema> {
    let names = vec![CString::new(format)?, CString::new(name)?];
    let mut bytes = Vec::new();
    if !metadata.is_empty() {
        bytes.extend((metadata.len() as i32).to_ne_bytes());
        for text in metadata.iter().flat_map(|(key, value)| [key, value]) {
            bytes.extend((text.len() as i32).to_ne_bytes());
            bytes.extend(text.as_bytes());
        }
    }
    let mut owned = Box::new(Owned {
        children: children.into_iter().map(|child| Box::into_raw(Box::new(child))).collect(),
        dictionary: dictionary.map_or(null_mut(), |dictionary| Box::into_raw(Box::new(dictionary))),
        _names: names,
        _metadata: bytes,
        _buffers: Vec::new(),
        _data: Vec::new(),
    });
    Ok(Schema {
        format: owned._names[0].as_ptr(),
        name: owned._names[1].as_ptr(),
        metadata: if owned._metadata.is_empty() { null() } else { owned._metadata.as_ptr().cast() },
        flags: if name.is_empty() { 0 } else { NULLABLE },
        children_count: owned.children.len() as i64,
        children: owned.children.as_mut_ptr(),
        dictionary: owned.dictionary,
        release: Some(release_schema),
        private: Box::into_raw(owned).cast(),
    })
}

pub fn array(
    length: usize,
    nulls: usize,
    buffers: Vec<*const c_void>,
    data: Vec<Data>,
    children: Vec<Array>,
    dictionary: Option<Array>,
) -> Array {
    let mut owned = Box::new(Owned {
        children: children.into_iter().map(|child| Box::into_raw(Box::new(child))).collect(),
        dictionary: dictionary.map_or(null_mut(), |dictionary| Box::into_raw(Box::new(dictionary))),
        _names: Vec::new(),
        _metadata: Vec::new(),
        _buffers: buffers,
        _data: data,
    });
    Array {
        length: length as i64,
        null_count: nulls as i64,
        offset: 0,
        buffer_count: owned._buffers.len() as i64,
        children_count: owned.children.len() as i64,
        buffers: owned._buffers.as_mut_ptr(),
        children: owned.children.as_mut_ptr(),
        dictionary: owned.dictionary,
        release: Some(release_array),
        private: Box::into_raw(owned).cast(),
    }
}
