//! Steps of the solvers, counted so that a test can bound the work of an answer; outside the tests nothing is counted.

#[cfg(test)]
thread_local! {
    static STEPS: core::cell::Cell<u64> = const { core::cell::Cell::new(0) };
}

/// One step of a solver is done.
#[inline(always)]
pub(in crate::suspension) fn solved() {
    #[cfg(test)]
    STEPS.with(|steps| steps.set(steps.get() + 1));
}

/// The result of a call, and the steps that it took.
#[cfg(all(test, feature = "serde"))]
pub(in crate::suspension) fn steps_of<T>(call: impl FnOnce() -> T) -> (T, u64) {
    let before = STEPS.with(core::cell::Cell::get);
    let returned = call();
    (returned, STEPS.with(core::cell::Cell::get) - before)
}
