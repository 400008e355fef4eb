//! The style sheet: light, dark where the reader wants it, and black on white on paper.
//!
//! No meaning is carried by a colour alone. Contrast of text against what is behind it is 7 : 1 and more.

use std::fmt::Write;

use super::super::layout::Style;

/// The colours of one surrounding.
struct Colours {
    paper: &'static str,
    card: &'static str,
    verdict: &'static str,
    ink: &'static str,
    soft: &'static str,
    danger: &'static str,
}

const LIGHT: Colours = Colours {
    paper: "#fbfaf6",
    card: "#ffffff",
    verdict: "#f3ecd9",
    ink: "#16202a",
    soft: "#3f4a55",
    danger: "#8f1010",
};

const DARK: Colours = Colours {
    paper: "#12171c",
    card: "#1b232b",
    verdict: "#332d1c",
    ink: "#edf1f4",
    soft: "#bcc6cf",
    danger: "#ffb0a6",
};

const PRINT: Colours = Colours {
    paper: "#ffffff",
    card: "#ffffff",
    verdict: "#ffffff",
    ink: "#000000",
    soft: "#000000",
    danger: "#000000",
};

/// The rules, as text that XML takes as it is.
pub(super) fn style_sheet() -> String {
    let mut rules = String::from("text{font-family:sans-serif}\n");
    for style in Style::ALL {
        let letters = style.letters();
        let weight = if letters.bold { ";font-weight:bold" } else { "" };
        let _ = writeln!(
            rules,
            ".{}{{font-size:{}px{weight}}}",
            style.class(),
            letters.size
        );
    }
    rules.push_str(
        ".means{font-style:italic}\n\
         .box{stroke-width:1.3}\n\
         .verdict .box{stroke-width:2.8}\n\
         .unknown{stroke-dasharray:3 3}\n\
         .trim,.behind,.bound{stroke-width:1.1}\n\
         .wire,.arm{stroke-width:1.4}\n\
         .doubt .wire{stroke-dasharray:6 4}\n\
         .after .wire{stroke-dasharray:1.5 4;stroke-width:2}\n\
         .bar{stroke-width:4}\n\
         .rule{stroke-width:.8}\n\
         .trim,.behind,.wire,.arm,.bar,.bound,.rule{fill:none}\n",
    );
    rules.push_str(&coloured(&LIGHT));
    let _ = write!(
        rules,
        "@media (prefers-color-scheme:dark){{\n{}}}\n",
        coloured(&DARK)
    );
    let _ = write!(rules, "@media print{{\n{}}}\n", coloured(&PRINT));
    rules
}

fn coloured(colours: &Colours) -> String {
    let Colours {
        paper,
        card,
        verdict,
        ink,
        soft,
        danger,
    } = colours;
    format!(
        ".paper{{fill:{paper}}}\n\
         text{{fill:{ink}}}\n\
         .name,.mark,.means{{fill:{soft}}}\n\
         .danger,.warning{{fill:{danger}}}\n\
         .box{{fill:{card};stroke:{ink}}}\n\
         .verdict .box{{fill:{verdict}}}\n\
         .hole{{fill:{paper};stroke:{ink}}}\n\
         .head-of,.rivet{{fill:{ink}}}\n\
         .trim,.behind,.wire,.arm,.bar,.bound,.rule{{stroke:{ink}}}\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::contrast::contrast;

    #[test]
    fn every_text_stands_out_from_what_is_behind_it() {
        // The extremes that WCAG gives.
        assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-9);
        for colours in [LIGHT, DARK, PRINT] {
            for text in [colours.ink, colours.soft, colours.danger] {
                for behind in [colours.paper, colours.card, colours.verdict] {
                    let contrast = contrast(text, behind);
                    assert!(contrast >= 7.0, "{text} on {behind}: {contrast}");
                }
            }
        }
    }

    #[test]
    fn paper_gets_black_on_white_whatever_the_reader_s_screen_is() {
        let rules = style_sheet();
        let (before, print) = rules.split_once("@media print{").unwrap();
        assert!(before.contains("@media (prefers-color-scheme:dark){"));
        assert!(print.contains("text{fill:#000000}") && print.contains(".paper{fill:#ffffff}"));
    }
}
