//! Genuine NumPy ufuncs: doubles in coherent SI in and out. A refused element is NaN and raises the "invalid" flag
//! of the floating-point unit, so that `numpy.errstate` decides what happens.
use crate::error::guard;
use crate::interpreter::attached;
use crate::kernel::Kernel;
use numpy::npyffi::{NPY_TYPES, PY_UFUNC_API, npy_intp};
use pyo3::prelude::*;
use std::any::TypeId;
use std::array::from_fn;
use std::collections::BTreeMap;
use std::ffi::{CString, c_char, c_int, c_void};
use std::mem::MaybeUninit;
use std::sync::{Mutex, PoisonError};

/// Elements in one block. Inputs that are not contiguous are gathered first, and results are always
/// scattered last, so that one loop serves every layout and vectorises. The block is small: the next elements come from memory
/// while these are computed.
const BLOCK: usize = 64;
const STRIDE: npy_intp = size_of::<f64>() as npy_intp;

unsafe extern "C" fn inner_loop<K: Kernel<I, O>, const I: usize, const O: usize>(
    operands: *mut *mut c_char,
    dimensions: *mut npy_intp,
    steps: *mut npy_intp,
    _data: *mut c_void,
) {
    // SAFETY: NumPy passes I + O aligned operands of doubles with their steps, and the length.
    let length = unsafe { *dimensions } as usize;
    let before = flags::take();
    // SAFETY: as above.
    match guard(K::NAME, || Ok(unsafe { run::<K, I, O>(operands, length, steps) })) {
        // SAFETY: as above, for the last O of the operands.
        Ok(refused) if refused || flags::raised() != 0 => {
            flags::leave(before, unsafe { found::<O>(operands.add(I), length, steps.add(I)) });
        }
        Ok(_) => flags::leave(before, Found::default()),
        // NumPy may have released the interpreter around this loop.
        Err(error) => drop(attached(|py| error.restore(py))),
    }
}

/// Exceptional values among the results.
#[derive(Clone, Copy, Default)]
struct Found {
    nan: bool,
    infinite: bool,
}

/// Examines every result.
#[cold]
unsafe fn found<const O: usize>(results: *mut *mut c_char, length: usize, steps: *mut npy_intp) -> Found {
    let mut found = Found::default();
    for o in 0..O {
        for j in 0..length {
            // SAFETY: the caller vouches for the `length` elements of each result.
            let y = unsafe { (*results.add(o)).offset(j as isize * *steps.add(o)).cast::<f64>().read() };
            found.nan |= y.is_nan();
            found.infinite |= y.is_infinite();
        }
    }
    found
}

/// Wider registers, if the processor has them, with the same instructions: no multiplication is fused with an addition,
/// so the bits stay the same. Returns whether an element was refused.
unsafe fn run<K: Kernel<I, O>, const I: usize, const O: usize>(
    operands: *mut *mut c_char,
    length: usize,
    steps: *mut npy_intp,
) -> bool {
    #[cfg(target_arch = "x86_64")]
    {
        #[target_feature(enable = "avx2")]
        unsafe fn wide<K: Kernel<I, O>, const I: usize, const O: usize>(
            operands: *mut *mut c_char,
            length: usize,
            steps: *mut npy_intp,
        ) -> bool {
            // SAFETY: as for `blocks`.
            unsafe { blocks::<K, I, O>(operands, length, steps) }
        }
        if length >= 16 && std::arch::is_x86_feature_detected!("avx2") {
            // SAFETY: the processor has it.
            return unsafe { wide::<K, I, O>(operands, length, steps) };
        }
    }
    // SAFETY: the caller vouches for the operands.
    unsafe { blocks::<K, I, O>(operands, length, steps) }
}

#[inline(always)]
unsafe fn blocks<K: Kernel<I, O>, const I: usize, const O: usize>(
    operands: *mut *mut c_char,
    length: usize,
    steps: *mut npy_intp,
) -> bool {
    let mut gathered = [const { MaybeUninit::<[f64; BLOCK]>::uninit() }; I];
    let mut results = [const { MaybeUninit::<[f64; BLOCK]>::uninit() }; O];
    let mut refused = false;
    // SAFETY: the caller vouches for the operands; the place lies within one of them.
    let result = |o: usize, start: usize| unsafe {
        let (to, step) = (*operands.add(I + o), *steps.add(I + o));
        (to.offset(start as isize * step).cast::<f64>(), step)
    };
    // SAFETY: as above.
    let most = if unsafe { feeds_back::<I, O>(operands, length, steps) } { 1 } else { BLOCK };
    let mut start = 0;
    while start < length {
        let count = most.min(length - start);
        // SAFETY: every place touched lies within the `length` elements of its operand; `gathered` and `results`
        // hold BLOCK >= count elements, and only elements written before are read.
        unsafe {
            let inputs: [*const f64; I] = from_fn(|i| {
                let (from, step) = ((*operands.add(i)).offset(start as isize * *steps.add(i)), *steps.add(i));
                if step == STRIDE {
                    return from.cast::<f64>().cast_const();
                }
                let to = gathered[i].as_mut_ptr().cast::<f64>();
                for j in 0..count {
                    to.add(j).write(from.offset(j as isize * step).cast::<f64>().read());
                }
                to.cast_const()
            });
            let outputs: [*mut f64; O] = from_fn(|o| {
                let (to, step) = result(o, start);
                // For an operation in place, the results wait, so that the compiler sees that they do not overlap the inputs.
                if step == STRIDE && !inputs.contains(&to.cast_const()) {
                    to
                } else {
                    results[o].as_mut_ptr().cast()
                }
            });
            refused |= block::<K, I, O>(inputs, outputs, count);
            for (o, written) in outputs.into_iter().enumerate() {
                let (to, step) = result(o, start);
                let values = std::slice::from_raw_parts(written, count);
                if step != STRIDE {
                    for (j, value) in values.iter().enumerate() {
                        to.byte_offset(j as isize * step).write(*value);
                    }
                } else if written != to {
                    std::ptr::copy_nonoverlapping(values.as_ptr(), to, count);
                }
            }
        }
        start += count;
    }
    refused
}

/// True if a result is an argument of a later element, as in `reduce` and `accumulate`.
unsafe fn feeds_back<const I: usize, const O: usize>(
    operands: *mut *mut c_char,
    length: usize,
    steps: *mut npy_intp,
) -> bool {
    // SAFETY: the caller vouches for the operands.
    let operand = |k: usize| unsafe { ((*operands.add(k)) as isize, *steps.add(k)) };
    let span = |(at, step): (isize, isize)| {
        let last = at + step * (length as isize - 1);
        (at.min(last), at.max(last) + STRIDE)
    };
    (I..I + O).any(|o| {
        (0..I).any(|i| {
            let (result, argument) = (operand(o), operand(i));
            let in_place = result == argument && result.1 != 0;
            let (r, a) = (span(result), span(argument));
            length > 1 && !in_place && r.0 < a.1 && a.0 < r.1
        })
    })
}

/// The important loops: if every element of a block is valid, as is usual, the results are computed without a
/// branch and so vectorise, with any formula. Returns whether an element was refused.
#[inline(always)]
unsafe fn block<K: Kernel<I, O>, const I: usize, const O: usize>(
    inputs: [*const f64; I],
    outputs: [*mut f64; O],
    count: usize,
) -> bool {
    // SAFETY: the caller vouches for `count` elements of each; outputs do not overlap inputs. The values used are the
    // checked copy: a function of the core depends on its arguments only, so a valid value stays valid.
    unsafe {
        // Another thread may write to the operands meanwhile. Without `black_box` below, the compiler reads them again.
        let mut seen = [const { MaybeUninit::<[f64; BLOCK]>::uninit() }; I];
        // A count, for the compiler does not vectorise a flag.
        let mut refused = 0;
        for j in 0..count {
            let x: [f64; I] = from_fn(|i| *inputs[i].add(j));
            for i in 0..I {
                seen[i].as_mut_ptr().cast::<f64>().add(j).write(x[i]);
            }
            refused += u64::from(K::call(x).is_err());
        }
        let seen = std::hint::black_box(&seen);
        let again = |j: usize| from_fn(|i| *seen[i].as_ptr().cast::<f64>().add(j));
        if refused == 0 {
            for j in 0..count {
                let y = K::call(again(j)).unwrap_unchecked();
                (0..O).for_each(|o| outputs[o].add(j).write(y[o]));
            }
        } else {
            for j in 0..count {
                let y = K::call(again(j)).unwrap_or([f64::NAN; O]);
                (0..O).for_each(|o| outputs[o].add(j).write(y[o]));
            }
        }
        refused != 0
    }
}

/// The floating-point flags that NumPy reads after the loop. If the loop raised none, every result of valid arguments is
/// a number. A vectorised loop computes both sides of a choice and so raises meaningless flags: then the results are
/// examined, and the flags follow from them.
mod flags {
    use super::Found;
    use std::ffi::c_int;

    #[cfg(all(any(target_arch = "x86_64", target_arch = "x86"), not(windows)))]
    const INVALID_DIVIDE_OVER_UNDER: [c_int; 4] = [1, 4, 8, 16];
    #[cfg(all(target_arch = "aarch64", not(windows)))]
    const INVALID_DIVIDE_OVER_UNDER: [c_int; 4] = [1, 2, 4, 8];
    #[cfg(windows)]
    const INVALID_DIVIDE_OVER_UNDER: [c_int; 4] = [16, 8, 4, 2];

    const INVALID: c_int = INVALID_DIVIDE_OVER_UNDER[0];
    const OVERFLOW: c_int = INVALID_DIVIDE_OVER_UNDER[2];
    const ALL: c_int = INVALID | INVALID_DIVIDE_OVER_UNDER[1] | OVERFLOW | INVALID_DIVIDE_OVER_UNDER[3];

    unsafe extern "C" {
        safe fn feclearexcept(flags: c_int) -> c_int;
        safe fn feraiseexcept(flags: c_int) -> c_int;
        safe fn fetestexcept(flags: c_int) -> c_int;
    }

    /// Flags that are raised.
    pub fn raised() -> c_int {
        fetestexcept(ALL)
    }

    /// Flags that were raised, cleared by this call.
    pub fn take() -> c_int {
        let before = raised();
        if before != 0 {
            feclearexcept(ALL);
        }
        before
    }

    pub fn leave(before: c_int, found: Found) {
        let wanted = before | if found.nan { INVALID } else { 0 } | if found.infinite { OVERFLOW } else { 0 };
        let now = raised();
        if now & !wanted != 0 {
            feclearexcept(ALL);
            feraiseexcept(wanted);
        } else if now != wanted {
            feraiseexcept(wanted);
        }
    }
}

static UFUNCS: Mutex<BTreeMap<TypeId, Py<PyAny>>> = Mutex::new(BTreeMap::new());

/// The ufunc of a function, made when first asked for.
pub fn ufunc_of<K: Kernel<I, O>, const I: usize, const O: usize>(py: Python<'_>) -> PyResult<Py<PyAny>> {
    let known = || UFUNCS.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(made) = known().get(&TypeId::of::<K>()) {
        return Ok(made.clone_ref(py));
    }
    let made = ufunc::<K, I, O>(py)?;
    Ok(known().entry(TypeId::of::<K>()).or_insert(made).clone_ref(py))
}

/// A new ufunc. NumPy keeps the pointers for as long as the process lives, so they are leaked, once a function.
fn ufunc<K: Kernel<I, O>, const I: usize, const O: usize>(py: Python<'_>) -> PyResult<Py<PyAny>> {
    const { assert!(I >= 1 && O >= 1 && I + O <= 32, "NumPy 1.26 takes 32 operands") };
    let name = CString::new(K::NAME)?.into_raw();
    let doc = CString::new(K::DOC)?.into_raw();
    let types = Box::leak(vec![NPY_TYPES::NPY_DOUBLE as c_char; I + O].into_boxed_slice());
    let loops = Box::leak(Box::new(Some(
        inner_loop::<K, I, O>
            as unsafe extern "C" fn(*mut *mut c_char, *mut npy_intp, *mut npy_intp, *mut c_void),
    )));
    let data = Box::leak(Box::new(std::ptr::null_mut::<c_void>()));
    const NO_IDENTITY: c_int = -1;
    // SAFETY: one loop of I + O types; every pointer lives for ever.
    unsafe {
        let made = PY_UFUNC_API.PyUFunc_FromFuncAndData(
            py,
            loops,
            data,
            types.as_mut_ptr(),
            1,
            I as c_int,
            O as c_int,
            NO_IDENTITY,
            name,
            doc,
            0,
        );
        Bound::from_owned_ptr_or_err(py, made).map(Bound::unbind)
    }
}
