// SPDX-License-Identifier: BSD-3-Clause

package page

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plain reports whether a text is of printing characters of ASCII alone, as most are.
func plain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// clean returns a text with a question mark for every character that does not print: one that moves the cursor,
// turns the direction of the line, or is none at all. White space of any kind is a space.
func clean(s string) string {
	if plain(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == utf8.RuneError, !unicode.IsGraphic(r):
			return '?'
		}
		return r
	}, s)
}

// inASCII names what a plain printer cannot print. The order matters: "°C" comes before "°".
var inASCII = []string{
	"±", "+/-", "×", "x", "°C", "deg C", "°F", "deg F", "°", " deg", "–", "-", "—", "-", "−", "-", "…", "...", "µ", "u", "³", "3", "²", "2", "’", "'",
}

// single returns a text with one space between its words and none about them.
func single(s string) string {
	if strings.Contains(s, "  ") || strings.HasPrefix(s, " ") || strings.HasSuffix(s, " ") {
		return strings.Join(strings.Fields(s), " ")
	}
	return s
}

// ascii returns a text for a printer that knows no other characters; what has no name there is a question mark.
func ascii(s string) string {
	s = strings.NewReplacer(inASCII...).Replace(s)
	return strings.Map(func(r rune) rune {
		if r >= utf8.RuneSelf {
			return '?'
		}
		return r
	}, s)
}

// wide is what takes two columns of a terminal: the ideographs, syllables and full-width forms of the Far East,
// and the pictographs. After Unicode Standard Annex 11, whole blocks at a time.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115f, Stride: 1}, {Lo: 0x2e80, Hi: 0x303e, Stride: 1}, {Lo: 0x3041, Hi: 0xa4cf, Stride: 1},
		{Lo: 0xac00, Hi: 0xd7a3, Stride: 1}, {Lo: 0xf900, Hi: 0xfaff, Stride: 1}, {Lo: 0xfe30, Hi: 0xfe6f, Stride: 1},
		{Lo: 0xff00, Hi: 0xff60, Stride: 1}, {Lo: 0xffe0, Hi: 0xffe6, Stride: 1},
	},
	R32: []unicode.Range32{{Lo: 0x1f300, Hi: 0x1faff, Stride: 1}, {Lo: 0x20000, Hi: 0x3fffd, Stride: 1}},
}

// width returns how many columns a text takes.
func width(s string) int {
	if plain(s) {
		return len(s)
	}
	n := 0
	for _, r := range s {
		n += runeWidth(r)
	}
	return n
}

func runeWidth(r rune) int {
	switch {
	case r < 0x300: // nearly all there is
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me):
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}

// cut divides a text where its first columns end; what is no more than those is left whole.
func cut(s string, columns int) (head, tail string) {
	n := 0
	for i, r := range s {
		if n += runeWidth(r); n > columns && i > 0 {
			return s[:i], s[i:]
		}
	}
	return s, ""
}
