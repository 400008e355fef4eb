//! How the job report looks: on a screen, light or dark, and on paper.

/// The style sheet. Nothing is told by colour alone: marks, words and outlines say it too.
///
/// On paper no text is smaller than 8.5 points. The fonts named first there are of one width the world over, so that a call
/// which fits two sheets in one place fits them in all.
pub(super) const STYLE: &str = "
:root { color-scheme: light dark; --ink: #1d2329; --soft: #59636e; --paper: #ffffff; --line: #c4ccd4;
  --band: #eef1f4; --here: #cfe3d4; --edge: #2f6b45; --warn: #9a3412; --head: #24506e; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e9ec; --soft: #a3adb8; --paper: #14181c; --line: #47515b;
  --band: #222930; --here: #244732; --edge: #86cfa0; --warn: #f0a37e; --head: #9cc7e4; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.2rem; max-width: 60rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 system-ui, sans-serif; }
h1 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 .2rem; }
h2 { font-size: 1.2rem; margin: 1.8rem 0 .5rem; color: var(--head); border-bottom: 2px solid var(--line); }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
p { margin: .3rem 0; }
dl { margin: .5rem 0; }
dd { margin: 0; overflow-wrap: anywhere; }
dt { color: var(--soft); }
.facts { display: flex; flex-wrap: wrap; gap: .1rem 1.4rem; }
.facts div { display: flex; flex-wrap: wrap; gap: 0 .4rem; }
.facts dt::after { content: ':'; }
.record { display: grid; grid-template-columns: max-content 1fr; gap: .1rem 1rem; }
ul, ol { margin: .3rem 0; padding: 0; }
li { margin-left: 1.3rem; }
ol li { margin-left: 2.4rem; }
table { border-collapse: collapse; width: 100%; margin: .4rem 0; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid var(--line); }
th { color: var(--soft); font-weight: 600; }
.number { font-variant-numeric: tabular-nums; }
.result { border-left: .35rem solid var(--head); padding: .1rem .8rem; margin: .4rem 0; }
.stop { border-left-color: var(--warn); }
.warn { color: var(--warn); font-weight: 700; }
.soft, footer { color: var(--soft); font-size: .9rem; }
.hash { font-family: ui-monospace, monospace; font-size: .85rem; overflow-wrap: anywhere; }
.strips { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 25rem), 1fr)); gap: .6rem 2rem; }
figure { margin: 0; display: grid; grid-template-columns: 1fr 10rem; gap: 0 .6rem; align-items: center; break-inside: avoid; }
figcaption { overflow-wrap: anywhere; }
svg { width: 100%; height: auto; display: block; }
svg .band { fill: var(--band); stroke: var(--line); }
svg .here { fill: var(--here); stroke: var(--edge); stroke-width: 1.5; }
svg .mark { fill: var(--ink); }
svg .before { fill: none; stroke: var(--ink); }
svg .margin { stroke: var(--ink); }
@media (max-width: 30rem) { body { padding: .8rem; } figure { grid-template-columns: 1fr 6.5rem; }
  .record { grid-template-columns: 1fr; } }
@media print {
  :root { color-scheme: light; --ink: #000; --soft: #333; --paper: #fff; --line: #999; --band: #f2f2f2; --here: #dcdcdc;
    --edge: #000; --warn: #000; --head: #000; }
  @page { margin: 9mm; }
  body { padding: 0; max-width: none; font: 9.5pt/1.22 Arial, Helvetica, 'Liberation Sans', Arimo, sans-serif; }
  h1 { font-size: 14pt; } h2 { font-size: 11.5pt; margin: 1.8mm 0 .6mm; } h3 { font-size: 9.5pt; margin: 1.4mm 0 .3mm; }
  h2, h3 { break-after: avoid; } tr, li, dl div { break-inside: avoid; }
  p, ul, ol, dl, table { margin: .4mm 0; } li { margin-left: 3.5mm; } ol li { margin-left: 6.5mm; }
  th, td { padding: .3mm 2mm .3mm 0; } .result { padding: 0 2mm; margin: 1mm 0; }
  #office ~ *, #record ~ *, footer, .soft, .hash, .facts { font-size: 8.5pt; line-height: 1.1; }
  #office ~ h3 { font-size: 9pt; }
  .two { columns: 2; column-gap: 5mm; } .asked { columns: 3; column-gap: 3mm; }
  .auditor { break-inside: avoid; }
  .run li { display: inline; margin: 0; } .run li:not(:last-child)::after { content: '; '; }
  .facts { gap: 0 4mm; } .facts div { gap: 0 1mm; } .record { gap: 0 3mm; }
  .strips { columns: 2; column-gap: 6mm; display: block; }
  figure { grid-template-columns: 1fr 24mm; gap: 0 2mm; margin: 0 0 .5mm; }
}
";
