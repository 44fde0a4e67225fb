//! Parts that were prepared last and positions that were solved last, so that the stages of one row share them: the build sheet asks about an
//! axle stage by stage.
#![expect(
    clippy::indexing_slicing,
    reason = "a place that was found in the list, and its last part, which is there by then"
)]

use core::cell::RefCell;
use std::sync::{Arc, Mutex};

/// Number of parts that are kept: both axles of a row, and both of the row before.
const MOST: usize = 4;

/// Parts that were prepared last, each with the numbers from which it was made.
///
/// A part follows from its numbers alone. Equal bits give the same part, so that whether it was kept changes no result.
#[derive(Debug)]
pub(in crate::suspension) struct Kept<T>(RefCell<Vec<Part<T>>>);

/// Numbers, and the part that follows from them.
type Part<T> = (Box<[f64]>, Arc<T>);

impl<T> Kept<T> {
    pub(in crate::suspension) const fn new() -> Kept<T> {
        Kept(RefCell::new(Vec::new()))
    }

    /// The part of these numbers; a part that is refused is not kept.
    pub(in crate::suspension) fn part<E>(
        &self,
        numbers: &[f64],
        prepare: impl FnOnce() -> Result<T, E>,
    ) -> Result<Arc<T>, E> {
        let Ok(mut kept) = self.0.try_borrow_mut() else { return prepare().map(Arc::new) };
        if let Some(place) = kept.iter().position(|(of, _)| are_same(of, numbers)) {
            // The part that was asked for last stands last.
            kept[place..].rotate_left(1);
        } else {
            let part = Arc::new(prepare()?);
            if kept.len() >= MOST {
                kept.remove(0);
            }
            kept.push((Box::from(numbers), part));
        }
        Ok(Arc::clone(&kept[kept.len() - 1].1))
    }
}

/// Number of positions that are kept: those over the travel and in roll that all stages ask for.
const PLACES: usize = 64;

/// Positions of one axle that were solved, each with its heave and roll.
#[derive(Debug)]
pub(in crate::suspension) struct Places<P>(Mutex<Vec<([f64; 2], P)>>);

impl<P: Clone> Places<P> {
    pub(in crate::suspension) const fn new() -> Places<P> {
        Places(Mutex::new(Vec::new()))
    }

    /// The position at this heave and roll; one that is refused is not kept.
    pub(in crate::suspension) fn at<E>(
        &self,
        place: [f64; 2],
        solve: impl FnOnce() -> Result<P, E>,
    ) -> Result<P, E> {
        let Ok(mut solved) = self.0.lock() else { return solve() };
        if let Some((_, pose)) = solved.iter().find(|(at, _)| are_same(at, &place)) {
            return Ok(pose.clone());
        }
        let pose = solve()?;
        if solved.len() < PLACES {
            solved.push((place, pose.clone()));
        }
        Ok(pose)
    }
}

/// Whether all numbers have the same bits.
fn are_same(one: &[f64], other: &[f64]) -> bool {
    one.len() == other.len() && one.iter().zip(other).all(|(one, other)| one.to_bits() == other.to_bits())
}
