// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"regexp"
	"testing"

	"borewright.example/oversize/sleeve"
)

var classText = regexp.MustCompile(`^((H|JS|[fghkmnprstux]|js)([5-9]|1[01])|[JK][678]|[MNP]([6-9]|1[01]))$`)

// FuzzParseClass: any text is a class of the table and goes back to itself, or is refused.
func FuzzParseClass(f *testing.F) {
	for _, s := range []string{
		"H7", "s6", "h11", "js6", "JS7", "K8", // classes
		"H4", "S6", "J9", // not in the table
		"", "H", "7", "H07", "H+7", "H7 ", "Η7", "H\x007", // not a class
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := sleeve.ParseClass(s)
		if (err == nil) != classText.MatchString(s) {
			t.Fatalf("%q: %v, %v", s, c, err)
		}
		if err == nil && c.String() != s {
			t.Fatalf("%q goes back to %v", s, c)
		}
	})
}

// FuzzCautions: any text is a set of cautions that goes to one text and back, or is refused.
func FuzzCautions(f *testing.F) {
	for _, s := range []string{"", "even heat", "hot parts; even heat", "even heat; even heat", "; ", "even heat; "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var c, back sleeve.Cautions
		if c.UnmarshalText([]byte(s)) != nil {
			return
		}
		text, err := c.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := back.UnmarshalText(text); err != nil || back != c {
			t.Fatalf("%q is %v, then %v, %v", s, c, back, err)
		}
	})
}
