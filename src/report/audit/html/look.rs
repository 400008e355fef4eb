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
    /// The edge of a box that holds more to the side.
    shade: &'static str,
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
    shade: "#9a958a",
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
    shade: "#7c8894",
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
    shade: "#ffffff",
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
    rules.push_str(NARROW);
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
        shade,
    } = colours;
    format!(
        "--paper:{paper};--card:{card};--ink:{ink};--soft:{soft};--faint:{faint};--drawn:{drawn};--field:{field};\
         --outer:{outer};--out:{out};--shade:{shade}"
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
.pair{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem 1.5rem;align-items:start}
.above figure{margin-bottom:1rem}
.tree{break-inside:avoid;padding-bottom:.8rem}
.tree h3{margin:0 0 .4rem}
@media (min-width:60rem){.pair{grid-template-columns:minmax(0,27rem) minmax(0,1fr)}.ways{columns:2;column-gap:1.5rem}}
@media (min-width:75rem){.pair{grid-template-columns:minmax(0,32rem) minmax(0,1fr)}}
figure{margin:0;background:var(--card);padding:.5rem;max-width:37rem}
svg{display:block;width:100%;max-width:36rem;height:auto}
.bar{width:12.5rem}
.scroll{position:relative;overflow-x:auto;margin:.5rem 0;background:linear-gradient(to right,var(--paper) 40%,transparent) 0 0/3rem 100% no-repeat local,\
linear-gradient(to left,var(--paper) 40%,transparent) 100% 0/3rem 100% no-repeat local,\
linear-gradient(to right,var(--shade),transparent) 0 0/1rem 100% no-repeat scroll,\
linear-gradient(to left,var(--shade),transparent) 100% 0/1rem 100% no-repeat scroll}
table{border-collapse:collapse;font-size:.9rem}
caption{text-align:left;color:var(--soft);padding-bottom:.3rem}
th,td{text-align:right;padding:.2rem .55rem;border-bottom:1px solid var(--faint);white-space:nowrap;font-variant-numeric:tabular-nums}
thead th{vertical-align:bottom;white-space:normal}
th:first-child,.words{text-align:left}
td.words{white-space:normal}
td.drawn{padding-top:0;padding-bottom:0}
tbody th{font-weight:normal}
.told{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.note,.more{color:var(--soft);font-size:.9rem}
.paper{display:none}
summary{cursor:pointer;padding:.3rem 0;font-size:.9rem}
ul.found{margin:.3rem 0;padding-left:1.1rem}
ul.found li,ol.first li{margin:.35rem 0}
code{font-size:.85rem;overflow-wrap:anywhere}
.id{display:inline-block;max-width:100%}
svg text{font:12px sans-serif;fill:var(--ink)}
svg .soft{fill:var(--soft)}
.axis{stroke:var(--ink);stroke-width:1.2;fill:none}
.grid{stroke:var(--faint);stroke-width:.8;fill:none}
.line{stroke:var(--drawn);stroke-width:2;fill:none}
.all{stroke:var(--ink);stroke-width:1.4;stroke-dasharray:6 4;fill:none}
.bar .all{stroke-dasharray:5 4}
.limit{stroke:var(--soft);stroke-width:1.2;fill:none}
.field{fill:var(--field)}
.outer{fill:var(--outer)}
.point{fill:var(--drawn);stroke:var(--card);stroke-width:1}
.hollow{fill:var(--card);stroke:var(--drawn);stroke-width:1.6}
.out{fill:var(--out);stroke:var(--card);stroke-width:1}
.below,.on{fill:var(--drawn);stroke:var(--card);stroke-width:1}
.way{stroke:var(--drawn);stroke-opacity:.55;fill:none}
.back{stroke-dasharray:5 4}
.stop{fill:var(--drawn)}
.stay{fill:var(--ink)}
";

/// What a narrow window changes. The first column of a table that scrolls stands still, so that a row keeps its name.
const NARROW: &str = "\
@media (max-width:58rem){th,td{padding:.2rem .3rem}table{font-size:.82rem}.wide td,.wide th{white-space:normal}.wide .drawn{padding:0}.bar{width:8.5rem}}
@media (max-width:40rem){
tr>:first-child{position:sticky;left:0;background:var(--paper);min-width:4.4rem;max-width:8rem;overflow-wrap:break-word}
.wide td{white-space:nowrap}
.wide caption::after{content:'more to the right \u{2192}';display:block;color:var(--ink)}
}
@media (max-width:30rem){figure svg text{font-size:13.5px}th,td{padding:.2rem}table{font-size:.78rem}}
";

/// What paper changes: what scrolls or opens on a screen is cut, and how much more there is stands in its place.
const PAPER: &str = "\
@page{margin:13mm}
body{max-width:none;padding:0;font-size:9pt;line-height:1.3}
p,.caution{max-width:none}
section{margin:5mm 0 0}
h1{font-size:15pt}
h2{font-size:12pt;margin:0 0 1mm;padding-top:1.5mm;border-top-width:1.5pt}
h3{font-size:9pt;margin:2mm 0 1mm}
.tiles{grid-template-columns:repeat(5,1fr);gap:2mm;margin:2mm 0}
.tiles li{padding:0 2mm;border-left-width:2pt}
.tiles b{font-size:12pt}
.tiles span,.note,.more{font-size:8pt}
.screen,.rest{display:none}
.paper{display:block}
span.paper{display:inline}
.pair{grid-template-columns:8.4cm minmax(0,1fr);gap:4mm}
.ways{columns:2;column-gap:4mm}
.tree,.pair,figure,.tiles li,.caution,tr,li,h2,h3{break-inside:avoid}
.long{break-inside:auto}
tbody tr:nth-child(-n+3),li:first-child{break-after:avoid}
tbody tr:last-child{break-before:avoid}
h2,h3,caption,thead,.note{break-after:avoid}
section>p{break-inside:avoid;break-after:avoid}
.more{break-before:avoid;break-after:auto}
figure{padding:0;max-width:8.4cm}
.bar{width:3.4cm}
figure svg text{font-size:13px}
.scroll{overflow:visible;background:none;margin:1mm 0}
table{font-size:8pt}
th,td,.wide td,.wide th{padding:.3mm 1mm}
.wide td,.wide tbody th{white-space:nowrap}
.wide .words{white-space:normal}
thead{display:table-header-group}
ul.found,ol.first{margin:1mm 0}
ul.found li,ol.first li{margin:.6mm 0}
code{font-size:7.5pt}
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
            for behind in [colours.paper, colours.card, colours.field, colours.outer] {
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
