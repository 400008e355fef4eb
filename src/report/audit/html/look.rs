//! The style sheet: light, dark where the reader wants it, and black on white on paper.
//!
//! Contrast of text against what is behind it is 7 : 1 and more, and that of what is drawn 3 : 1.

use std::fmt::Write;

/// The colours of one surrounding.
struct Colours {
    paper: &'static str,
    card: &'static str,
    ink: &'static str,
    soft: &'static str,
    /// Lines that only help the eye.
    faint: &'static str,
    /// What is drawn of the numbers.
    drawn: &'static str,
    /// The field between limits, and the wider one around it.
    field: &'static str,
    outer: &'static str,
    /// What lies above the limits.
    out: &'static str,
}

const LIGHT: Colours = Colours {
    paper: "#fbfaf6",
    card: "#ffffff",
    ink: "#16202a",
    soft: "#3f4a55",
    faint: "#c9c5b8",
    drawn: "#1d5a6b",
    field: "#e4ddc8",
    outer: "#f1ecdf",
    out: "#8f1010",
};

const DARK: Colours = Colours {
    paper: "#12171c",
    card: "#1b232b",
    ink: "#edf1f4",
    soft: "#bcc6cf",
    faint: "#45505a",
    drawn: "#8ecbdb",
    field: "#4a4230",
    outer: "#302f2a",
    out: "#ffb0a6",
};

const PRINT: Colours = Colours {
    paper: "#ffffff",
    card: "#ffffff",
    ink: "#000000",
    soft: "#000000",
    faint: "#999999",
    drawn: "#000000",
    field: "#dddddd",
    outer: "#eeeeee",
    out: "#000000",
};

/// The rules, as text that XML takes as it is.
pub(super) fn style_sheet() -> String {
    let mut rules = format!(":root{{color-scheme:light dark;{}}}\n", variables(&LIGHT));
    let _ = writeln!(
        rules,
        "@media (prefers-color-scheme:dark){{:root{{{}}}}}",
        variables(&DARK)
    );
    rules.push_str(LAYOUT);
    let _ = writeln!(rules, "@media print{{\n:root{{{}}}\n{PAPER}}}", variables(&PRINT));
    rules
}

fn variables(colours: &Colours) -> String {
    let Colours {
        paper,
        card,
        ink,
        soft,
        faint,
        drawn,
        field,
        outer,
        out,
    } = colours;
    format!(
        "--paper:{paper};--card:{card};--ink:{ink};--soft:{soft};--faint:{faint};--drawn:{drawn};--field:{field};\
         --outer:{outer};--out:{out}"
    )
}

const LAYOUT: &str = "\
*{box-sizing:border-box}
body{margin:0 auto;padding:1rem;max-width:76rem;background:var(--paper);color:var(--ink);font:1rem/1.45 sans-serif}
h1{font-size:1.6rem;margin:.2rem 0 .6rem}
h2{font-size:1.2rem;margin:0 0 .6rem;padding-top:.7rem;border-top:3px solid var(--ink)}
h3{font-size:1rem;margin:1.2rem 0 .4rem}
section{margin:2rem 0 0}
p{max-width:44rem;margin:.5rem 0}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem;margin:.5rem 0}
dt{color:var(--soft)}
dd{margin:0;overflow-wrap:anywhere}
.caution{border:2px solid var(--ink);background:var(--card);padding:.6rem .8rem;max-width:46rem}
.tiles{display:grid;grid-template-columns:repeat(auto-fill,minmax(12.5rem,1fr));gap:.6rem;margin:.8rem 0;padding:0;list-style:none}
.tiles li{background:var(--card);border-left:5px solid var(--drawn);padding:.4rem .7rem}
.tiles b{display:block;font-size:1.35rem}
.tiles span{display:block;color:var(--soft);font-size:.88rem}
.pair{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem;align-items:start}
@media (min-width:62rem){.pair{grid-template-columns:minmax(0,34rem) minmax(0,1fr)}}
figure{margin:0;background:var(--card);padding:.5rem}
svg{display:block;width:100%;max-width:36rem;height:auto}
.scroll{overflow-x:auto}
table{border-collapse:collapse;font-size:.9rem}
caption{text-align:left;color:var(--soft);padding-bottom:.3rem}
th,td{text-align:right;padding:.2rem .6rem;border-bottom:1px solid var(--faint);white-space:nowrap;font-variant-numeric:tabular-nums}
thead th{vertical-align:bottom;white-space:normal}
th:first-child{text-align:left}
tbody th{font-weight:normal}
.words td{text-align:left}
.note,.more{color:var(--soft);font-size:.9rem}
ul.found{margin:.3rem 0;padding-left:1.1rem}
ul.found li,ol.first li{margin:.35rem 0}
code{font-size:.85rem;overflow-wrap:anywhere}
.id{display:inline-block;max-width:100%}
svg text{font:12px sans-serif;fill:var(--ink)}
@media (max-width:30rem){svg text{font-size:13.5px}}
svg .soft{fill:var(--soft)}
.axis{stroke:var(--ink);stroke-width:1.2;fill:none}
.grid{stroke:var(--faint);stroke-width:.8;fill:none}
.line{stroke:var(--drawn);stroke-width:2;fill:none}
.all{stroke:var(--ink);stroke-width:1.4;stroke-dasharray:6 4;fill:none}
.limit{stroke:var(--soft);stroke-width:1.2;fill:none}
.field{fill:var(--field)}
.outer{fill:var(--outer)}
.point{fill:var(--drawn);stroke:var(--card);stroke-width:1}
.hollow{fill:var(--card);stroke:var(--drawn);stroke-width:1.6}
.out{fill:var(--out);stroke:var(--card);stroke-width:1}
.below{fill:var(--drawn);stroke:var(--card);stroke-width:1}
.way{stroke:var(--drawn);stroke-opacity:.55;fill:none}
.back{stroke-dasharray:5 4}
.stop{fill:var(--drawn)}
.stay{fill:var(--ink)}
";

const PAPER: &str = "\
body{max-width:none;padding:0;font-size:10pt}
.pair{display:block}
figure,.tiles li,tr,h2,h3{break-inside:avoid}
h2,h3{break-after:avoid}
.scroll{overflow:visible}
table{font-size:8pt}
th,td{white-space:normal;padding:.1rem .35rem}
thead{display:table-header-group}
section>p{break-inside:avoid;break-after:avoid}
svg{max-width:12cm}
";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::contrast::contrast;

    #[test]
    fn text_and_drawing_stand_out_from_what_is_behind_them() {
        for colours in [LIGHT, DARK, PRINT] {
            for behind in [colours.paper, colours.card] {
                for text in [colours.ink, colours.soft] {
                    assert!(contrast(text, behind) >= 7.0, "{text} on {behind}");
                }
            }
            for behind in [colours.card, colours.field, colours.outer] {
                for drawn in [colours.drawn, colours.out, colours.soft] {
                    assert!(contrast(drawn, behind) >= 3.0, "{drawn} on {behind}");
                }
            }
        }
    }

    #[test]
    fn paper_gets_black_on_white_whatever_the_reader_s_screen_is() {
        let rules = style_sheet();
        let (before, print) = rules.split_once("@media print{").unwrap();
        assert!(before.contains("@media (prefers-color-scheme:dark){"));
        assert!(print.contains("--paper:#ffffff") && print.contains("--ink:#000000"));
        // Inside the style element XML knows no text but this.
        assert!(!rules.contains(['<', '&']));
    }
}
