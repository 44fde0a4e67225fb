//! Texts of any length: every way in refuses them with a short sentence, before it copies them.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use axlewright::base::document::{Document, Field};
use axlewright::base::text;
use axlewright::sheet::{Axis, PriceList, Requirement, Sheet};
use axlewright::units::{LinearStiffness, Quantity};
use axlewright::{Model, Result, catalogue, cooling::Coolant};
use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

/// Counts the bytes that each thread holds.
struct Counting;

thread_local! {
    static HELD: Cell<isize> = const { Cell::new(0) };
    /// The most so far.
    static MOST: Cell<isize> = const { Cell::new(0) };
}

fn count(bytes: isize) {
    let _ = HELD.try_with(|held| {
        held.set(held.get() + bytes);
        MOST.set(MOST.get().max(held.get()));
    });
}

/// Result of a call, and the most bytes that it held meanwhile.
fn counted<T>(call: impl FnOnce() -> T) -> (T, isize) {
    let before = HELD.get();
    MOST.set(before);
    let answer = call();
    (answer, MOST.get() - before)
}

// SAFETY: everything goes to the allocator of the system.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count(layout.size() as isize);
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        count(-(layout.size() as isize));
        unsafe { System.dealloc(pointer, layout) }
    }
    unsafe fn realloc(&self, pointer: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        count(size as isize - layout.size() as isize);
        unsafe { System.realloc(pointer, layout, size) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// A way in: its name, and the call.
type WayIn = (&'static str, fn(&str) -> Result<()>);

const WAYS_IN: [WayIn; 18] = [
    ("a quantity of a kind", |text| text::read_as(text, LinearStiffness::KIND).map(drop)),
    ("a quantity", |text| text::read(text).map(drop)),
    ("a unit", |text| text::unit(text, Some(LinearStiffness::KIND)).map(drop)),
    ("a function", |text| catalogue::entry(text).map(drop)),
    ("an argument of a function", |text| catalogue::work("spring.wheel_rate", &[(text, 1.0)]).map(drop)),
    ("a line of a sheet", |text| Sheet::default().set("front.spring.rate", text)),
    ("a marking of a sheet", |text| Sheet::default().set("front.tyre.size", text)),
    ("a path of a sheet", |text| Sheet::default().set(text, "225 lbf/in")),
    ("a path with a number", |text| Sheet::default().set_si(text, 1.0)),
    ("a path that is taken out", |text| Sheet::default().remove(text)),
    ("a model of a sheet", |text| Sheet::default().model(text).map(drop)),
    ("a path of an axis", |text| Axis::numbers(text, &[1.0]).map(drop)),
    ("a value of an axis", |text| Axis::texts("front.spring.rate", &[text]).map(drop)),
    ("an end of a range", |text| Axis::range("front.spring.rate", "1 N/mm", text, 3).map(drop)),
    ("a requirement", |text| Requirement::parse(text).map(drop)),
    ("a path of a document", |text| Document::from_si([(text, Field::Si(1.0))]).map(drop)),
    ("a text of a document", |text| Document::from_si([("liquid", Field::Text(text))]).map(drop)),
    ("a list with commas", |text| PriceList::from_csv(text).map(drop)),
];

/// Bytes that a refusal may take, with its sentence.
const LITTLE: isize = 200_000;

#[test]
fn a_text_of_any_length_is_refused_before_it_is_copied() {
    for filling in ["x", "9", " ", "é", "a.", "[", "\u{0}"] {
        let longest = filling.repeat(100_000_000 / filling.len());
        for (name, call) in WAYS_IN {
            let _ = call(filling); // what is made once for all
            for bytes in [10_000_000, 100_000_000] {
                let (refused, taken) = counted(|| call(&longest[..bytes]));
                let said = refused.unwrap_err().to_string();
                assert!(taken < LITTLE, "{name}: {taken} bytes for {bytes} of {filling:?}");
                assert!(
                    !said.is_empty() && said.len() < 20_000,
                    "{name}: a sentence of {} bytes",
                    said.len()
                );
                assert!(!said.contains(&"x".repeat(100)), "{name}: {said}");
            }
        }
    }
}

/// A document is refused by its size alone; one within that size by its first faults.
#[test]
fn a_document_of_any_length_is_refused_before_it_is_copied() {
    let longest = "x = 1\n".repeat(100_000_000 / 6);
    for call in
        [|text: &str| Coolant::from_text(text).map(drop), |text: &str| Sheet::from_text(text).map(drop)]
    {
        let (said, taken) = counted(|| call(&longest).unwrap_err().to_string());
        assert!(taken < LITTLE && said.contains("at most 4000000 are read"), "{said}");
    }
}
