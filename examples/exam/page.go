// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"html/template"
	"io"
	"strings"
	"unicode/utf8"
)

// width is how many characters go into a line.
const width = 96

// wrap breaks a text into lines, each after the first with the indent.
func wrap(s, indent string) string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width-len(indent) {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return strings.Join(append(lines, line), "\n"+indent)
}

const (
	invented = "All numbers are invented: a village workshop that keeps irrigation-pump engines running."
	caution  = "The maker's manual, local rules and a qualified machinist outrank any answer here."
)

func (p paper) text(w io.Writer, answers bool) error {
	var b strings.Builder
	if answers {
		fmt.Fprintf(&b, "ANSWERS TO PAPER %d\n", p.Seed)
	} else {
		fmt.Fprintf(&b, "PAPER %d\n\nName ______________________________   Date ______________\n\n%s\n", p.Seed, wrap(invented, ""))
	}
	for i, q := range p.Questions {
		fmt.Fprintf(&b, "\n%2d  %s\n", i+1, q.Title)
		if !answers {
			fmt.Fprintf(&b, "    %s\n", wrap(q.Text, "    "))
			for _, a := range q.Answers {
				fmt.Fprintf(&b, "\n    %s: ____________ %s\n", a.What, a.Unit)
			}
			continue
		}
		for _, line := range q.Working {
			fmt.Fprintf(&b, "    %s\n", wrap(line, "      "))
		}
		for _, a := range q.Answers {
			fmt.Fprintf(&b, "    %s: %s; by a second way %s\n", a.What, a.Text(), a.text(a.Second))
		}
	}
	fmt.Fprintf(&b, "\n%s\n", caution)
	_, err := io.WriteString(w, b.String())
	return err
}

var page = template.Must(template.New("paper").Parse(`<!DOCTYPE html>
<html lang="en">
<meta charset="utf-8">
<title>{{if .Answers}}Answers to paper{{else}}Paper{{end}} {{.Seed}}</title>
<style>
body { font: 12pt/1.4 serif; max-width: 45em; margin: 2em auto; }
li { margin: 0 0 1.2em; break-inside: avoid; }
.blank { display: inline-block; width: 8em; border-bottom: 1px solid; }
</style>
<h1>{{if .Answers}}Answers to paper{{else}}Paper{{end}} {{.Seed}}</h1>
{{if not .Answers}}<p>Name <span class="blank"></span> Date <span class="blank"></span></p>
<p>{{.Invented}}</p>
{{end}}<ol>
{{$answers := .Answers}}{{range .Questions}}<li><b>{{.Title}}</b>
{{if $answers}}{{range .Working}}<br>{{.}}
{{end}}{{range .Answers}}<br>{{.What}}: <b>{{.Text}}</b>
{{end}}{{else}}<p>{{.Text}}</p>
{{range .Answers}}<p>{{.What}}: <span class="blank"></span> {{.Unit}}</p>
{{end}}{{end}}</li>
{{end}}</ol>
<p>{{.Caution}}</p>
</html>
`))

func (p paper) html(w io.Writer, answers bool) error {
	return page.Execute(w, struct {
		paper
		Answers           bool
		Invented, Caution string
	}{p, answers, invented, caution})
}
