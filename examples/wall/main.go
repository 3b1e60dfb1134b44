// SPDX-License-Identifier: BSD-3-Clause

// Wall measures the crosshatch of a wall from its photograph, and draws a sheet to check that with.
package main

import (
	"errors"
	"flag"
	"fmt"
	"image"
	_ "image/gif"
	_ "image/jpeg"
	"image/png"
	"io"
	"os"
	"strconv"
	"strings"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

const usage = `wall measures the angle of a crosshatch from a photograph of the wall.

  wall -photo FILE -bore 67 -label 20x10 -corners x,y,x,y,x,y,x,y

Stick a label of known size on the wall, photograph it, and give its four corners in pixels from the left
upper corner of the picture: clockwise, the first two on a side that runs round the bore.

  -photo FILE      the photograph: JPEG, PNG or GIF
  -bore MM         the diameter of the bore
  -label MMxMM     the sides of the label: round the bore x along the bore
  -corners LIST    eight numbers
  -arrowed         the label says which side is which, so it may be square
  -marking PX      how well the corners are marked, as a standard uncertainty; half a pixel
  -focal PX        the focal length in pixels, where it is known
  -whole           the picture is all that the lens saw, not cropped
  -seen FILE       where to write the picture of what was seen; seen.png

  wall -truth DEGREES -bore MM -label MMxMM >sheet.svg

draws a sheet ruled at that included angle. Print it, roll it into a tube of that bore with the print inside,
photograph it, and see whether the angle comes back within its doubt. From 35° on; flatter sheets are refused.
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// An order is what the flags ask for.
type order struct {
	name, seen  string
	bore, truth float64
	label       [2]float64
	shot        photo.Shot
}

// run does the program's work and returns its exit code: 0 with an angle or a sheet, 1 where the picture
// gives none, 2 where it was not asked well.
func run(args []string, stdout, stderr io.Writer) int {
	o, err := parse(args, stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		fmt.Fprintln(stderr, "wall:", err)
		return 2
	}
	if o.truth != 0 {
		err = o.rule(stdout)
	} else {
		err = o.measure(stdout)
	}
	if err != nil {
		fmt.Fprintln(stderr, "wall:", err)
		return 1
	}
	return 0
}

// parse reads the flags.
func parse(args []string, stderr io.Writer) (order, error) {
	var o order
	flags := flag.NewFlagSet("wall", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&o.name, "photo", "", "")
	flags.StringVar(&o.seen, "seen", "seen.png", "")
	flags.Float64Var(&o.bore, "bore", 0, "")
	flags.Float64Var(&o.truth, "truth", 0, "")
	flags.Float64Var(&o.shot.Marking, "marking", 0, "")
	flags.Float64Var(&o.shot.Focal, "focal", 0, "")
	flags.BoolVar(&o.shot.Whole, "whole", false, "")
	flags.BoolVar(&o.shot.Label.Arrowed, "arrowed", false, "")
	label := flags.String("label", "", "")
	corners := flags.String("corners", "", "")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprint(stderr, usage)
		}
		return o, err
	}
	if flags.NArg() > 0 {
		return o, fmt.Errorf("%q: want no argument beside the flags; -h explains", flags.Arg(0))
	}
	sides, err := numbers(strings.ReplaceAll(*label, "x", ","), 2)
	if err != nil {
		return o, fmt.Errorf("-label %q: want the sides in mm, as 20x10: %w", *label, err)
	}
	o.label = [2]float64(sides)
	for _, v := range []struct {
		x  float64
		to *units.Length
	}{{o.bore, &o.shot.Bore}, {sides[0], &o.shot.Label.Round}, {sides[1], &o.shot.Label.Along}} {
		if *v.to, err = units.Of(v.x, units.Millimetre); err != nil {
			return o, err
		}
	}
	if o.truth != 0 {
		return o, nil
	}
	if o.name == "" {
		return o, errors.New("want -photo or -truth; -h explains")
	}
	xs, err := numbers(*corners, 8)
	if err != nil {
		return o, fmt.Errorf("-corners %q: want x,y of four corners in pixels: %w", *corners, err)
	}
	for i := range o.shot.Corners {
		o.shot.Corners[i] = photo.Pixel{X: xs[2*i], Y: xs[2*i+1]}
	}
	return o, nil
}

// numbers reads n numbers with commas between them.
func numbers(s string, n int) ([]float64, error) {
	parts := strings.Split(s, ",")
	if len(parts) != n {
		return nil, fmt.Errorf("%d numbers, want %d", len(parts), n)
	}
	out := make([]float64, n)
	for i, p := range parts {
		var err error
		if out[i], err = strconv.ParseFloat(strings.TrimSpace(p), 64); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// rule writes a sheet.
func (o order) rule(w io.Writer) error {
	s := sheet{included: o.truth, bore: o.bore, round: o.label[0], along: o.label[1]}
	switch {
	case !(s.included >= 10 && s.included <= 140):
		return fmt.Errorf("-truth %v: want 10° to 140°", s.included)
	case !(s.bore >= 20 && s.bore <= 500):
		return fmt.Errorf("-bore %v: want 20 to 500 mm", s.bore)
	case !(s.round > 0 && s.along > 0 && s.round < s.bore && s.along < sheetHeight):
		return fmt.Errorf("-label %vx%v: want it to fit on the sheet, and less round than the bore", s.round, s.along)
	}
	return s.write(w)
}

// measure measures the photograph.
func (o order) measure(w io.Writer) error {
	f, err := os.Open(o.name)
	if err != nil {
		return err
	}
	defer f.Close()
	if o.shot.Picture, _, err = image.Decode(f); err != nil {
		return fmt.Errorf("%s: %w", o.name, err)
	}
	m, err := o.shot.Crosshatch()
	if err != nil {
		return err
	}
	if err := report(w, m, o.shot); err != nil {
		return err
	}
	out, err := os.Create(o.seen)
	if err != nil {
		return err
	}
	if err := errors.Join(png.Encode(out, m.Picture()), out.Close()); err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "\nWhat was seen is in %s: the lines found, in two colours, and what was left out.\n", o.seen)
	return err
}

// report prints the angle, its doubt, and what that is made of.
func report(w io.Writer, m photo.Measured, s photo.Shot) error {
	k, err := uncertainty.Coverage(0.95, m.DoF)
	if err != nil {
		return err
	}
	rows, err := m.Budget.Rows()
	if err != nil {
		return err
	}
	fmt.Fprintf(w, "Crosshatch  %s ± %.1f° (95 %%)\n", m.Crosshatch.Format(1), k*m.Std.In(units.Degree))
	if !m.Min.IsZero() {
		fmt.Fprintf(w, "Range       %s to %s over the wall seen: its leans spread\n", m.Min.Format(0), m.Max.Format(0))
	}
	fmt.Fprintf(w, "Lines       lean %.1f° and %.1f° from square to the axis; the camera was tilted by %.0f°\n",
		m.Leans[0].In(units.Degree), m.Leans[1].In(units.Degree), m.Tilt.In(units.Degree))
	fmt.Fprintln(w, "\nParts of the doubt, as standard uncertainties")
	for _, r := range rows {
		fmt.Fprintf(w, "   %-22s %.2f°  %3.0f %%\n", r.Name, r.Contribution, 100*r.Share)
	}
	if !s.Whole {
		fmt.Fprintln(w, "\nWas the picture cropped? If it is all that the lens saw, say -whole: the doubt above allows for a crop.")
	}
	fmt.Fprintln(w, "\nOnly the wall seen is measured. A label and its glue are dirt: wash again. The maker's manual outranks this.")
	return nil
}
