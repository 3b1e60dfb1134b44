// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"fmt"
	"os"

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
