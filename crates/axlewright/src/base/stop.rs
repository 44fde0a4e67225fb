//! Stops long work that its caller does not want any more.
//!
//! Loops over rows and steps ask through `go_on`. Nobody is asked unless the work runs inside [`stoppable`].

use super::error::{Error, Result};
use crate::cannot;
use core::cell::{Cell, RefCell};

/// Steps between two questions to the caller: rows of a table, steps of a motion.
const CHUNK: u32 = 32;

/// Receiver of the question whether to go on.
type Ask = Box<dyn FnMut() -> bool>;

thread_local! {
    static ASK: RefCell<Option<Ask>> = const { RefCell::new(None) };
    /// Steps until the next question; none once the work is stopped.
    static LEFT: Cell<u32> = const { Cell::new(u32::MAX) };
    static STOPPED: Cell<bool> = const { Cell::new(false) };
}

/// Runs work that asks `go_on` once in 32 rows or steps, on this thread; nothing if it was stopped.
///
#[cfg_attr(feature = "spring", doc = "```")]
#[cfg_attr(not(feature = "spring"), doc = "```ignore")]
/// use axlewright::{base::stop::stoppable, spring::{BumpStop, StopPoint}};
/// # use axlewright::{base::document::{Model, Value}, units::*};
/// # let point = |mm: f64, force: f64| StopPoint { compression: Value::new(Length::from_si(mm / 1e3)), force: Value::new(Force::from_si(force)) };
/// let stop = BumpStop { points: vec![point(0.0, 0.0), point(20.0, 1500.0)] };
/// let compression = vec![Length::from_si(0.01); 1000];
/// assert!(stoppable(|| true, || stop.table(&compression))?.is_some());
/// assert!(stoppable(|| false, || stop.table(&compression))?.is_none());
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn stoppable<T>(
    go_on: impl FnMut() -> bool + 'static,
    work: impl FnOnce() -> Result<T>,
) -> Result<Option<T>> {
    let before = Held {
        ask: ASK.replace(Some(Box::new(go_on))),
        left: LEFT.replace(CHUNK),
        stopped: STOPPED.replace(false),
    };
    let answer = work();
    let stopped = STOPPED.get();
    drop(before);
    if stopped { Ok(None) } else { answer.map(Some) }
}

/// State around a call of [`stoppable`], put back at its end.
struct Held {
    ask: Option<Ask>,
    left: u32,
    stopped: bool,
}

impl Drop for Held {
    fn drop(&mut self) {
        ASK.replace(self.ask.take());
        LEFT.set(self.left);
        STOPPED.set(self.stopped);
    }
}

/// Counts a step of long work; an error once the caller wants it no more.
#[inline]
pub(crate) fn go_on() -> Result<()> {
    match LEFT.get() {
        0 | 1 => asked(),
        left => {
            LEFT.set(left - 1);
            Ok(())
        }
    }
}

#[cold]
fn asked() -> Result<()> {
    if STOPPED.get() {
        return Err(stopped());
    }
    // A question from within the question is answered by going on.
    let answer = ASK.with(|ask| match ask.try_borrow_mut() {
        Ok(mut ask) => ask.as_mut().map(|ask| ask()),
        Err(_) => None,
    });
    match answer {
        None => LEFT.set(u32::MAX),
        Some(true) => LEFT.set(CHUNK),
        Some(false) => {
            STOPPED.set(true);
            LEFT.set(0);
            return Err(stopped());
        }
    }
    Ok(())
}

fn stopped() -> Error {
    cannot!("the work was stopped before its end")
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;

    fn work(steps: u32) -> Result<u32> {
        (0..steps).try_fold(0, |done, _| go_on().map(|()| done + 1))
    }

    /// By count: 32 steps to a question, and none after a refusal.
    #[test]
    fn work_ends_with_the_first_refusal() {
        let asked = Rc::new(Cell::new(0));
        let ask = |most: u32| {
            let asked = Rc::clone(&asked);
            move || {
                asked.set(asked.get() + 1);
                asked.get() < most
            }
        };
        assert_eq!(stoppable(ask(1000), || work(320)), Ok(Some(320)));
        assert_eq!(asked.replace(0), 10);
        let mut done = 0;
        let stopped = stoppable(ask(3), || {
            while go_on().is_ok() {
                done += 1;
            }
            assert!(go_on().is_err());
            Ok(())
        });
        assert_eq!((stopped, done, asked.get()), (Ok(None), 3 * CHUNK - 1, 3));
        assert_eq!(work(1000), Ok(1000), "nobody is asked outside");
    }

    #[test]
    fn work_inside_work_is_stopped_alone() {
        let outer = stoppable(
            || true,
            || {
                assert_eq!(stoppable(|| false, || work(1000)), Ok(None));
                work(1000)
            },
        );
        assert_eq!(outer, Ok(Some(1000)));
    }

    #[test]
    fn a_refusal_of_the_work_itself_stays_one() {
        assert!(stoppable(|| true, || Err::<(), _>(cannot!("no"))).is_err());
    }
}
