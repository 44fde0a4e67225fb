//! Text of a thread: `M10`, `M10x1.25`, `3/8-16 UNC`, `#10-32`.

use super::geometry::{Geometry, Series};
use crate::units::Length;
use crate::units::{inch, mm};

/// Coarse pitch by diameter (mm): ISO 261 and ISO 262, from memory.
const COARSE: [(f64, f64); 25] = [
    (1.6, 0.35),
    (2.0, 0.4),
    (2.5, 0.45),
    (3.0, 0.5),
    (3.5, 0.6),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (7.0, 1.0),
    (8.0, 1.25),
    (9.0, 1.25),
    (10.0, 1.5),
    (11.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
];

/// Pitches of ISO 261 (mm), from memory.
const PITCHES: [f64; 20] = [
    0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0,
];

/// Sizes without a coarse pitch that have a fine one (mm): third choice of ISO 261, from memory.
const FINE_ONLY: [f64; 8] = [15.0, 17.0, 25.0, 26.0, 28.0, 32.0, 35.0, 38.0];

/// Unified sizes: name, diameter (in), coarse and fine threads per inch. ASME B1.1, from memory.
const UNIFIED: [(&str, f64, f64, f64); 22] = [
    ("#2", 0.086, 56.0, 64.0),
    ("#3", 0.099, 48.0, 56.0),
    ("#4", 0.112, 40.0, 48.0),
    ("#5", 0.125, 40.0, 44.0),
    ("#6", 0.138, 32.0, 40.0),
    ("#8", 0.164, 32.0, 36.0),
    ("#10", 0.190, 24.0, 32.0),
    ("#12", 0.216, 24.0, 28.0),
    ("1/4", 0.25, 20.0, 28.0),
    ("5/16", 0.3125, 18.0, 24.0),
    ("3/8", 0.375, 16.0, 24.0),
    ("7/16", 0.4375, 14.0, 20.0),
    ("1/2", 0.5, 13.0, 20.0),
    ("9/16", 0.5625, 12.0, 18.0),
    ("5/8", 0.625, 11.0, 18.0),
    ("3/4", 0.75, 10.0, 16.0),
    ("7/8", 0.875, 9.0, 14.0),
    ("1", 1.0, 8.0, 12.0),
    ("1-1/8", 1.125, 7.0, 12.0),
    ("1-1/4", 1.25, 7.0, 12.0),
    ("1-3/8", 1.375, 6.0, 12.0),
    ("1-1/2", 1.5, 6.0, 12.0),
];

/// Longest marking that is read, in bytes.
const LONGEST: usize = 30;

const UNKNOWN: &str = "not a thread; write it as M10, M10x1.25, 3/8-16 UNC, 3/8-24 or #10-32";

/// The thread of a marking, or what is wrong with it.
pub(super) fn read(marking: &str) -> Result<Geometry, String> {
    let text = marking.trim();
    if text.len() > LONGEST {
        return Err(format!("more than {LONGEST} characters are no thread; write it as M10x1.25 or 3/8-24"));
    }
    let upper = text.replace(['×', '*'], "x").to_ascii_uppercase();
    if !upper.is_ascii() {
        return Err("a thread has plain letters and digits only".to_owned());
    }
    match upper.strip_prefix('M') {
        Some(size) => metric(size.trim()),
        None => unified(&upper),
    }
}

/// `10`, `10X1.25`, `10 X 1.25-6G`: what stands behind the M.
fn metric(size: &str) -> Result<Geometry, String> {
    let words: Vec<&str> = size.split_whitespace().collect();
    let digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    if words.windows(2).any(|two| match two {
        [one, next] => digit(one.chars().last()) && digit(next.chars().next()),
        _ => false,
    }) {
        return Err(
            "the thread stands alone, as in M10 or M10x1.25; the class of the bolt is its grade".to_owned()
        );
    }
    let bare: String = size.chars().filter(|letter| !letter.is_whitespace()).collect();
    let bare = without_class(&bare, &["6G", "6H", "4G6G", "5G6G", "6E", "4H", "5H", "8G", "7H"]);
    let (diameter, pitch) = match bare.split_once('X') {
        Some((diameter, pitch)) => (diameter, Some(pitch)),
        None => (bare, None),
    };
    let diameter = number(diameter).ok_or(UNKNOWN)?;
    let coarse = COARSE.iter().find(|(size, _)| *size == diameter).map(|(_, pitch)| *pitch);
    let pitch = match pitch {
        Some(text) => number(text).ok_or(UNKNOWN)?,
        None => coarse.ok_or_else(|| {
            if FINE_ONLY.contains(&diameter) {
                format!("M{diameter} has no coarse pitch; write the pitch behind it, as in M{diameter}x1.5")
            } else {
                format!(
                    "M{diameter} is no size of ISO 262 from M1.6 to M39; write the thread as M10 or M10x1.25"
                )
            }
        })?,
    };
    if coarse.is_none() && !FINE_ONLY.contains(&diameter) {
        return Err(format!(
            "M{diameter} is no size of ISO 261 from M1.6 to M39; write the thread as M10 or M10x1.25"
        ));
    }
    if !PITCHES.contains(&pitch) {
        return Err(format!(
            "{pitch} is no pitch of ISO 261 up to 4 mm; write the pitch only, not the length of the bolt, as in M10x1.25"
        ));
    }
    let most = coarse.unwrap_or(2.0);
    if pitch > most {
        return Err(format!("a pitch of {pitch} mm is too coarse for M{diameter}: at most {most} mm"));
    }
    Ok(Geometry {
        series: Series::Metric,
        diameter: Length::of::<mm>(diameter),
        pitch: Length::of::<mm>(pitch),
    })
}

/// `3/8-16 UNC`, `3/8-16`, `3/8 UNC`, `#10-32`, `10-32`, `1 1/4-7`, `1/2-20 UNF-2A`.
fn unified(upper: &str) -> Result<Geometry, String> {
    let text = upper.replace(['"', '″'], "").replace("NO.", "#");
    let text = without_class(text.trim(), &["1A", "2A", "3A", "1B", "2B", "3B"]).trim();
    // A series at the end: coarse, fine, or one that needs the number of threads.
    let (text, series) = ["UNRC", "UNRF", "UNC", "UNF", "UNEF", "UNS", "UNR", "UN"]
        .iter()
        .find_map(|series| text.strip_suffix(series).map(|rest| (rest.trim(), *series)))
        .unwrap_or((text, ""));
    // `1 1/4` is `1-1/4`.
    let dashed = text.split_whitespace().collect::<Vec<_>>().join("-").replace("#-", "#");
    let (size, threads) = size_and_threads(&dashed).ok_or(UNKNOWN)?;
    let (name, diameter, coarse, fine) = size;
    let choices = format!("write {name}-{coarse} UNC or {name}-{fine} UNF");
    let wanted = match series {
        "UNC" | "UNRC" => Some(coarse),
        "UNF" | "UNRF" => Some(fine),
        _ => None,
    };
    let threads = match (threads, wanted) {
        (Some(threads), Some(wanted)) if threads != wanted => {
            return Err(format!("{name} {series} has {wanted} threads per inch, not {threads}; {choices}"));
        }
        (Some(threads), Some(_)) => threads,
        (Some(threads), None) if threads == coarse || threads == fine => threads,
        (Some(threads), None) if !series.is_empty() && (6.0..=80.0).contains(&threads) => threads,
        (Some(threads), None) => {
            return Err(format!("{name} with {threads} threads per inch is neither UNC nor UNF; {choices}"));
        }
        (None, Some(wanted)) => wanted,
        (None, None) => return Err(format!("{name} says no threads per inch; {choices}")),
    };
    // The thread keeps a core of at least half its diameter.
    if diameter * threads < 4.0 {
        return Err(format!("{threads} threads per inch are too coarse for {name}; {choices}"));
    }
    Ok(Geometry {
        series: Series::Unified,
        diameter: Length::of::<inch>(diameter),
        pitch: Length::of::<inch>(1.0 / threads),
    })
}

type Size = (&'static str, f64, f64, f64);

/// The size at the head, the longest one that fits, and the threads per inch behind it.
fn size_and_threads(text: &str) -> Option<(Size, Option<f64>)> {
    let by_length = |named: &Size| named.0.len();
    let fits = UNIFIED.iter().filter_map(|size| {
        // A numbered size may lack its mark: 10-32.
        let marked = text.strip_prefix(size.0);
        let rest = marked.or_else(|| text.strip_prefix(size.0.strip_prefix('#')?))?;
        match rest.strip_prefix('-') {
            None if rest.is_empty() && marked.is_some() => Some((*size, None)),
            None => None,
            Some(threads) => whole(threads).map(|threads| (*size, Some(threads))),
        }
    });
    fits.max_by_key(|(size, _)| by_length(size))
}

/// The text without a class of tolerance behind a dash or a space.
fn without_class<'a>(text: &'a str, classes: &[&str]) -> &'a str {
    classes
        .iter()
        .find_map(|class| text.strip_suffix(class)?.trim_end().strip_suffix('-').map(str::trim_end))
        .unwrap_or(text)
}

/// A plain decimal number of at most five characters and nothing else.
fn number(text: &str) -> Option<f64> {
    let plain = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let ends = text.starts_with('.') || text.ends_with('.');
    (!text.is_empty() && text.len() <= 5 && plain && !ends).then(|| text.parse().ok()).flatten()
}

/// A whole number of at most two digits and nothing else.
fn whole(text: &str) -> Option<f64> {
    let plain = text.bytes().all(|b| b.is_ascii_digit());
    (!text.is_empty() && text.len() <= 2 && plain).then(|| text.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_threads_as_they_are_written() {
        for (marking, diameter, pitch) in [
            ("M10", 10.0, 1.5),
            (" m10 ", 10.0, 1.5),
            ("M10x1.25", 10.0, 1.25),
            ("M10 × 1.25", 10.0, 1.25),
            ("M10x1.25-6g", 10.0, 1.25),
            ("M 12 x 1.5", 12.0, 1.5),
            ("M15x1.5", 15.0, 1.5),
            ("M3.5", 3.5, 0.6),
            ("3/8-16 UNC", 9.525, 25.4 / 16.0),
            ("3/8-16", 9.525, 25.4 / 16.0),
            ("3/8 UNC", 9.525, 25.4 / 16.0),
            ("3/8-24", 9.525, 25.4 / 24.0),
            ("7/16-20 UNF-2A", 11.1125, 1.27),
            ("3/8\"-16 unc", 9.525, 25.4 / 16.0),
            ("#10-32", 4.826, 25.4 / 32.0),
            ("10-24 UNC", 4.826, 25.4 / 24.0),
            ("No. 8-32", 4.1656, 25.4 / 32.0),
            ("1-8", 25.4, 25.4 / 8.0),
            ("1-14 UNS", 25.4, 25.4 / 14.0),
            ("1 1/4-7", 31.75, 25.4 / 7.0),
            ("1-1/4-12 UNF", 31.75, 25.4 / 12.0),
            ("1-1/2 UNC", 38.1, 25.4 / 6.0),
        ] {
            let found = read(marking).unwrap_or_else(|message| panic!("{marking}: {message}"));
            let (d, p) = (found.diameter.in_::<mm>(), found.pitch.in_::<mm>());
            assert!((d - diameter).abs() < 1e-9 && (p - pitch).abs() < 1e-9, "{marking}: {d} {p}");
        }
    }

    #[test]
    fn refuses_slips_of_the_pen() {
        for (marking, says) in [
            ("", "not a thread"),
            ("M", "not a thread"),
            ("10", "not a thread"),
            ("M10x", "not a thread"),
            ("M10x40", "not the length"),
            ("M10x1.2", "no pitch"),
            ("M10x2", "too coarse"),
            ("M13", "no size"),
            ("M13x1", "no size"),
            ("M15", "no coarse pitch"),
            ("M10 8.8", "stands alone"),
            ("3/8", "write 3/8-16 UNC or 3/8-24 UNF"),
            ("3/8-20", "neither UNC nor UNF"),
            ("3/8-16 UNF", "has 24 threads per inch"),
            ("1/4-6 UNS", "too coarse"),
            ("3/7-16", "not a thread"),
            ("3/8-", "not a thread"),
            ("1/2-13 UNC of a long bolt of no kind", "more than 30"),
            ("Ｍ10", "plain letters"),
        ] {
            let message = read(marking).expect_err(marking);
            assert!(message.contains(says), "{marking}: {message}");
        }
    }
}
