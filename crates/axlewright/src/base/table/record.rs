//! A record: a struct of results, declared once. Its fields are the columns of a table, in their order, and the entries of its
//! serialized form.
#![expect(clippy::indexing_slicing, reason = "a record has as many columns as fields")]

use super::{Column, Values, code};
use crate::base::units::{Kind, Quantity};
use std::borrow::Cow;

/// A value that a column can hold.
pub(crate) trait Field: Sized {
    /// Its kind of quantity, if it is one.
    fn kind() -> Option<&'static Kind> {
        None
    }

    /// Values of an empty column.
    fn values() -> Values;

    /// Adds cells at the end of a column.
    fn fill<'a>(values: &mut Values, cells: impl Iterator<Item = &'a Self>)
    where
        Self: 'a;

    /// An empty column.
    fn column(name: &'static str) -> Column {
        Column { name: Cow::Borrowed(name), kind: Self::kind(), values: Self::values() }
    }

    /// Writes the value: a quantity as text with its unit, null if it is not known.
    #[cfg(feature = "serde")]
    fn write<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error>;
}

impl<Q: Quantity> Field for Q {
    fn kind() -> Option<&'static Kind> {
        Some(Q::KIND)
    }

    fn values() -> Values {
        Values::F64(Vec::new())
    }
    #[inline]
    fn fill<'a>(values: &mut Values, cells: impl Iterator<Item = &'a Self>) {
        if let Values::F64(values) = values {
            values.extend(cells.map(|cell| cell.si()));
        }
    }
    #[cfg(feature = "serde")]
    fn write<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.si() {
            si if si.is_nan() => serializer.serialize_none(),
            si if si.is_infinite() => serializer.collect_str(&format_args!("{si} {}", Q::KIND.si)),
            si => serializer.serialize_str(&crate::base::text::print_in_first(si, Q::KIND)),
        }
    }
}

impl Field for i64 {
    fn values() -> Values {
        Values::I64(Vec::new())
    }
    fn fill<'a>(values: &mut Values, cells: impl Iterator<Item = &'a Self>) {
        if let Values::I64(values) = values {
            values.extend(cells);
        }
    }
    #[cfg(feature = "serde")]
    fn write<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_i64(*self)
    }
}

/// Fields that are a word in a table.
macro_rules! words {
    ($($of:ty: $word:expr;)+) => {$(
        impl Field for $of {
            fn values() -> Values {
                Values::Category { codes: Vec::new(), labels: Vec::new() }
            }
            fn fill<'a>(values: &mut Values, cells: impl Iterator<Item = &'a Self>)
            where
                Self: 'a,
            {
                let word: fn(&Self) -> &str = $word;
                if let Values::Category { codes, labels } = values {
                    codes.extend(cells.map(|cell| code(labels, word(cell))));
                }
            }
            #[cfg(feature = "serde")]
            fn write<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let word: fn(&Self) -> &str = $word;
                serializer.serialize_str(word(self))
            }
        }
    )+};
}
// Not `Verdict`: a record gives value, limit and margin, and the caller grades.
words! {
    String: |word| word;
    &str: |word| word;
}

/// A field that a table can borrow without copying its text.
pub(crate) trait Lend: Field {
    /// The value, or a borrowed word.
    type Lent<'a>: Field + Copy;
    /// An unknown value.
    fn unknown() -> Self::Lent<'static>;
    /// The owned value of a borrowed field.
    fn own(lent: Self::Lent<'_>) -> Self;
}

impl<Q: Quantity> Lend for Q {
    type Lent<'a> = Q;
    fn unknown() -> Q {
        Q::from_si(f64::NAN)
    }
    #[inline]
    fn own(lent: Q) -> Q {
        lent
    }
}
impl Lend for i64 {
    type Lent<'a> = i64;
    fn unknown() -> i64 {
        0
    }
    fn own(lent: i64) -> i64 {
        lent
    }
}
impl Lend for String {
    type Lent<'a> = &'a str;
    fn unknown() -> &'static str {
        ""
    }
    fn own(lent: &str) -> String {
        lent.to_owned()
    }
}

/// The results of a row.
pub(crate) trait Row: Sized {
    /// Adds rows at the end of these columns.
    fn fill<'a>(rows: impl Iterator<Item = &'a Self> + Clone, columns: &mut [Column])
    where
        Self: 'a;
}

/// A struct whose fields are columns. [`record`] implements it.
pub(crate) trait Record: Row {
    /// Number of its columns.
    const COUNT: usize;
    /// The empty columns, in the order of the fields.
    fn columns() -> Vec<Column>;
}

/// Numbers in coherent SI, for columns that only the model knows.
impl Row for Vec<f64> {
    fn fill<'a>(rows: impl Iterator<Item = &'a Self> + Clone, columns: &mut [Column]) {
        for (place, column) in columns.iter_mut().enumerate() {
            if let Values::F64(values) = &mut column.values {
                values.extend(rows.clone().map(|row| row.get(place).copied().unwrap_or(f64::NAN)));
            }
        }
    }
}

/// Two records beside each other.
impl<A: Record, B: Record> Row for (A, B) {
    fn fill<'a>(rows: impl Iterator<Item = &'a Self> + Clone, columns: &mut [Column])
    where
        Self: 'a,
    {
        let (first, second) = columns.split_at_mut(A::COUNT);
        A::fill(rows.clone().map(|row| &row.0), first);
        B::fill(rows.map(|row| &row.1), second);
    }
}
impl<A: Record, B: Record> Record for (A, B) {
    const COUNT: usize = A::COUNT + B::COUNT;
    fn columns() -> Vec<Column> {
        A::columns().into_iter().chain(B::columns()).collect()
    }
}

/// Inputs of a table, which every row keeps: a tuple of fields.
pub(crate) trait Inputs: Sized {
    /// A name for each of them.
    type Names;
    /// The empty columns.
    fn columns(names: Self::Names) -> Vec<Column>;
    /// Adds rows at the end of these columns.
    fn fill(rows: &[Self], columns: &mut [Column]);
}

macro_rules! inputs {
    ($($count:literal: $($kind:ident $place:tt),+;)+) => {$(
        impl<$($kind: Field),+> Inputs for ($($kind,)+) {
            type Names = [&'static str; $count];
            fn columns(names: Self::Names) -> Vec<Column> {
                vec![$($kind::column(names[$place])),+]
            }
            fn fill(rows: &[Self], columns: &mut [Column]) {
                $($kind::fill(&mut columns[$place].values, rows.iter().map(|row| &row.$place));)+
            }
        }
    )+};
}
inputs! {
    1: A 0;
    2: A 0, B 1;
    3: A 0, B 1, C 2;
}

/// A field as a serialized value.
#[cfg(feature = "serde")]
pub(crate) struct Written<'a, F>(pub(crate) &'a F);

#[cfg(feature = "serde")]
impl<F: Field> ::serde::Serialize for Written<'_, F> {
    fn serialize<S: ::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.write(serializer)
    }
}

/// Declares a struct of results once. Columns, their order, cells and the serialized form follow from its fields; the C struct,
/// the Python form and their docs follow by generation.
///
/// ```ignore
/// record! {
///     /// What the stop does.
///     #[derive(Debug, Clone, Copy, PartialEq)]
///     pub struct Stopped {
///         /// Force of the stop.
///         pub force: Force,
///     }
/// }
/// ```
/// After the struct, `lent Found<'a>;` makes a struct with the same fields and borrowed words, and `each name;`
/// makes a macro: `name!(other)` calls `other!` with all `field: Type,`.
macro_rules! record {
    (
        $(#[$attribute:meta])* $visible:vis struct $name:ident $body:tt
        $(lent $lent_visible:vis $lent:ident<$life:lifetime>;)?
        $(each $each:ident;)?
    ) => {
        $crate::base::table::record!(@struct $(#[$attribute])* $visible $name $body);
        $($crate::base::table::record!(@lent $lent_visible $lent $life $name $body);)?
        $($crate::base::table::record!(@each $each $body);)?
    };
    (
        $(#[$attribute:meta])* $visible:vis struct $name:ident<$life:lifetime> {
            $($(#[$about:meta])* $shown:vis $field:ident: $kind:ty,)+
        }
    ) => {
        $(#[$attribute])*
        $visible struct $name<$life> { $($(#[$about])* $shown $field: $kind,)+ }
        $crate::base::table::record!(@columns [<$life>] $name<$life>: $($field: $kind,)+);
    };
    (
        @struct $(#[$attribute:meta])* $visible:vis $name:ident {
            $($(#[$about:meta])* $shown:vis $field:ident: $kind:ident,)+
        }
    ) => {
        $(#[$attribute])*
        #[must_use]
        #[non_exhaustive]
        $visible struct $name {
            $($(#[$about])* $shown $field: $kind,)+
        }
        $crate::base::table::record!(@columns [] $name: $($field: $kind,)+);

        #[cfg(feature = "serde")]
        impl ::serde::Serialize for $name {
            fn serialize<S: ::serde::Serializer>(&self, serializer: S) -> core::result::Result<S::Ok, S::Error> {
                let mut fields = serializer.serialize_map(None)?;
                $(::serde::ser::SerializeMap::serialize_entry(
                    &mut fields,
                    stringify!($field),
                    &$crate::base::table::Written(&self.$field),
                )?;)+
                ::serde::ser::SerializeMap::end(fields)
            }
        }
    };
    (@columns [$($generic:tt)*] $name:ty: $($field:ident: $kind:ty,)+) => {
        impl $($generic)* $crate::base::table::Record for $name {
            const COUNT: usize = [$(stringify!($field)),+].len();
            fn columns() -> Vec<$crate::base::table::Column> {
                vec![$(<$kind as $crate::base::table::Field>::column(stringify!($field))),+]
            }
        }
        impl $($generic)* $crate::base::table::Row for $name {
            fn fill<'rows>(
                rows: impl Iterator<Item = &'rows Self> + Clone,
                columns: &mut [$crate::base::table::Column],
            ) where
                Self: 'rows,
            {
                let mut columns = columns.iter_mut();
                $(if let Some(column) = columns.next() {
                    let cells = rows.clone().map(|row| &row.$field);
                    <$kind as $crate::base::table::Field>::fill(&mut column.values, cells);
                })+
            }
        }
    };
    (
        @lent $visible:vis $lent:ident $life:lifetime $name:ident {
            $($(#[$about:meta])* $shown:vis $field:ident: $kind:ident,)+
        }
    ) => {
        /// These results with borrowed words.
        #[derive(Debug, Clone, Copy)]
        $visible struct $lent<$life> {
            $($shown $field: <$kind as $crate::base::table::Lend>::Lent<$life>,)+
        }
        $crate::base::table::record!(
            @columns [<$life>] $lent<$life>: $($field: <$kind as $crate::base::table::Lend>::Lent<$life>,)+
        );
        #[allow(dead_code, reason = "some records begin from nothing known, some are filled whole")]
        impl<$life> $lent<$life> {
            /// The struct with nothing known.
            pub(super) fn unknown() -> Self {
                $lent { $($field: <$kind as $crate::base::table::Lend>::unknown()),+ }
            }
        }
        impl From<$lent<'_>> for $name {
            fn from(lent: $lent<'_>) -> $name {
                $name { $($field: <$kind as $crate::base::table::Lend>::own(lent.$field)),+ }
            }
        }
    };
    (@each $each:ident { $($(#[$about:meta])* $shown:vis $field:ident: $kind:ident,)+ }) => {
        macro_rules! $each {
            ($then:ident) => {
                $then! { $($field: $kind,)+ }
            };
        }
    };
}
pub(crate) use record;
