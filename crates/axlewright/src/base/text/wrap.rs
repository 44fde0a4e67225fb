//! Text of a fixed width: lines that break between words.

/// The characters of a text, escapes of colour left aside.
pub fn columns(text: &str) -> usize {
    let (mut count, mut escape) = (0, false);
    for c in text.chars() {
        match c {
            '\x1b' => escape = true,
            'm' if escape => escape = false,
            _ if escape => {}
            _ => count += 1,
        }
    }
    count
}

/// A text after a head, in lines of at most this many columns that end with a line break; further lines are indented. A word that is wider than
/// a line is cut into pieces. A width below 20 counts as 20.
pub fn wrapped(head: &str, indent: usize, text: &str, width: usize) -> String {
    let width = width.max(20);
    let indent = indent.min(width / 2);
    // A head that leaves no room is text itself.
    let lead = head.len() - head.trim_start_matches(' ').len();
    if columns(head) + 8 > width && columns(head) > lead {
        return wrapped(&" ".repeat(lead), indent, &format!("{head} {text}"), width);
    }
    let (mut out, mut line) = (String::new(), head.to_owned());
    let mut is_bare = true;
    let mut used = columns(&line);
    let mut next = |line: &mut String, used: &mut usize, is_bare: &mut bool| {
        out.push_str(line.trim_end());
        out.push('\n');
        *line = " ".repeat(indent);
        (*used, *is_bare) = (indent, true);
    };
    for word in text.split_whitespace() {
        let wide = columns(word);
        let gap = usize::from(!is_bare);
        if used + gap + wide > width && used > indent {
            next(&mut line, &mut used, &mut is_bare);
        }
        if !is_bare {
            line.push(' ');
            used += 1;
        }
        if used + wide <= width {
            line.push_str(word);
            used += wide;
        } else {
            for c in word.chars() {
                if used >= width {
                    next(&mut line, &mut used, &mut is_bare);
                }
                line.push(c);
                used += 1;
            }
        }
        is_bare = false;
    }
    out.push_str(line.trim_end());
    out.push('\n');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider() {
        let text = "one two three averylongwordthatdoesnotfitanywhere four";
        for width in [20, 24, 33, 80] {
            let all = wrapped("head: ", 4, text, width);
            assert!(all.lines().all(|line| columns(line) <= width), "{all}");
            let back: String = all.replace(char::is_whitespace, "");
            assert_eq!(back, format!("head: {text}").replace(char::is_whitespace, ""));
        }
    }
}
