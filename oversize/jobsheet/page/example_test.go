// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"fmt"
	"os"
	"strings"

	"borewright.example/oversize/jobsheet/page"
)

// A document says what its parts are; the typist sees to lines, columns and numbers.
func ExampleText() {
	doc := page.Doc{Title: "BENCH CARD", Sections: []page.Section{{Title: "LATHE", Blocks: []page.Block{
		page.Check("Chuck key out of the chuck."),
		page.Table{Head: []string{"step", "to"}, Rows: [][]string{{"rough", "40.3 mm"}, {"finish", "40.0 mm"}}, Keys: 1},
		page.Caution("Swarf cuts: a hook, never the hand."),
	}}}}
	if err := (page.Text{}).Write(os.Stdout, doc); err != nil {
		fmt.Println(err)
	}
	// Output:
	// BENCH CARD
	//
	// 1  LATHE
	//   [ ] Chuck key out of the chuck.
	//   step     to
	//   rough    40.3 mm
	//   finish   40.0 mm
	//     ! Swarf cuts: a hook, never the hand.
}

// A fragment goes into a page of somebody's own, which holds the style.
func ExampleHTML() {
	doc := page.Doc{Title: "BENCH CARD", Sections: []page.Section{{Title: "LATHE", Blocks: []page.Block{
		page.Sentence("Turn to 40.0 ± 0.1 mm, <dry>."),
		page.Form{{Label: "turned to", Unit: "mm"}},
	}}}}
	if err := (page.HTML{Fragment: true}).Write(os.Stdout, doc); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <div class="sheet">
	// <header>
	// <h2>BENCH CARD</h2>
	// </header>
	// <section id="section-1">
	// <h3>1. LATHE</h3>
	// <p>Turn to <span class="value">40.0 ± 0.1 mm,</span> &lt;dry&gt;.</p>
	// <dl class="form">
	// <div><dt>turned to</dt><dd><span class="blank" role="img" aria-label="to be filled in"></span> mm</dd></div>
	// </dl>
	// </section>
	// </div>
}

// A picture is shapes in millimetres of paper, with what there is to see in words.
func ExamplePicture_WriteSVG() {
	p := page.Picture{Title: "A shaft", Description: "One reading, 40.02 mm, above the limit of 40.01 mm.", Notes: []string{"200 : 1"}, Width: 20, Height: 8, Shapes: []page.Shape{
		page.Line{Points: []page.Point{{X: 0, Y: 6}, {X: 20, Y: 6}}, Stroke: page.Dashed},
		page.Dot{At: page.Point{X: 10, Y: 4}, From: page.Point{X: 10, Y: 3}, To: page.Point{X: 10, Y: 5}, Text: "40.020 ± 0.005 mm"},
	}}
	var b strings.Builder
	if err := p.WriteSVG(&b); err != nil {
		fmt.Println(err)
	}
	for line := range strings.Lines(b.String()) {
		if strings.Contains(line, "path") && !strings.Contains(line, "pattern") {
			fmt.Print(line)
		}
	}
	// Output:
	// <path d="M0 6L20 6" stroke-width="0.35" stroke-dasharray="2 1.4"/>
	// <g><title>40.020 ± 0.005 mm</title><path d="M10 3L10 5M10.8 3L9.2 3M10.8 5L9.2 5"/><circle cx="10" cy="4" r="0.7" fill="currentColor" stroke="none"/></g>
}
