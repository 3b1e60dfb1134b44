// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"borewright.example/bore"
	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func micro(x int64) units.Length { return units.Length(x) * units.Micrometre }

func TestLesson(t *testing.T) {
	turned, choked := shipped, shipped
	turned.dial = bore.PlusIsSmaller
	choked.planes = []plane{{100 * units.Millimetre, micro(31), micro(43)}, {10 * units.Millimetre, micro(-12), micro(-5)}}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "turned": turned, "choked": choked},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{setting: micro(70000 + r.Int64N(60000)), dial: bore.Dial(1 + r.IntN(2))}
	span := []int64{3, 60, 250}[r.IntN(3)]
	for i := range 1 + r.IntN(5) {
		d.planes = append(d.planes, plane{micro(int64(10000 + 20000*i)), micro(r.Int64N(2*span) - span), micro(r.Int64N(2*span) - span)})
	}
	r.Shuffle(len(d.planes), func(i, j int) { d.planes[i], d.planes[j] = d.planes[j], d.planes[i] })
	switch r.IntN(20) {
	case 0:
		d.dial = 0
	case 1:
		d.planes = nil
	case 2:
		d.planes = append(d.planes, d.planes[0])
	case 3:
		d.setting = micro(-r.Int64N(2))
	case 4:
		for i := range d.planes {
			d.planes[i].thrust, d.planes[i].pin = 0, 0
		}
	case 5:
		for i := range d.planes {
			d.planes[i].thrust += 300 * units.Nanometre
		}
	}
	return d
}

// claims counts nanometres.
func claims(d data) map[string]bool {
	seen := map[units.Length]bool{}
	for _, p := range d.planes {
		if seen[p.depth] {
			return map[string]bool{lessontest.Refused: true}
		}
		seen[p.depth] = true
	}
	if d.setting <= 0 || d.dial == 0 || len(d.planes) == 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	sign := int64(1)
	if d.dial == bore.PlusIsSmaller {
		sign = -1
	}
	top, bottom := d.planes[0], d.planes[0]
	high, low, oval := int64(-1e9), int64(1e9), int64(0)
	for _, p := range d.planes {
		if p.depth < top.depth {
			top = p
		}
		if p.depth > bottom.depth {
			bottom = p
		}
		a, b := sign*int64(p.thrust)/1000, sign*int64(p.pin)/1000
		high, low, oval = max(high, a, b), min(low, a, b), max(oval, a-b, b-a)
	}
	taper := sign * int64(top.thrust-bottom.thrust) / 1000
	if pin := sign * int64(top.pin-bottom.pin) / 1000; max(pin, -pin) > max(taper, -taper) {
		taper = pin
	} else if pin == -taper && pin != 0 {
		return nil // one axis widens as much as the other narrows
	}
	mm := func(nm int64) string {
		if nm%1000 != 0 {
			return fmt.Sprintf("%d.%04d mm", nm/1e6, (nm%1e6+50)/100)
		}
		return fmt.Sprintf("%d.%03d mm", nm/1e6, nm%1e6/1000)
	}
	several := len(d.planes) > 1
	c := map[string]bool{
		lessontest.Refused:                         false,
		"the greatest of them: " + mm(oval) + ",":  true,
		" = " + mm(high-low) + "\n   Some manuals": true,
		"it shows no taper":                        !several,
		"wider above":                              several && taper > 0,
		"narrower above":                           several && taper < 0,
		"as wide above as below":                   several && taper == 0,
		"From the setting none is seen":            high <= 0,
		"if that is the setting, ":                 high > 0,
		"on this dial plus is smaller":             sign < 0,
		"on this dial plus is larger":              sign > 0,
	}
	if several {
		c["the greater: "+mm(max(taper, -taper))+","] = true
	}
	if len(d.planes) > 2 {
		straight := true
		for _, p := range d.planes {
			straight = straight && p.thrust == top.thrust && p.pin == top.pin
		}
		c["down: straight"] = straight
	}
	return c
}
