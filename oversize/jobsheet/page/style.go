// SPDX-License-Identifier: BSD-3-Clause

package page

// Style is the style sheet that goes with [HTML]: the browser's own colours, light or dark as its user has them, and
// on paper black on white.
const Style = style

const style = `:root { color-scheme: light dark; }
.sheet { box-sizing: border-box; max-width: 62rem; margin: 0 auto; padding: .8rem; font: 1rem/1.4 system-ui, sans-serif; overflow-wrap: break-word; }
body { margin: 0; background: Canvas; color: CanvasText; }
.sheet h1, .sheet h2, .sheet h3, .sheet h4 { line-height: 1.2; margin: 1.2em 0 .4em; break-after: avoid; }
.sheet h1 { font-size: 1.5em; margin-top: 0; }
.sheet h2 { font-size: 1.25em; border-top: 2px solid; padding-top: .4em; }
.sheet h3 { font-size: 1.1em; }
.sheet h4 { font-size: 1em; }
.sheet .kind { margin: 0; letter-spacing: .05em; }
.sheet p { margin: .4em 0; }
.sheet ul { margin: .4em 0; padding-left: 1.4em; }
.sheet li, .sheet tr, .sheet figure, .sheet .caution, .sheet dl > div { break-inside: avoid; }
.sheet .checks { list-style: none; padding: 0; }
.sheet .checks label { display: flex; gap: .6em; padding: .25em 0; }
.sheet input { flex: none; width: 1.3em; height: 1.3em; margin: 0; }
.sheet .caution { border-left: .4em solid; padding-left: .6em; }
.sheet dl { margin: .4em 0; }
.sheet dd { margin: 0; }
.sheet .labels > div { display: flex; flex-wrap: wrap; gap: 0 .8em; }
.sheet .labels dt { min-width: 5.5em; font-weight: bold; }
.sheet .labels dd { flex: 1 1 14em; }
.sheet .form > div { display: inline-flex; gap: .6em; margin: .6em 1.6em 0 0; }
.sheet .blank { display: inline-block; width: 6em; max-width: 100%; height: 1.3em; border-bottom: 1px solid; vertical-align: bottom; }
.sheet .value { white-space: nowrap; }
.sheet .tight .value { white-space: normal; }
.sheet table { border-collapse: collapse; margin: .6em 0; font-variant-numeric: tabular-nums; }
.sheet caption { text-align: left; font-weight: bold; }
.sheet th, .sheet td { text-align: left; vertical-align: top; padding: .2em 1em .2em 0; border-bottom: 1px solid; }
.sheet thead th, .sheet thead td { vertical-align: bottom; border-bottom-width: 2px; }
.sheet tbody th { font-weight: 600; }
.sheet figure { display: inline-block; vertical-align: top; width: 90mm; max-width: 100%; margin: .6em 1.2em .6em 0; }
.sheet svg { display: block; max-width: 100%; height: auto; }
.sheet svg text { paint-order: stroke; stroke: Canvas; stroke-width: .8px; }
.sheet figcaption { font-size: .95em; }
.sheet figcaption p { margin: .2em 0; }
.sheet figcaption .title { font-weight: bold; }
@media screen and (max-width: 44rem) {
.sheet figure { margin-right: 0; }
.sheet .stack, .sheet .stack tbody, .sheet .stack tr, .sheet .stack th, .sheet .stack td, .sheet .stack caption { display: block; border: 0; padding: 0; }
.sheet .stack thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.sheet .stack tbody tr { border-top: 1px solid; padding: .3em 0; }
.sheet .stack td .value, .sheet .stack th .value { white-space: nowrap; }
.sheet .stack tbody td:empty { display: none; }
.sheet .stack [data-head]::before { content: attr(data-head); font-weight: normal; font-style: italic; }
}
@media print {
@page { size: A4; margin: 10mm; }
:root { color-scheme: light; }
.sheet { max-width: none; padding: 0; font-size: 9pt; line-height: 1.2; }
.sheet h1, .sheet h2, .sheet h3, .sheet h4 { margin: .7em 0 .2em; }
.sheet h2 { border-top-width: 1px; padding-top: .2em; }
.sheet p, .sheet ul, .sheet dl, .sheet table { margin: .2em 0; }
.sheet table { font-size: 8.5pt; }
.sheet th, .sheet td { padding: .05em .7em .05em 0; }
.sheet .checks label { padding: 0; }
.sheet .form > div { margin: .4em 1.2em 0 0; }
.sheet figure { width: 84.5mm; margin: 0 3mm 1mm 0; }
.sheet figcaption { font-size: 8.5pt; line-height: 1.15; }
}
`
