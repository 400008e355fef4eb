//! What an author wrote.
mod yaml;
#[cfg(test)]
mod tests {
    use super::yaml::*;
    use crate::source::*;
    use serde::Deserialize;
    #[derive(Debug, Deserialize)]
    struct R { title: Option<At<String>>, minutes: Option<f64>, sub: Option<Entries<Keyed<S>>> , list: Option<Vec<At<String>>>}
    #[derive(Debug, Deserialize)]
    struct S { a: Option<At<String>>, b: Option<u32> , m: Option<Entries<At<String>>>}
    fn t(s: &str) { 
        let f = SourceFile::new("x", s);
        println!("---\n{s}\n=> {:?}", read::<Entries<Keyed<R>>>(FileId(0), &f).map_err(|e| (e, )));
    }
    #[test] fn x() {
        t("a:\n  title: Hi\n  titel: x\n  title: again\n  minutes: 4\n");
        t("a:\n  sub: {x: {a: 5, m: { blue: 1 }}, x: {c: 1}}\n");
        t("a: 5\n");
        t("a:\n  minutes: x\n");
        t("a:\n  minutes: .inf\n");
        t("a:\n  title: .inf\n");
        t("a:\n  title: [x]\n");
        t("a:\n  sub: [x]\n");
        t("a:\n  title: &x y\n  list: [*x]");
        t("a:\n  title: !!str y\n");
        t("a:\n  title: !!python/object y\n");
        t("a:\n  title: !foo y\n");
        t("a:\n  <<: {title: x}\n");
        t("a:\n  title: x\n---\nb: 5\n");
        t("");
        t("# only\n");
        t("a:\n  title:\n  minutes: 3");
        t("a:\n  title: \"\\e[2J\"\n");
        t("a:\n  title: 'x\n");
        t("a:\n title: x\n  minutes: 3\n");
        t("a:\n\ttitle: x\n");
        t("a:\n  title: a: b\n");
        t("a:\n  title: %x\n");
        t("a:\n  sub: {x: {m: {below 5 V, above 3 V: foo}}}\n");
        t("a:\n  list: [1.50, yes, 0o14]\n");
        t("? [a]\n: b\n");
        t(&format!("a: {}", "[".repeat(20000)));
        t(&format!("a: {}", "{".repeat(20000)));
        t(&format!("{}", "? ".repeat(20000)));
        t(&format!("{}", "- ".repeat(20000)));
        t("a:\n  title: |\n    x\n    y\n  minutes: 2\n");
        t("a:\n  title: x\u{0}y\n");
    }
}
