// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"cmp"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"strings"

	"borewright.example/oversize/jobsheet/page"
)

var (
	//go:embed unpack.js
	unpack string // with which the script of every page begins
	//go:embed page.js
	script string
	//go:embed page.css
	style string
)

// A document is the page as it is served, or as a file of its own with the library inside.
type document struct {
	packed  string // the library, as pack writes it; "" where the page is served
	size    int    // of that, in bytes
	support string // the script that comes with the compiler, without which the library does not run in a browser
	own     string // the script of another page than the bench, and its style
	look    string
}

// policy says to the browser what the page is allowed: its own scripts and style, and to reach nobody but the program
// that serves it.
func (d document) policy() string {
	connect, wasm := "'self'", ""
	if d.packed != "" {
		connect, wasm = "'none'", " 'wasm-unsafe-eval'"
	}
	return fmt.Sprintf("default-src 'none'; script-src %s%s; style-src %s; connect-src %s; base-uri 'none'; form-action 'none'",
		hash(d.script()), wasm, hash(d.styles()), connect)
}

func hash(s string) string {
	sum := sha256.Sum256([]byte(s))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// charset is that of the page: a file of its own has a shorter one than the usual.
func (d document) charset() string {
	if d.packed != "" {
		return charset
	}
	return "utf-8"
}

func (d document) script() string { return d.support + unpack + cmp.Or(d.own, script) }

func (d document) styles() string {
	if d.look != "" {
		return d.look
	}
	return page.Style + fmt.Sprintf(":root { --void: %q; }\n", wordVoid) + style
}

// html returns the page.
func (d document) html() string {
	var b strings.Builder
	raw := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	raw(`<!DOCTYPE html>
<html lang="en-GB"><head><meta charset="%s"/><meta name="viewport" content="width=device-width, initial-scale=1"/>
`, d.charset())
	if d.packed != "" {
		raw(`<meta http-equiv="Content-Security-Policy" content="%s"/>`+"\n", text(d.policy()))
	}
	raw(`<title>%s</title><style>%s</style></head>
<body><header class="bar"><h1>%s</h1><p>%s</p><p id="kept"></p>
<div class="tools"><label class="button">%s<input type="file" id="open" accept=".json,application/json"/></label>`,
		text(wordTitle), d.styles(), text(wordTitle), text(wordLead), text(wordOpen))
	for _, b := range [][2]string{{"save", wordSave}, {"print", wordPrint}, {"new", wordNew}} {
		raw(`<button type="button" id="%s">%s</button>`, b[0], text(b[1]))
	}
	waiting := ""
	if d.packed != "" {
		waiting = wordWaiting
	}
	raw(`</div><noscript><p class="fault">%s</p></noscript></header>
<nav class="now" aria-label="%s"><a id="next" href="#head"></a><a href="#pane">%s</a></nav>
<main class="panes"><div><div id="head" role="status" tabindex="-1">%s</div><form id="form" aria-label="%s"></form></div>
<section id="pane" aria-label="%s" tabindex="0"><p id="banner" role="alert"></p><div id="sheet"><p class="sheet">%s</p></div></section></main>
<script type="application/json" id="words">%s</script>
`, text(wordNoScript), text(wordNow), text(wordSheet), text(waiting), text(wordForm), text(wordSheet), text(wordNoSheet), scriptWords(map[string]string{
		"stale": wordStale, "typing": wordTyping, "pending": wordPending, "failed": wordFailed, "kept": wordKept, "notKept": wordNotKept,
		"sure": wordSure, "noSheet": wordNoSheet,
	}))
	if d.packed != "" {
		raw(`<script type="text/plain" id="engine" data-size="%d">%s</script>`+"\n", d.size, d.packed)
	}
	raw("<script>%s</script>\n</body></html>\n", d.script())
	return b.String()
}

// scriptWords are the words that a script shows, with what it unpacks the library by.
func scriptWords(words map[string]string) string {
	words["old"], words["digits"] = wordOld, digits
	b, _ := json.Marshal(words) // which escapes what would end a script, and never fails with texts
	return string(b)
}
