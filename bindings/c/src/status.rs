//! Status numbers, and the reason behind each.
use axlewright::Error;

/// Success.
pub const AXW_OK: i32 = 0;
/// An argument is outside its limits, or not a number.
pub const AXW_OUT_OF_RANGE: i32 = 1;
/// Two arguments contradict each other.
pub const AXW_CONTRADICTION: i32 = 2;
/// The inputs are allowed, but have no answer.
pub const AXW_NO_SOLUTION: i32 = 3;
/// Text that is not a quantity, or is of another kind than expected.
pub const AXW_TEXT: i32 = 4;
/// A document that cannot be read, or a value in it that is not allowed.
pub const AXW_DOCUMENT: i32 = 5;
/// A list whose length does not fit.
pub const AXW_LENGTH: i32 = 6;
/// A pointer that must not be NULL is NULL.
pub const AXW_NULL: i32 = 100;
/// The caller's buffer or struct is too short; nothing was written.
pub const AXW_BUFFER: i32 = 101;
/// Text that is not UTF-8.
pub const AXW_UTF8: i32 = 102;
/// No such column, row, unit or quantity.
pub const AXW_NOT_THERE: i32 = 103;
/// At least one row of a batch was refused; `reason` names it.
pub const AXW_ROWS: i32 = 104;
/// The caller's own progress function stopped it.
pub const AXW_STOPPED: i32 = 105;
/// A fault of the library itself; its outputs mean nothing.
pub const AXW_FAULT: i32 = 199;

/// Reason for the failure of an entry.
pub(crate) enum Failure {
    Core(Error),
    Null(&'static str),
    NullAt(&'static str, usize),
    Buffer { name: &'static str, needed: usize },
    Size { name: &'static str, size: usize, whole: usize },
    Utf8(&'static str),
    Utf8At(&'static str, usize),
    NotThere(String),
    OutOfRange(String),
    Rows { refused: usize, first: usize, error: Error },
    Stopped,
}

impl From<Error> for Failure {
    #[inline(always)]
    fn from(error: Error) -> Self {
        Failure::Core(error)
    }
}

impl Failure {
    pub(crate) fn status(&self) -> i32 {
        match self {
            Failure::Core(error) => error.number(),
            Failure::Null(_) | Failure::NullAt(..) => AXW_NULL,
            Failure::Buffer { .. } | Failure::Size { .. } => AXW_BUFFER,
            Failure::Utf8(_) | Failure::Utf8At(..) => AXW_UTF8,
            Failure::NotThere(_) => AXW_NOT_THERE,
            Failure::OutOfRange(_) => AXW_OUT_OF_RANGE,
            Failure::Rows { .. } => AXW_ROWS,
            Failure::Stopped => AXW_STOPPED,
        }
    }
    pub(crate) fn sentence(&self) -> String {
        match self {
            Failure::Core(error) => error.to_string(),
            Failure::Null(name) => format!("{name} is NULL"),
            Failure::NullAt(name, place) => format!("{name}[{place}] is NULL"),
            Failure::Buffer { name, needed } => {
                format!("{name} is too short: {needed} bytes are needed, the closing NUL included")
            }
            Failure::Size { name, size, whole } => {
                format!(
                    "{name}->size = {size} is not a size of this struct; set it to sizeof *{name}, {whole} here"
                )
            }
            Failure::Utf8(name) => format!("{name} is not UTF-8 text"),
            Failure::Utf8At(name, place) => format!("{name}[{place}] is not UTF-8 text"),
            Failure::Stopped => "stopped: progress returned another number than 0".to_owned(),
            Failure::NotThere(what) | Failure::OutOfRange(what) => what.clone(),
            Failure::Rows { refused, first, error } => {
                format!("{refused} rows refused, the first at index {first}: {error}")
            }
        }
    }
}

pub(crate) type Outcome<T> = Result<T, Failure>;
