//! Macros in which sections are written: the lines of a struct, the words of a choice, rules and models.

/// Makes a struct an input of rules: its fields are lines under their own names, or under the key that is named. Fields behind a `;` have no
/// lines: they are unknown.
macro_rules! fields {
    ($part:ident { $($field:ident $(= $key:literal)?),+ $(,)? $(; $($other:ident),+ $(,)?)? }) => {
        impl $crate::base::section::rule::Input for $part {
            const LEAVES: usize = {
                const fn count<P, T: $crate::base::section::rule::Input>(_: fn(&P) -> &T) -> usize {
                    T::LEAVES
                }
                0 $(+ count(|part: &$part| &part.$field))+
            };
            fn leaves(key: &str, optional: u8, leaves: &mut Vec<$crate::base::section::rule::Leaf>) {
                fn add<P, T: $crate::base::section::rule::Input>(
                    _: fn(&P) -> &T,
                    key: &str,
                    optional: u8,
                    leaves: &mut Vec<$crate::base::section::rule::Leaf>,
                ) {
                    T::leaves(key, optional, leaves);
                }
                $(add(
                    |part: &$part| &part.$field,
                    &$crate::base::section::rule::below(key, $crate::base::section::macros::key!($field $(= $key)?)),
                    optional,
                    leaves,
                );)+
            }
            fn take(values: &mut $crate::base::section::rule::Values<'_>) -> $part {
                $part {
                    $($field: $crate::base::section::rule::Input::take(values),)+
                    $($($other: $crate::base::section::rule::Input::unknown(),)+)?
                }
            }
            fn is_known(values: &mut $crate::base::section::rule::Values<'_>) -> bool {
                fn known<P, T: $crate::base::section::rule::Input>(
                    _: fn(&P) -> &T,
                    values: &mut $crate::base::section::rule::Values<'_>,
                ) -> bool {
                    T::is_known(values)
                }
                let mut all = true;
                $(all &= known(|part: &$part| &part.$field, values);)+
                all
            }
            fn unknown() -> $part {
                $part {
                    $($field: $crate::base::section::rule::Input::unknown(),)+
                    $($($other: $crate::base::section::rule::Input::unknown(),)+)?
                }
            }
        }
    };
}

macro_rules! key {
    ($field:ident) => {
        stringify!($field)
    };
    ($field:ident = $key:literal) => {
        $key
    };
}

/// Makes an enum an input and a result of rules: the words of its line, in the order of its choices.
macro_rules! words {
    ($choice:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl $choice {
            /// Words of its line.
            pub(crate) const WORDS: &'static [&'static str] = &[$($word),+];
        }
        impl $crate::base::section::rule::Output for $choice {
            const FITS: $crate::base::section::rule::Fits = $crate::base::section::rule::Fits::Choice($choice::WORDS);
            fn value(self) -> f64 {
                let is = [$(matches!(self, $choice::$variant)),+];
                is.iter().position(|is| *is).unwrap_or(0) as f64
            }
        }
        impl $crate::base::section::rule::Input for $choice {
            const LEAVES: usize = 1;
            fn leaves(key: &str, optional: u8, leaves: &mut Vec<$crate::base::section::rule::Leaf>) {
                let fits = $crate::base::section::rule::Fits::Choice($choice::WORDS);
                leaves.push($crate::base::section::rule::Leaf { key: key.to_owned(), fits, optional });
            }
            fn take(values: &mut $crate::base::section::rule::Values<'_>) -> $choice {
                const ALL: [$choice; $choice::WORDS.len()] = [$($choice::$variant),+];
                let [.., last] = ALL;
                let place = values.next().copied().unwrap_or(0.0);
                ALL.get(place as usize).copied().unwrap_or(last)
            }
            fn is_known(values: &mut $crate::base::section::rule::Values<'_>) -> bool {
                values.next().is_some_and(|value| !value.is_nan())
            }
            fn unknown() -> $choice {
                const ALL: [$choice; $choice::WORDS.len()] = [$($choice::$variant),+];
                let [first, ..] = ALL;
                first
            }
        }
    };
}

/// A rule: a function or a stage of a model, the lines of the fields that it takes, and the results that lines take.
///
/// `"table" function(Input)`, then the fields: `takes` as their types say, `needs` although the model may lack them, `uses` if they are known.
/// A field is the line of its own name in the table, or the line that is named. `wheel.loaded_radius` is a field of a field, and fills it
/// after that. Other fields of the input are unknown to the rule.
macro_rules! rule {
    (
        $table:literal $function:path, $input:ident
        $(takes { $($taken:ident $(. $taken_below:ident)* $(= $taken_path:literal)?),* $(,)? })?
        $(needs { $($needed:ident $(. $needed_below:ident)* $(= $needed_path:literal)?),* $(,)? })?
        $(uses { $($used:ident $(. $used_below:ident)* $(= $used_path:literal)?),* $(,)? })?
        $(gives $of:ident { $($result:ident),+ $(,)? })?
        says $formula:expr, $source:expr $(; lacking $lacking:expr)?
    ) => {{
        fn input(given: &mut $crate::base::section::rule::Given<'_>) -> $input {
            let mut input = <$input as $crate::base::section::rule::Input>::unknown();
            $($(input.$taken $(. $taken_below)* = given.take();)*)?
            $($(input.$needed $(. $needed_below)* = given.take();)*)?
            $($(input.$used $(. $used_below)* = given.take();)*)?
            input
        }
        $crate::base::section::rule::Rule {
            formula: $formula,
            source: $source,
            inputs: &[
                $($($crate::base::section::macros::taken!(Typed $table $taken $(. $taken_below)* $(= $taken_path)?),)*)?
                $($($crate::base::section::macros::taken!(Needed $table $needed $(. $needed_below)* $(= $needed_path)?),)*)?
                $($($crate::base::section::macros::taken!(Used $table $used $(. $used_below)* $(= $used_path)?),)*)?
            ],
            results: $crate::base::section::macros::results!($($($result),+)?),
            shape: |shape| {
                input(&mut shape.given());
                $crate::base::section::macros::shapes!(shape $function, $input; $($of { $($result),+ })?);
            },
            call: |mut given, results| {
                let on = $function(&input(&mut given))?;
                $crate::base::section::macros::fills!(results on; $($of { $($result),+ })?);
                Ok(())
            },
            lacking: $crate::base::section::macros::lacking!($($lacking)?),
        }
    }};
}

/// A model of the sheet: its name there, its type, and the table of its own fields; then the fields, as in `rule!`. The sheet must know those
/// under `needs`, although a document may lack them. A field has its type in the model, or the type behind it: `spring.rate: LinearStiffness`.
/// `named` are fields with a word of their own, and `end` is the field that says `front` or `rear`.
macro_rules! model {
    (
        $path:literal $model:literal $of:ident in $table:literal
        $(
            takes { $($taken:ident $([$taken_place:literal])? $(. $taken_below:ident)* $(: $type:ty)? $(= $taken_path:literal)?),* $(,)? }
            $(needs { $($needed:ident $([$needed_place:literal])? $(. $needed_below:ident)* $(= $needed_path:literal)?),* $(,)? })?
        )+
        $(named { $($named:literal = $word:literal),* $(,)? })?
        $(end $end:literal)?
    ) => {
        $crate::base::section::ModelOf {
            path: $path,
            model: $model,
            table: $table,
            inputs: &[$(
                $($crate::base::section::macros::taken!(Typed $table $taken $([$taken_place])? $(. $taken_below)* $(= $taken_path)?),)*
                $($($crate::base::section::macros::taken!(Needed $table $needed $([$needed_place])? $(. $needed_below)* $(= $needed_path)?),)*)?
            )+],
            named: &[$($(($named, $word)),*)?],
            end: concat!("" $(, $end)?),
            shape: |shape| {$(
                $($crate::base::section::macros::leaves_of!(shape $of $taken $([$taken_place])? $(. $taken_below)* $(: $type)?);)*
                $($($crate::base::section::macros::leaves_of!(shape $of $needed $([$needed_place])? $(. $needed_below)*);)*)?
            )+},
        }
    };
}

macro_rules! leaves_of {
    ($shape:ident $of:ident $field:ident $([$place:literal])? $(. $below:ident)*) => {
        $shape.input(|of: &$of| &of.$field $([$place])? $(. $below)*)
    };
    ($shape:ident $of:ident $field:ident $([$place:literal])? $(. $below:ident)* : $type:ty) => {
        $shape.add::<$type>()
    };
}

macro_rules! taken {
    ($need:ident $table:literal $name:ident $(. $below:ident)*) => {
        $crate::base::section::macros::taken!(
            $need $table $name $(. $below)* = concat!($table, ".", stringify!($name) $(, ".", stringify!($below))*)
        )
    };
    ($need:ident $table:literal $name:ident $([$place:literal])? $(. $below:ident)* = $path:expr) => {
        $crate::base::section::rule::Taken {
            name: concat!(stringify!($name) $(, "[", $place, "]")? $(, ".", stringify!($below))*),
            path: $path,
            need: $crate::base::section::rule::Need::$need,
        }
    };
}

macro_rules! results {
    () => {
        &[""]
    };
    ($($result:ident),+) => {
        &[$(stringify!($result)),+]
    };
}

macro_rules! shapes {
    ($shape:ident $function:path, $input:ident;) => {
        $shape.result::<$input, _>($function)
    };
    ($shape:ident $function:path, $input:ident; $of:ident { $($result:ident),+ }) => {
        $($shape.field(|on: &$of| on.$result);)+
    };
}

macro_rules! fills {
    ($results:ident $on:ident;) => {
        $results[0] = $crate::base::section::rule::Output::value($on);
    };
    ($results:ident $on:ident; $of:ident { $($result:ident),+ }) => {
        let mut places = $results.iter_mut();
        $(if let Some(place) = places.next() {
            *place = $crate::base::section::rule::Output::value($on.$result);
        })+
    };
}

macro_rules! lacking {
    () => {
        ""
    };
    ($lacking:expr) => {
        $lacking
    };
}

pub(crate) use {fields, fills, key, lacking, leaves_of, model, results, rule, shapes, taken, words};
