// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// named returns the sheet of a two-stroke job in which everything that has a name has this one, or why there is none.
func named(t testing.TB, name string) (jobsheet.Sheet, error) {
	j := job(t, "two-stroke")
	j.Title, j.Survey.By, j.Gauge.Standard.Name = name, name, name
	j.Cylinders[0].Name = name
	for i := range j.Engine.Layout.Ports {
		j.Engine.Layout.Ports[i].Name = name
	}
	first := j.Engine.Rings[0].Name
	j.Engine.Rings[0].Name = name
	for i, r := range j.Cylinders[0].Rings {
		if r.Ring == first {
			j.Cylinders[0].Rings[i].Ring = name
		}
	}
	return jobsheet.Plan(j)
}

// markup reads a page strictly and returns its text, and every element and attribute that it has, "td role".
func markup(page []byte) (text string, names []string, err error) {
	d := xml.NewDecoder(bytes.NewReader(page))
	var b strings.Builder
	for {
		token, err := d.Token()
		if err == io.EOF {
			return b.String(), names, nil
		}
		if err != nil {
			return "", nil, err
		}
		switch v := token.(type) {
		case xml.StartElement:
			names = append(names, v.Name.Local)
			for _, a := range v.Attr {
				names = append(names, v.Name.Local+" "+a.Name.Local)
			}
		case xml.CharData:
			b.Write(v)
		case xml.Comment:
			return "", nil, errors.New("a comment")
		}
	}
}

// FuzzWriteHTML: whatever name the things of a job have, the sheet has the markup of a sheet and no other, and the
// name is in it as text.
func FuzzWriteHTML(f *testing.F) {
	for _, name := range []string{
		"pump side", `</title><script>alert(1)</script>`, `" onload="x`, "a&b&amp;c <!-- d --> ]]>", "' style='x", `<a href="//x.example">`,
		"url(//x.example)", "javascript:x", "5.5 ± <b>0.1</b> mm", strings.Repeat("<b>", 60), "\u202eevil",
	} {
		f.Add(name)
	}
	plain, err := named(f, "5 mm "+strings.Repeat("m", 40)+" ________") // with a value, a long word and a blank
	if err != nil {
		f.Fatal(err)
	}
	var b bytes.Buffer
	if err := plain.WriteHTML(&b); err != nil {
		f.Fatal(err)
	}
	_, usual, err := markup(b.Bytes())
	if err != nil || len(usual) < 500 {
		f.Fatalf("%d parts, %v", len(usual), err)
	}
	harmless := map[string]bool{}
	for _, u := range usual {
		harmless[u] = true
	}
	f.Fuzz(func(t *testing.T, name string) {
		s, err := named(t, name)
		if err != nil {
			return // no name for anything
		}
		var b bytes.Buffer
		if err := s.WriteHTML(&b); err != nil {
			t.Fatal(err)
		}
		text, names, err := markup(b.Bytes())
		if err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		if i := slices.IndexFunc(names, func(n string) bool { return !harmless[n] }); i >= 0 {
			t.Fatalf("%q: <%s>", name, names[i])
		}
		ordinary := func(r rune) bool { return r > ' ' && r <= '~' && r != '_' } // which print as they are, and leave no blank
		if want := strings.ReplaceAll(name, " ", ""); strings.TrimFunc(want, ordinary) == "" && len(want) > 2 {
			if n := strings.Count(strings.Join(strings.Fields(text), ""), want); n < 10 {
				t.Fatalf("%q stands %d times in the sheet", name, n)
			}
		}
	})
}
