//! How the job report looks: on a screen, light or dark, and on paper.

/// The style sheet. Nothing is told by colour alone: marks, words and outlines say it too.
pub(super) const STYLE: &str = "
:root { color-scheme: light dark; --ink: #1d2329; --soft: #59636e; --paper: #ffffff; --line: #c4ccd4;
  --band: #eef1f4; --here: #cfe3d4; --edge: #2f6b45; --warn: #9a3412; --head: #24506e; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e9ec; --soft: #a3adb8; --paper: #14181c; --line: #47515b;
  --band: #222930; --here: #244732; --edge: #86cfa0; --warn: #f0a37e; --head: #9cc7e4; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.2rem; max-width: 52rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 system-ui, sans-serif; }
h1 { font-size: 1.5rem; margin: 0 0 .2rem; }
h2 { font-size: 1.1rem; margin: 1.6rem 0 .5rem; color: var(--head); border-bottom: 2px solid var(--line); }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
p { margin: .3rem 0; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .1rem 1rem; margin: .5rem 0; }
dt { color: var(--soft); }
dd { margin: 0; overflow-wrap: anywhere; }
ul, ol { margin: .3rem 0; padding-left: 1.3rem; }
table { border-collapse: collapse; width: 100%; margin: .4rem 0; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid var(--line); }
th { color: var(--soft); font-weight: 600; }
td.number { white-space: nowrap; font-variant-numeric: tabular-nums; }
.result { border-left: .35rem solid var(--head); padding: .3rem .8rem; margin: .6rem 0; }
.stop { border-left-color: var(--warn); }
.urgency { font-weight: 700; }
.warn { color: var(--warn); font-weight: 700; }
.soft { color: var(--soft); font-size: .9rem; }
.hash { font: .8rem/1.3 ui-monospace, monospace; overflow-wrap: anywhere; }
figure { margin: .6rem 0 1rem; break-inside: avoid; }
figcaption { font-size: .95rem; }
svg { width: 100%; height: auto; display: block; }
svg text { font: 12px system-ui, sans-serif; fill: var(--ink); }
svg .band { fill: var(--band); stroke: var(--line); }
svg .here { fill: var(--here); stroke: var(--edge); stroke-width: 2; }
svg .mark { fill: var(--ink); }
svg .before { fill: none; stroke: var(--ink); stroke-width: 1.5; }
svg .margin { stroke: var(--ink); stroke-width: 1.5; }
@media print {
  :root { color-scheme: light; --ink: #000; --soft: #333; --paper: #fff; --line: #999; --band: #f2f2f2; --here: #dcdcdc;
    --edge: #000; --warn: #000; --head: #000; }
  @page { margin: 14mm; }
  body { padding: 0; max-width: none; font-size: 9.5pt; line-height: 1.3; }
  h1 { font-size: 15pt; } h2 { font-size: 11pt; margin: .8rem 0 .3rem; break-after: avoid; } h3 { break-after: avoid; }
  .strips { columns: 3; column-gap: 6mm; } .asked, .left { columns: 2; column-gap: 6mm; }
  .soft { font-size: 7.5pt; line-height: 1.2; }
  .asked, .left, .strips { font-size: 7.5pt; line-height: 1.2; }
  figcaption { font-size: 7.5pt; } svg text { font-size: 17px; } figure p { margin: 0; }
  td, th { padding: .1rem .5rem .1rem 0; } figure { margin: 0 0 .4rem; } tr, li { break-inside: avoid; }
}
";
