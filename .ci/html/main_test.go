// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"strings"
	"testing"
)

const head = `<!DOCTYPE html>
<html lang="en"><head><title>t</title><style>p { margin: 0; }</style></head><body>`

func page(body string) []byte { return []byte(head + body + "</body></html>\n") }

const picture = `<svg role="img" aria-labelledby="a b"><title id="a">t</title><desc id="b">d</desc><path fill="url(#a)"/></svg>`

func TestGood(t *testing.T) {
	n, err := check(page(picture + `<table><tbody><tr><td>on url(x) http://text.example &lt;script&gt;<wbr/></td></tr></tbody></table>`))
	if n != 1 || err != nil {
		t.Errorf("%d pictures, %v", n, err)
	}
}

func TestBad(t *testing.T) {
	for body, want := range map[string]string{
		`<p>`:                                             "not well formed",
		`<p><p>a</p></p>`:                                 "understood",
		`<table><tr></tr></table>`:                        "understood", // a browser adds the tbody
		`<p id="a"></p><p id="a"></p>`:                    "twice",
		`<p aria-labelledby="x"></p>`:                     `"x"`,
		`<script></script>`:                               "<script>",
		`<p onclick="x"></p>`:                             "onclick",
		`<a href="//x.example">x</a>`:                     "href",
		`<img src="data:,"/>`:                             "<img>",
		`<style>@import "x";</style>`:                     "style",
		`<!-- x -->`:                                      "comment",
		`<svg role="img"></svg>`:                          "<title>",
		strings.Replace(picture, "<desc", "<g", 1):        "well formed",
		strings.Replace(picture, ">d<", "> <", 1):         "<desc>",
		strings.Replace(picture, `"a b"`, `"a"`, 1):       "<desc>",
		strings.Replace(picture, `role="img"`, ``, 1):     "role",
		strings.Replace(picture, "url(#a)", "url(#n)", 1): `"n"`,
		strings.Replace(picture, "url(#a)", "url(x)", 1):  "fill",
	} {
		if _, err := check(page(body)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want something with %s", body, err, want)
		}
	}
}
