//! The list of C signatures, which guards the header: a program compiled with an older header of the same version
//! must go on working with this library.

use std::collections::BTreeMap;

pub const PATH: &str = "bindings/c/generated.signatures.txt";

const HEAD: &str = "# What a program that was compiled with this version's header relies on. `cargo xtask generate` adds what is new;\n\
                    # a change or removal is refused until the workspace has a higher minor version (major, from 1.0).\n";

/// Name and signature. The name of a field holds its place: `axw_x_result[1]`. Names are sorted, fields by their place.
type Signatures = BTreeMap<(String, Option<usize>), String>;

/// The list for a header. It extends the recorded one; other differences need a higher version.
pub fn next(recorded: Option<&str>, header: &str, version: &str) -> Result<String, String> {
    let abi = abi(version)?;
    let signatures = of_header(header)?;
    if let Some(recorded) = recorded {
        let (recorded_abi, recorded) = read(recorded)?;
        if abi < recorded_abi {
            return Err(format!(
                "{PATH} is of version {}, the workspace of {}",
                dotted(recorded_abi),
                dotted(abi)
            ));
        }
        let broken: Vec<String> = recorded
            .iter()
            .filter_map(|(key, was)| match signatures.get(key) {
                Some(is) if is == was => None,
                Some(is) => Some(format!("{} is `{is}`, was `{was}`", name(key))),
                None => Some(format!("{} is gone, was `{was}`", name(key))),
            })
            .collect();
        if abi == recorded_abi && !broken.is_empty() {
            return Err(format!(
                "programs of version {} would break, undo this or raise the version of the workspace above it:\n  {}",
                dotted(abi),
                broken.join("\n  ")
            ));
        }
    }
    let lines: String = signatures.iter().map(|(key, of)| format!("{}: {of}\n", name(key))).collect();
    Ok(format!("{HEAD}version: {}\n{lines}", dotted(abi)))
}

/// The part of a version that changes with the ABI: major, and minor while that is 0.
fn abi(version: &str) -> Result<(u32, u32), String> {
    let numbers: Vec<u32> = version.split('.').filter_map(|part| part.parse().ok()).collect();
    match numbers[..] {
        [0, minor, ..] => Ok((0, minor)),
        [major, ..] => Ok((major, 0)),
        [] => Err(format!("{version:?} is no version")),
    }
}

fn dotted((major, minor): (u32, u32)) -> String {
    format!("{major}.{minor}")
}

fn name((name, place): &(String, Option<usize>)) -> String {
    place.map_or_else(|| name.clone(), |place| format!("{name}[{place}]"))
}

/// Version and signatures of a list.
fn read(list: &str) -> Result<((u32, u32), Signatures), String> {
    let mut lines = list.lines().filter(|line| !line.starts_with('#'));
    let version = lines.next().and_then(|line| line.strip_prefix("version: "));
    let version = abi(version.ok_or_else(|| format!("{PATH} does not begin with its version"))?)?;
    let entry = |line: &str| {
        let (name, of) = line.split_once(": ")?;
        let key = match name.strip_suffix(']').and_then(|name| name.split_once('[')) {
            Some((name, place)) => (name.to_owned(), Some(place.parse().ok()?)),
            None => (name.to_owned(), None),
        };
        Some((key, of.to_owned()))
    };
    let signatures = lines.map(|line| entry(line).ok_or_else(|| format!("{PATH}: {line:?} is no signature")));
    Ok((version, signatures.collect::<Result<_, _>>()?))
}

/// Functions of a header: name, what it returns, and its arguments as they are declared.
pub fn functions(header: &str) -> Result<Vec<(String, String, Vec<String>)>, String> {
    let split = |((name, place), of): ((String, Option<usize>), String)| {
        let (returned, arguments) = of.split_once('(').filter(|(to, _)| place.is_none() && !to.is_empty())?;
        let arguments = arguments.strip_suffix(')').filter(|of| !of.starts_with('*'))?;
        let arguments = arguments.split(',').map(|of| of.trim().to_owned()).collect();
        Some((name, returned.trim().to_owned(), arguments))
    };
    Ok(of_header(header)?.into_iter().filter_map(split).collect())
}

/// Constants, types, fields and functions of a header as cbindgen writes it.
fn of_header(header: &str) -> Result<Signatures, String> {
    let mut found = Signatures::new();
    let mut code = String::new();
    let mut only_cpp = false;
    for line in without_block_comments(header).lines() {
        let line = line.split("//").next().unwrap_or_default().trim();
        if let Some(directive) = line.strip_prefix('#') {
            only_cpp = directive.starts_with("ifdef __cplusplus");
            if let Some((name, value)) =
                directive.strip_prefix("define ").and_then(|rest| rest.split_once(' '))
                && !name.starts_with("AXW_VERSION")
            {
                found.insert((name.to_owned(), None), value.trim().to_owned());
            }
        } else if !only_cpp {
            code.push_str(line);
            code.push(' ');
        }
    }
    for declaration in declarations(&code) {
        declared(&declaration, &mut found).ok_or_else(|| format!("the header declares {declaration:?}"))?;
    }
    Ok(found)
}

fn without_block_comments(text: &str) -> String {
    let mut parts = text.split("/*");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |kept, part| kept + part.split_once("*/").map_or("", |(_, rest)| rest))
}

/// Declarations without their semicolon, in one spelling of white space; those inside braces stay together.
fn declarations(code: &str) -> Vec<String> {
    let (mut all, mut depth, mut from) = (Vec::new(), 0_usize, 0);
    for (at, letter) in code.char_indices() {
        match letter {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            ';' if depth == 0 => {
                all.push(&code[from..at]);
                from = at + 1;
            }
            _ => {}
        }
    }
    all.push(&code[from..]);
    let spelled = |of: &str| of.split_whitespace().collect::<Vec<_>>().join(" ").replace("( ", "(");
    all.into_iter().map(spelled).filter(|of| !of.is_empty()).collect()
}

/// Adds the contents of one declaration; nothing if it is no kind of declaration in our header.
fn declared(declaration: &str, found: &mut Signatures) -> Option<()> {
    let is_ours = |name: &str| name.starts_with("axw_");
    if let Some(of) = declaration.strip_prefix("typedef struct ") {
        if let Some((fields, name)) = of.strip_prefix("{ ").and_then(|of| of.rsplit_once("} ")) {
            for (place, field) in
                fields.split_terminator(';').filter(|field| !field.trim().is_empty()).enumerate()
            {
                found.insert((name.to_owned(), Some(place)), field.trim().to_owned());
            }
            return is_ours(name).then_some(());
        }
        let (tag, name) = of.split_once(' ')?;
        found.insert((name.to_owned(), None), "handle".into());
        return (is_ours(name) && tag == name).then_some(());
    }
    let (head, arguments) = declaration.split_once('(')?;
    if let Some(returned) = head.strip_prefix("typedef ") {
        let (name, arguments) = arguments.strip_prefix('*')?.split_once(')')?;
        found.insert((name.to_owned(), None), format!("{returned}(*){arguments}"));
        return is_ours(name).then_some(());
    }
    let start = head.rfind([' ', '*'])? + 1;
    let (returned, name) = head.split_at(start);
    found.insert((name.to_owned(), None), format!("{returned}({arguments}").replace(" (", "("));
    is_ours(name).then_some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    const HEADER: &str = "/* A header. */\n#ifndef AXLEWRIGHT_H\n#define AXLEWRIGHT_H\n#define AXW_VERSION_MINOR 1\n/// Good; one.\n#define AXW_OK 0\n\
        typedef struct axw_sheet axw_sheet;\n\
        /// Told (done); goes on.\ntypedef int32_t (*axw_progress)(size_t done, void *context);\n\
        typedef struct {\n  /// Bytes.\n  size_t size;\n  double sag;\n  int32_t verdict;\n} axw_x_result;\n\
        #ifdef __cplusplus\nextern \"C\" {\n#endif // __cplusplus\n\
        int32_t axw_x(double load,\n              const char *const *names, axw_x_result *result);\nconst char *axw_version(void);\n\
        #ifdef __cplusplus\n}  // extern \"C\"\n#endif\n#endif /* AXLEWRIGHT_H */\n";

    const LIST: &str = "version: 0.1\n\
        AXW_OK: 0\n\
        axw_progress: int32_t (*)(size_t done, void *context)\n\
        axw_sheet: handle\n\
        axw_version: const char *(void)\n\
        axw_x: int32_t(double load, const char *const *names, axw_x_result *result)\n\
        axw_x_result[0]: size_t size\n\
        axw_x_result[1]: double sag\n\
        axw_x_result[2]: int32_t verdict\n";

    #[test]
    fn a_header_gives_its_list_and_goes_with_it() {
        let list = next(None, HEADER, "0.1.7").unwrap();
        assert_eq!(list, format!("{HEAD}{LIST}"));
        assert_eq!(next(Some(&list), HEADER, "0.1.8").unwrap(), list);
    }

    #[test]
    fn an_addition_extends_the_list() {
        let header = HEADER.replace(
            "} axw_x_result;",
            "double more;\n} axw_x_result;\nvoid axw_y(void);\n#define AXW_NEW 9\n;",
        );
        let list = next(Some(LIST), &header, "0.1.1").unwrap();
        let added = ["axw_x_result[3]: double more", "axw_y: void(void)", "AXW_NEW: 9"];
        for line in LIST.lines().chain(added) {
            assert!(list.lines().any(|one| one == line), "{line} is missing in {list}");
        }
        assert_eq!(list.lines().count(), LIST.lines().count() + added.len() + HEAD.lines().count());
    }

    #[test]
    fn what_is_changed_removed_or_reordered_is_refused_until_the_version_is_raised() {
        let broken = [
            ("double load", "float load", "axw_x is `int32_t(float load, "),
            ("double load", "double mass", "axw_x is `int32_t(double mass, "),
            ("int32_t axw_x(", "int64_t axw_x(", "axw_x is `int64_t(double load, "),
            ("const char *axw_version(void);", "", "axw_version is gone, was `const char *(void)`"),
            ("AXW_OK 0", "AXW_OK 1", "AXW_OK is `1`, was `0`"),
            (
                "double sag;\n  int32_t verdict;",
                "int32_t verdict;\n  double sag;",
                "axw_x_result[1] is `int32_t verdict`, was `double sag`",
            ),
            (
                "double sag;\n",
                "double sag;\n  double more;\n",
                "axw_x_result[2] is `double more`, was `int32_t verdict`",
            ),
            ("  int32_t verdict;\n", "", "axw_x_result[2] is gone, was `int32_t verdict`"),
            ("size_t done, void *context", "size_t done", "axw_progress is `int32_t (*)(size_t done)`"),
            ("typedef struct axw_sheet axw_sheet;\n", "", "axw_sheet is gone, was `handle`"),
        ];
        for (was, is, told) in broken {
            assert_eq!(HEADER.matches(was).count(), 1, "{was}");
            let header = HEADER.replace(was, is);
            for version in ["0.1.0", "0.1.99"] {
                let error = next(Some(LIST), &header, version).unwrap_err();
                assert!(error.contains(told), "{error} does not say {told}");
                assert_eq!(error.matches("was `").count(), 1 + usize::from(is.ends_with("sag;")), "{error}");
            }
            for version in ["0.2.0", "1.0.0"] {
                let list = next(Some(LIST), &header, version).unwrap();
                assert_eq!(next(Some(&list), &header, version).unwrap(), list);
                assert!(list.contains(&format!("version: {}\n", &version[..3])));
                assert!(next(Some(&list), &header, "0.1.9").unwrap_err().contains("the workspace of 0.1"));
            }
        }
    }

    #[test]
    fn from_version_1_the_minor_version_does_not_help() {
        let list = next(None, HEADER, "1.4.0").unwrap();
        let header = HEADER.replace("AXW_OK 0", "AXW_OK 1");
        assert!(next(Some(&list), &header, "1.5.0").is_err());
        assert!(next(Some(&list), &header, "2.0.0").is_ok());
    }

    #[test]
    fn what_is_not_understood_is_refused() {
        for (header, told) in
            [("int x;", "the header declares \"int x\""), ("enum { A };", "the header declares")]
        {
            assert!(next(None, header, "0.1.0").unwrap_err().contains(told), "{header}");
        }
        assert!(
            next(Some("axw_x: int"), HEADER, "0.1.0")
                .unwrap_err()
                .contains("does not begin with its version")
        );
        assert!(
            next(Some("version: 0.1\naxw_x"), HEADER, "0.1.0")
                .unwrap_err()
                .contains("\"axw_x\" is no signature")
        );
    }
}
