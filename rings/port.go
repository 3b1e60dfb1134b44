// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/internal/given"
	"borewright.example/units"
)

// Ends are the ends of a pegged ring in its bore.
type Ends struct {
	Peg  units.Angle  `json:"peg"`           // middle of the gap, counted round the bore as [bore.Port.At] is
	Gap  units.Length `json:"gap"`           // the end gap
	Play units.Length `json:"play,omitzero"` // along the wall: how far the ring can turn about its peg, either way
	Bore units.Length `json:"bore"`          // diameter
}

// A Room is how far the ends of a ring stay from a port that the ring passes.
type Room struct {
	Port int `json:"port"` // counted from 0 in the list given
	// Room is counted along the wall, from the nearer end to the nearer edge, negative inside the port. At zero or
	// less the end springs into the port and breaks.
	Room units.Length `json:"room"`
}

// Clear returns the room between the ends of a ring and each port that overlaps its travel. No
// end may cross a port: it springs out into the opening, catches the edge and breaks. How much
// land the ends need beside the port is for the maker to say.
//
// Of the travel Top and Bottom take part, as in [Narrowest]. A negative play, or a gap and bore that [Gap.In]
// refuses, is an error, and so is a port that is none or a peg's angle that is not finite (units.ErrNotFinite).
func (e Ends) Clear(ports []bore.Port, travel bore.RingTravel) ([]Room, error) {
	if err := e.validate(); err != nil {
		return nil, err
	}
	if err := checkTravel(travel); err != nil {
		return nil, err
	}
	const turn = 2 * math.Pi
	radius := float64(e.Bore) / 2
	half := (float64(e.Gap)/2 + float64(e.Play)) / radius
	if err := (bore.Layout{Ports: ports}).Validate(); err != nil {
		return nil, fmt.Errorf("rings: %w", err)
	}
	var rooms []Room
	for i, p := range ports {
		if p.To < travel.Top || p.From > travel.Bottom {
			continue
		}
		near := wrap(float64(p.At - p.Width/2 - e.Peg)) // from the peg on to the port
		far := near + float64(p.Width)
		room, err := units.Of((min(near, turn-far)-half)*radius, units.Picometre)
		if err != nil {
			return nil, fmt.Errorf("rings: port %d: %w", i, err)
		}
		rooms = append(rooms, Room{Port: i, Room: room})
	}
	return rooms, nil
}

func (e Ends) validate() error {
	if err := checkAngle(e.Peg); err != nil {
		return err
	}
	switch {
	case e.Bore <= 0:
		return fmt.Errorf("rings: bore %v: %w (more than 0)", e.Bore, given.Err(e.Bore))
	case e.Bore > units.MaxLength:
		return fmt.Errorf("rings: bore %v: %w (up to %v)", e.Bore, units.ErrRange, units.MaxLength)
	case e.Gap <= 0:
		return fmt.Errorf("rings: end gap %v: %w (a gap is more than 0)", e.Gap, given.Err(e.Gap))
	case e.Gap > e.Bore/10:
		return fmt.Errorf("rings: end gap %v in a bore of %v: %w (up to a tenth of the bore)", e.Gap, e.Bore, units.ErrRange)
	case e.Play < 0 || e.Play > e.Bore:
		return fmt.Errorf("rings: play %v of a peg in a bore of %v: %w (0 up to the bore)", e.Play, e.Bore, units.ErrRange)
	}
	return nil
}

func checkAngle(a units.Angle) error {
	if math.IsNaN(float64(a)) || math.IsInf(float64(a), 0) {
		return fmt.Errorf("rings: angle %v: %w", float64(a), units.ErrNotFinite)
	}
	return nil
}

// wrap brings an angle into [0, 2π).
func wrap(x float64) float64 {
	if x = math.Mod(x, 2*math.Pi); x < 0 {
		x += 2 * math.Pi
	}
	if x >= 2*math.Pi { // a tiny negative angle rounds up to the full turn
		x = 0
	}
	return x
}
