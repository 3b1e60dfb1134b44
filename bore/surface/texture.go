// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"errors"
	"fmt"
)

// A Texture is the parameters of one profile: computed, or as an instrument shows them. What is zero is
// not given.
type Texture struct {
	Heights
	Plateau
	TwoProcess
}

// Texture returns all parameters of a profile: [Heights] about the Gaussian mean line, the others about that
// of the two steps. TwoProcess is zero where there are no two. Errors are those of [Profile.Gaussian].
func (p Profile) Texture(f Filter) (Texture, error) {
	s, err := p.split(f)
	if err != nil {
		return Texture{}, err
	}
	c := curve(s.less(p, s.twoStep()).z, s.room.level(0, len(s.z)))
	t := Texture{Heights: s.less(p, s.mean).heights(), Plateau: c.Plateau()}
	if t.TwoProcess, err = c.TwoProcess(); err != nil && !errors.Is(err, ErrOneProcess) {
		return Texture{}, err
	}
	return t, nil
}

// String returns Ra, Rz and the five numbers of the plateau in a line.
func (t Texture) String() string {
	return fmt.Sprintf("Ra %s, Rz %s, %v", fine(t.Ra), fine(t.Rz), t.Plateau)
}
