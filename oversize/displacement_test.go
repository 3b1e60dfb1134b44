// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"testing"

	"borewright.example/oversize"
	"borewright.example/units"
)

func TestDisplacement(t *testing.T) {
	for _, test := range []struct {
		source       string
		bore, stroke units.Length
		n            int
		want         float64 // cm³
		tolerance    float64
	}{
		{"a published workshop example, printed 1641", mm("87"), mm("69"), 4, 1640.73, 0.5},
		{"a published page, printed 651.879", mm("100"), mm("83"), 1, 651.88, 0.01},
		{"a published page, printed 599.780", mm("65.5"), mm("44.5"), 4, 599.78, 0.01},
		{"a published table", mm("77"), mm("64"), 4, 1192, 1},
		{"a published table", mm("85.5"), mm("69"), 4, 1585, 1},
		{"a published table", mm("90"), mm("69"), 4, 1755, 1}, // 1755.9, truncated
		{"a published table", mm("94"), mm("74"), 4, 2054, 1},
		{"a published table", mm("94"), mm("84"), 4, 2332, 1},
		{"a published examination, six cylinders", mm("170"), mm("300"), 6, 40856.4, 0.1},
		{"computed", inch("3.5"), inch("4"), 4, 2522.59, 0.01},
		{"computed", mm("67"), mm("49.5"), 1, 174.520, 0.0005},
		{"computed", mm("67.25"), mm("49.5"), 1, 175.825, 0.0005},
		{"computed", mm("67.5"), mm("49.5"), 1, 177.134, 0.0005},
		{"computed", mm("68"), mm("49.5"), 1, 179.768, 0.0005},
	} {
		v, err := oversize.Displacement(test.bore, test.stroke, test.n)
		if err != nil || !close(cc(v), test.want, test.tolerance) {
			t.Errorf("%s, %v × %v × %d: %v, %v; want %v cm³", test.source, test.bore, test.stroke, test.n, v, err, test.want)
		}
	}
	// Computed: 3.5 × 4 in, four cylinders, is 153.938 in³, and 156.588 in³ bored 0.030 in over.
	for bore, want := range map[string]float64{"3.5": 153.938, "3.53": 156.588} {
		v, err := oversize.Displacement(inch(bore), inch("4"), 4)
		if got := v.In(units.CubicInch); err != nil || !close(got, want, 0.001) {
			t.Errorf("%s in: %v, %v; want %v in³", bore, got, err, want)
		}
	}
}

// A published example, printed 7.95: head of 50 cm³, 0.060 in of deck in an 87 mm bore, a
// cylinder of 410.25 cm³.
func TestPrintedRatio(t *testing.T) {
	c := oversize.Chamber{Head: 50 * units.CubicCentimetre, Deck: inch("0.060")}
	r, err := c.Compression(mm("87"), mm("69"))
	if err != nil || !close(r.Ratio, 7.946, 0.005) || !close(cc(r.Clearance)-50, 9.0597, 0.0005) {
		t.Errorf("%+v, %v; want 7.946 with a deck of 9.0597 cm³", r, err)
	}
}

// A published page takes 90.5 × 82 mm, a deck of 1.5 mm and a head of 46 cm³. Its swept volume
// (527.47) and deck (9.65) are right; it prints 9.48 for the ratio, which is 10.479, and
// 42.03 cm³ as the head for 9.5, which is 52.41.
func TestPrintedRatioThatIsWrong(t *testing.T) {
	c := oversize.Chamber{Head: 46 * units.CubicCentimetre, Deck: mm("1.5")}
	r, err := c.Compression(mm("90.5"), mm("82"))
	if err != nil || !close(cc(r.Swept), 527.47, 0.01) || !close(cc(r.Clearance)-46, 9.65, 0.01) || !close(r.Ratio, 10.479, 0.001) || close(r.Ratio, 9.48, 0.5) {
		t.Errorf("%+v, %v; want 10.479", r, err)
	}
	head, err := c.HeadFor(mm("90.5"), mm("82"), 9.5)
	if err != nil || !close(cc(head), 52.41, 0.01) || close(cc(head), 42.03, 5) {
		t.Errorf("%v, %v; want 52.41 cm³", head, err)
	}
}

func TestRatioAfterOverbore(t *testing.T) {
	// Computed: 67 × 49.5 mm, 9.0 to 1, the chamber left alone.
	swept, err := oversize.Displacement(mm("67"), mm("49.5"), 1)
	if err != nil {
		t.Fatal(err)
	}
	head, err := oversize.ClearanceVolume(swept, 9)
	if err != nil {
		t.Fatal(err)
	}
	fixed := oversize.Chamber{Head: head}
	// Computed: a head of 16 cm³ and a gasket of 1.2 mm bored with the cylinder.
	gasket := oversize.Chamber{Head: 16 * units.CubicCentimetre, Gasket: mm("1.2")}
	for _, test := range []struct {
		c    oversize.Chamber
		bore string
		want float64
	}{
		{fixed, "67", 9}, {fixed, "67.25", 9.0598}, {fixed, "67.5", 9.1198}, {fixed, "68", 9.2406},
		{gasket, "67", 9.6264}, {gasket, "67.5", 9.7283}, {gasket, "68", 9.8303},
	} {
		r, err := test.c.Compression(mm(test.bore), mm("49.5"))
		if err != nil || !close(r.Ratio, test.want, 0.0005) {
			t.Errorf("%s mm: %v, %v; want %v", test.bore, r.Ratio, err, test.want)
		}
	}
	// Where all clearance is a cylinder of the bore, 3.000 in of it at the bottom and 0.125 in at the
	// top are 24 to 1 in every bore. (A discussion that found 24.001 and 24.005 found its own rounding.)
	for _, bore := range []string{"3", "3.2"} {
		r, err := oversize.Chamber{Deck: inch("0.125")}.Compression(inch(bore), inch("2.875"))
		if err != nil || !close(r.Ratio, 24, 1e-12) {
			t.Errorf("%s in: %v, %v; want 24", bore, r.Ratio, err)
		}
	}
	// A published examination: six cylinders of 170 × 300 mm, 9225 cm³ of clearance, 5.41 to 5.42.
	swept, err = oversize.Displacement(mm("170"), mm("300"), 6)
	if err != nil {
		t.Fatal(err)
	}
	if r, err := oversize.Ratio(swept, 9225*units.CubicCentimetre); err != nil || !close(r, 5.4289, 0.0001) {
		t.Errorf("%v, %v; want 5.4289", r, err)
	}
}
