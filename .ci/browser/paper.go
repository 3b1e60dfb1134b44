// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// An object is a job as any reader of JSON has it.
type object map[string]any

func readObject(data string) (o object, err error) {
	d := json.NewDecoder(strings.NewReader(data))
	d.UseNumber()
	return o, d.Decode(&o)
}

var stepOn = regexp.MustCompile(`[^.\[\]]+`)

// at returns the value at a path, "cylinders[0].readings[3].depth", or nil.
func (o object) at(path string) any {
	var v any = map[string]any(o)
	for _, step := range stepOn.FindAllString(path, -1) {
		switch in := v.(type) {
		case map[string]any:
			v = in[step]
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(in) {
				return nil
			}
			v = in[i]
		default:
			return nil
		}
	}
	return v
}

// list returns the items at a path.
func (o object) list(path string) []any {
	l, _ := o.at(path).([]any)
	return l
}

// text returns the value at a path as a form shows it; "" where there is none.
func (o object) text(path string) string {
	switch v := o.at(path).(type) {
	case nil:
		return ""
	case []any:
		var items []string
		for _, item := range v {
			items = append(items, fmt.Sprint(item))
		}
		return strings.Join(items, "; ")
	default:
		return fmt.Sprint(v)
	}
}

var (
	ofGrid = regexp.MustCompile(`^(cylinders\[\d+\]\.(?:readings|proof))\[([\d,]+)\]\.(depth|axis|diameter)$`)
	ofGap  = regexp.MustCompile(`^(cylinders\[\d+\]\.rings)\[(\d+)\]\.(\w+)$`)
)

// A place is where a reading is taken.
type place struct{ depth, axis string }

// grid returns the depths and axes of a list of readings, in the order in which they come first, and what was read.
func (o object) grid(path string) (depths, axes []string, read map[place][]string) {
	read = map[place][]string{}
	for i := range o.list(path) {
		at := fmt.Sprintf("%s[%d].", path, i)
		p := place{o.text(at + "depth"), o.text(at + "axis")}
		if !slices.Contains(depths, p.depth) {
			depths = append(depths, p.depth)
		}
		if !slices.Contains(axes, p.axis) {
			axes = append(axes, p.axis)
		}
		read[p] = append(read[p], o.text(at+"diameter"))
	}
	return depths, axes, read
}

// text returns what the paper has for a field of the job as it is.
func (c *clerk) text(job object, at string) string {
	if m := ofGrid.FindStringSubmatch(at); m != nil {
		return c.reading(job, m[1], m[2], m[3])
	}
	if m := ofGap.FindStringSubmatch(at); m != nil {
		ring := job.text(m[1] + "[" + m[2] + "].ring")
		for i := range c.onPaper.list(m[1]) {
			if row := fmt.Sprintf("%s[%d].", m[1], i); c.onPaper.text(row+"ring") == ring {
				return c.onPaper.text(row + m[3])
			}
		}
		return ""
	}
	switch at {
	case "counted.passes":
		if len(job.list("cylinders[0].honing")) == 0 {
			return "0"
		}
	case "accepted[0].by":
		return "the workshop's machinist"
	case "accepted[0].why":
		return "seen to be that of the other cylinder"
	}
	return c.onPaper.text(at)
}

// reading returns what the paper has at a place of the grid, or at the head of a row or a column: a depth or an axis that the
// grid has not yet.
func (c *clerk) reading(job object, path, items, field string) string {
	first, _, _ := strings.Cut(items, ",")
	at := path + "[" + first + "]."
	depths, axes, read := c.onPaper.grid(path)
	haveDepths, haveAxes, _ := job.grid(path)
	if field == "diameter" {
		p, before := place{job.text(at + "depth"), job.text(at + "axis")}, 0
		n, _ := strconv.Atoi(first)
		for i := range n {
			if other := fmt.Sprintf("%s[%d].", path, i); job.text(other+"depth") == p.depth && job.text(other+"axis") == p.axis {
				before++
			}
		}
		if before < len(read[p]) {
			return read[p][before]
		}
		return ""
	}
	want, have := depths, haveDepths
	if field == "axis" {
		want, have = axes, haveAxes
	}
	if now := job.text(at + field); slices.Contains(want, now) {
		return now
	}
	for _, w := range want {
		if !slices.Contains(have, w) {
			return w
		}
	}
	return ""
}

// known reports whether what stands at a path is known by now: passes once it is bored, the proof once they are made, gaps in the
// finished bore after that.
func (c *clerk) known(job object, at string) bool {
	made := len(job.list("cylinders[0].honing")) > 0 && job.text("counted.passes") == c.onPaper.text("counted.passes")
	switch {
	case strings.Contains(at, "].honing"):
		return slices.Contains(c.steps, "bore")
	case strings.Contains(at, "proof"), strings.HasSuffix(at, ".crosshatch"):
		return made
	case strings.HasSuffix(at, ".finished"), strings.HasSuffix(at, ".filed"):
		return made && job.text("counted.proof") != ""
	}
	return true
}

func (c *clerk) wantsAny(job object, list []deed) bool {
	return slices.ContainsFunc(list, func(d deed) bool { return c.wants(job, d) })
}

// wants reports whether something is to be done with a field or a button.
func (c *clerk) wants(job object, d deed) bool {
	if d.At == "" || !c.known(job, d.At) {
		return false
	}
	path := d.At
	depths, axes, read := c.onPaper.grid(path)
	haveDepths, haveAxes, haveRead := job.grid(path)
	switch d.Do {
	case "":
		text := c.text(job, path)
		now := job.text(path)
		if m := ofGrid.FindStringSubmatch(path); m != nil {
			first, _, _ := strings.Cut(m[2], ",")
			now = job.text(m[1] + "[" + first + "]." + m[3])
		}
		return text != "" && text != now
	case "add":
		return len(job.list(path)) < len(c.onPaper.list(path)) && (path == "engine.rings" || !strings.HasSuffix(path, ".rings"))
	case "rings":
		return len(job.list(path)) == 0 && len(job.list("engine.rings")) == len(c.onPaper.list("engine.rings"))
	case "propose": // for the second cylinder, whose places are mended then; those of the first are made one by one
		return path == "cylinders[1].readings" && len(haveRead) == 0
	case "depth":
		return path == "cylinders[0].readings" && len(haveDepths) < len(depths) && !slices.Contains(haveDepths, "")
	case "axis":
		return path == "cylinders[0].readings" && len(haveDepths) > 0 && len(haveAxes) < len(axes) && !slices.Contains(haveAxes, "")
	case "repeat":
		return len(haveRead) == 0
	case "again":
		for _, axis := range axes {
			if p := (place{d.Part, axis}); len(haveRead[p]) > 0 && len(haveRead[p]) < len(read[p]) {
				return true
			}
		}
	case "drop": // a place that was proposed, and is not on the paper
		grid, items, ok := strings.Cut(path, ".readings[")
		if !ok || grid != "cylinders[1]" {
			return false
		}
		first, _, _ := strings.Cut(strings.TrimSuffix(items, "]"), ",")
		depths, _, _ := c.onPaper.grid(grid + ".readings")
		have, _, _ := job.grid(grid + ".readings")
		return len(have) > len(depths) && !slices.Contains(depths, job.text(grid+".readings["+first+"].depth"))
	case "accept":
		return path == c.accepts && len(job.list("accepted")) == 0 && c.written(job)
	}
	return false
}

// written reports whether all that is on the paper is in the job, in whatever order it was read.
func (c *clerk) written(job object) bool {
	return reflect.DeepEqual(inOrder(map[string]any(job), ""), inOrder(map[string]any(c.onPaper), ""))
}

// inOrder returns a value with its readings and gaps sorted, and without words.
func inOrder(v any, name string) any {
	switch v := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for key, value := range v {
			if key != "accepted" {
				out[key] = inOrder(value, key)
			}
		}
		return out
	case []any:
		out := []any{}
		for _, item := range v {
			out = append(out, inOrder(item, ""))
		}
		if name == "readings" || name == "proof" || name == "rings" {
			slices.SortFunc(out, func(a, b any) int {
				x, _ := json.Marshal(a)
				y, _ := json.Marshal(b)
				return bytes.Compare(x, y)
			})
		}
		return out
	}
	return v
}
