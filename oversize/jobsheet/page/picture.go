// SPDX-License-Identifier: BSD-3-Clause

package page

// A Picture is a drawing as data. Lengths are millimetres of paper, x to the right and y down from its upper
// left corner; where the paper is smaller than that, all of it shrinks alike. Nothing is said by colour.
type Picture struct {
	Title         string   // what it shows
	Description   string   // what there is to see, in words and figures, for those who cannot see it
	Notes         []string // its scale, its doubt, what was not read: printed below it
	Width, Height float64  // in mm
	Shapes        []Shape  // the later over the earlier
}

// A Shape is a [Line], [Circle], [Area], [Dot] or [Label].
type Shape interface{ shape() }

// A Point is a place on the paper.
type Point struct {
	X float64 // to the right, in mm
	Y float64 // down, in mm
}

// A Stroke is how a line is drawn, and so what it means.
type Stroke int8

// The strokes of lines.
const (
	Thin   Stroke = iota // what there is
	Thick                // what matters
	Dashed               // a limit, a size wanted
	Dotted               // what is only supposed, a form fitted between places read
)

type (
	// A Line goes from point to point, and back to the first where it is closed.
	Line struct {
		Points []Point // two at least
		Closed bool    // the last is joined to the first
		Stroke Stroke  // what it means
	}
	// A Circle is round.
	Circle struct {
		Centre Point   // of the circle
		Radius float64 // in mm
		Stroke Stroke  // what it means
	}
	// An Area is a band or range inside a closed line: toned, or hatched where nothing is known or allowed.
	Area struct {
		Points  []Point // of the line around it, which need not return to the first
		Hatched bool    // else toned
	}
	// A Dot is a value that was read or computed, between the ends of its doubt. Where those are the dot
	// itself there is no bar.
	Dot struct {
		At       Point  // of the value
		From, To Point  // the ends of the bar
		Text     string // the value with its unit, for who points at it or has it read aloud
	}
	// A Label is text beside the shapes, of one line. All letters are equally wide.
	Label struct {
		At     Point // of its foot: the left end, middle or right end of the line that the letters stand on
		Text   string
		Anchor Anchor
	}
)

// An Anchor is the end of a label that is held in place.
type Anchor int8

// The anchors of a label.
const (
	Start Anchor = iota
	Middle
	End
)

func (Line) shape()   {}
func (Circle) shape() {}
func (Area) shape()   {}
func (Dot) shape()    {}
func (Label) shape()  {}

// LetterHeight is the size of letters, in millimetres: on a telephone, where a picture of 90 mm is some 330 points
// wide, they are still 12 points high. From the foot of one line to that of the next they are 1.3 times that apart;
// [Label.Box] says how wide they are.
const LetterHeight = 3.2

const letterWidth = 0.6 * LetterHeight // of every letter, as in nearly all types of equal width

// Box returns the corners of the rectangle that a label takes up, accents and tails included.
func (l Label) Box() (upperLeft, lowerRight Point) {
	w := float64(letterWidth * float64(width(clean(l.Text))))
	x := l.At.X
	switch l.Anchor {
	case Middle:
		x -= w / 2
	case End:
		x -= w
	}
	return Point{x, l.At.Y - 0.8*LetterHeight}, Point{x + w, l.At.Y + 0.25*LetterHeight}
}
