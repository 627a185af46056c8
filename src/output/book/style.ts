/**
 * The book's style sheet: one column on a screen, pages with running heads in print; two columns where the paper is as
 * wide as A3. Outcomes carry a mark and a word, never colour alone.
 */
import { cssText } from "./markup.ts";

export interface RunningHeads {
  readonly left: string;
  readonly right: string;
  readonly foot: string;
  /** Put before the number of the page. */
  readonly page: string;
}

/** The paper's size is left to whoever prints: A4, A3, letter or tabloid. */
export function bookStyle({ left, right, foot, page }: RunningHeads): string {
  return `
:root{--ink:#1d2a32;--second:#4f5c63;--rule:#b9c0c3;--paper:#fbfaf5;--red:#b5371f;--chalk:#1f5a8f}
*{box-sizing:border-box}
html{background:var(--paper);color:var(--ink);font:15px/1.45 "Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif;font-variant-numeric:tabular-nums}
body{max-width:60rem;margin:0 auto;padding:2rem 1.5rem 4rem}
h1{font-size:1.9rem;line-height:1.2;margin:0 0 .25rem}
h2{font-size:1.35rem;margin:2.5rem 0 .75rem;padding-bottom:.25rem;border-bottom:2px solid var(--ink)}
h3{font-size:1.05rem;margin:1.75rem 0 .5rem}
h2,h3{break-after:avoid}
p{margin:.35rem 0}
a{color:var(--chalk)}
.facts{color:var(--second);margin:0 0 1rem}
.governs{border:2px solid var(--ink);padding:.6rem .8rem;margin:1rem 0}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{text-align:left;vertical-align:top;padding:.2rem .6rem .2rem 0;border-bottom:1px solid var(--rule)}
th{font-weight:600;color:var(--second)}
.num{text-align:right}
td.num{white-space:nowrap}
.wide{overflow-x:auto}
thead{display:table-header-group}
tr{break-inside:avoid}
.entry{border-top:1px solid var(--rule);padding:.6rem 0}
.working{break-inside:avoid}
.entry header,.says{break-after:avoid}
.entry header{display:flex;flex-wrap:wrap;gap:0 .9rem;align-items:baseline}
.number{font-weight:600}
.outcome{white-space:nowrap;font-weight:600}
.fail .outcome,.cannot .outcome{color:var(--red)}
.place{color:var(--second);overflow-wrap:anywhere}
.says{font-size:1.02rem}
.working{margin:.4rem 0 .4rem 1rem;padding-left:.8rem;border-left:2px solid var(--rule)}
.like{margin:.4rem 0 .8rem 1rem}
.like .number{white-space:nowrap}
.like .place{min-width:8rem}
.like tr:target{outline:2px solid var(--chalk)}
.working dt{color:var(--second);font-size:.87rem}
.working dd{margin:0 0 .3rem}
.math{font-family:"DejaVu Sans Mono",ui-monospace,Menlo,Consolas,monospace;font-size:.9rem;overflow-wrap:anywhere}
.symbol{white-space:nowrap}
.shaky{font-style:italic}
.also{color:var(--second);white-space:nowrap}
.path{font-family:"DejaVu Sans Mono",ui-monospace,Menlo,Consolas,monospace;font-size:.85rem;overflow-wrap:anywhere}
.aside{color:var(--second)}
.sides{margin:.3rem 0 .3rem 1rem}
.contents{columns:2;column-gap:2rem;padding:0;list-style:none}
.contents li{break-inside:avoid;padding:.1rem 0}
@media (max-width:34rem){.contents{columns:1}body{padding:1rem .75rem 3rem}.entry table,.like table{font-size:.87rem}}
@media print{
html{background:#fff;color:#000;font-size:9pt;line-height:1.35}
.wide{overflow:visible}
body{max-width:none;padding:0}
a{color:inherit;text-decoration:none}
h2{break-before:page;margin-top:0}
.opening h2{break-before:auto;margin-top:1.2rem}
}
@media print and (min-width:240mm){.rules{columns:2;column-gap:10mm}}
@page{margin:20mm 15mm 18mm 20mm;
@top-left{content:${cssText(left)};font:8pt "Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif;color:#45494c}
@top-right{content:${cssText(right)};font:8pt "Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif;color:#45494c}
@bottom-left{content:${cssText(foot)};font:7.5pt "Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif;color:#45494c}
@bottom-right{content:${cssText(`${page} `)} counter(page) " / " counter(pages);font:8pt "Atkinson Hyperlegible Next","DejaVu Sans",Verdana,sans-serif;color:#45494c}
}
`;
}
