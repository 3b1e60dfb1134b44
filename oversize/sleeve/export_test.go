// SPDX-License-Identifier: BSD-3-Clause

package sleeve

// What the tests look into.
const (
	EvenHeat         = evenHeat
	HotParts         = hotParts
	TemperLost       = temperLost
	CoefficientRange = coefficientRange
	JudgedAsBrittle  = judgedAsBrittle
	CanComeLoose     = canComeLoose
)

// Has reports whether a caution is in the set.
func (s Cautions) Has(c caution) bool { return s&(1<<c) != 0 }

// Validate returns why the joint cannot be.
func (j Joint) Validate() error { return j.check() }

// MustParseClass reads a class that is good.
func MustParseClass(s string) Class {
	c, err := ParseClass(s)
	if err != nil {
		panic(err)
	}
	return c
}

// Slips returns what clearance the parts have at both temperatures of a.
func (j Joint) Slips(a Assembling) (Assembly, error) {
	r, err := j.assembling(a)
	if err == nil {
		r.sleeve, err = above("sleeve", a.Sleeve)
	}
	if err == nil {
		r.barrel, err = above("barrel", a.Barrel)
	}
	if err != nil {
		return Assembly{}, err
	}
	return j.assembly(a, r)
}
