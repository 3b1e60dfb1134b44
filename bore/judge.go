// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Limits are what a maker allows of a bore, each optional. Manuals define wear differently, so
// each limit holds for the quantity named here and no other.
type Limits struct {
	New     units.Limits // of every diameter, as for a new bore
	Service units.Limits // of every diameter, worn
	// The greatest allowed:
	Ovality units.Length // greatest minus least diameter in one plane
	Taper   units.Length // difference along one axis between the uppermost and the lowest plane, either way
	Spread  units.Length // greatest minus least of all diameters
}

func (l Limits) validate() error {
	for _, w := range []units.Limits{l.New, l.Service} {
		if err := w.Validate(); err != nil {
			return fmt.Errorf("bore: %w: %w", ErrLimits, err)
		}
	}
	for _, m := range []units.Length{l.Ovality, l.Taper, l.Spread} {
		if m < 0 || m > units.MaxLength {
			return fmt.Errorf("bore: limit %v: want 0 (not given) to %v: %w", m, units.MaxLength, ErrLimits)
		}
	}
	return nil
}

// What a finding of [Geometry.Judge] is about: its Subject begins with one of these.
const (
	SubjectNew     = "new bore"
	SubjectService = "service limit"
	SubjectOvality = "ovality"
	SubjectTaper   = "taper"
	SubjectSpread  = "greatest minus least"
)

// Judge holds the bore against each limit that is given, in the order of the fields of
// [Limits], and skips what the readings cannot show, such as ovality from one axis.
//
// Each finding's risk is per limit. Within one limit many places take part: "within" wants
// every one of them within, "beyond" shares its risk over them. A finding is about the quantity
// along the axes and depths that were read, as manuals define it, and says nothing of what the
// readings cannot see.
func (g Geometry) Judge(l Limits, r uncertainty.Risk) ([]uncertainty.Finding, error) {
	if len(g.Planes) == 0 {
		return nil, fmt.Errorf("bore: judge: %w", ErrNoReadings)
	}
	if err := l.validate(); err != nil {
		return nil, err
	}
	var findings []uncertainty.Finding
	add := func(f uncertainty.Finding, err error) error {
		if err != nil {
			return fmt.Errorf("bore: judge: %w", err)
		}
		f.Per = "limit"
		findings = append(findings, f)
		return nil
	}
	for _, s := range []struct {
		subject string
		window  units.Limits
	}{{SubjectNew, l.New}, {SubjectService, l.Service}} {
		if s.window.IsZero() {
			continue
		}
		if err := add(g.judgeSizes(s.subject, s.window, r)); err != nil {
			return nil, err
		}
	}
	if l.Ovality > 0 && g.HasOvality {
		if err := add(g.judgeOvality(units.Limits{Max: l.Ovality}, r)); err != nil {
			return nil, err
		}
	}
	if l.Taper > 0 && g.HasTaper() {
		if err := add(g.judgeTaper(units.Limits{Max: l.Taper}, r)); err != nil {
			return nil, err
		}
	}
	if all := g.places(); l.Spread > 0 && len(all) > 1 {
		f, err := judgeRange(SubjectSpread, all, units.Limits{Max: l.Spread}, r)
		if err := add(f, err); err != nil {
			return nil, err
		}
	}
	return findings, nil
}

func (g Geometry) judgeSizes(subject string, w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	var sizes []uncertainty.Estimate
	for _, p := range g.places() {
		sizes = append(sizes, p.Size)
	}
	f, err := uncertainty.JudgeGreatest(sizes, w, r)
	f.Subject = subject
	return f, err
}

func (g Geometry) judgeOvality(w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	var fs []uncertainty.Finding
	n := 0
	for _, p := range g.Planes {
		if p.HasOvality {
			n++
		}
	}
	for _, p := range g.Planes {
		if !p.HasOvality {
			continue
		}
		f, err := judgeRange(fmt.Sprintf("%s at %v", SubjectOvality, p.Depth), p.Places, w, shareBeyond(r, n))
		if err != nil {
			return uncertainty.Finding{}, err
		}
		fs = append(fs, f)
	}
	return worst(fs, r), nil
}

func (g Geometry) judgeTaper(w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	var fs []uncertainty.Finding
	for _, t := range g.Tapers {
		f, err := uncertainty.JudgeDifference(t.Size, w, shareBeyond(r, len(g.Tapers)))
		if err != nil {
			return uncertainty.Finding{}, err
		}
		f.Subject = fmt.Sprintf("%s, %s axis", SubjectTaper, FormatAxis(t.Axis))
		fs = append(fs, f)
	}
	return worst(fs, r), nil
}

// judgeRange holds the greatest minus the least of the places against w.
func judgeRange(subject string, ps []Place, w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	sizes := make([]units.Length, len(ps))
	var each uncertainty.Estimate // the doubt of one place: the largest of them, with the fewest degrees of freedom
	for i, p := range ps {
		sizes[i] = p.Own.Value
		each.Std = max(each.Std, p.Own.Std)
		if p.Own.DoF > 0 && (each.DoF == 0 || p.Own.DoF < each.DoF) {
			each.DoF = p.Own.DoF
		}
	}
	f, err := uncertainty.JudgeRange(sizes, each.Std, each.DoF, w, r)
	f.Subject = subject
	return f, err
}

// shareBeyond shares the risk of a wrong "beyond" over n quantities of which the worst is
// reported. A wrong "within" needs no sharing: it wants every one of them to pass.
func shareBeyond(r uncertainty.Risk, n int) uncertainty.Risk {
	return uncertainty.Risk{Accept: r.Accept, Reject: r.Share(n).Reject}
}

// worst returns the finding that decides for all, under the risk of all: the least likely to
// conform among those beyond, else among the undecided, else among those within.
func worst(fs []uncertainty.Finding, r uncertainty.Risk) uncertainty.Finding {
	rank := func(f uncertainty.Finding) int {
		switch f.Verdict {
		case uncertainty.Beyond:
			return 2
		case uncertainty.Undecided:
			return 1
		}
		return 0
	}
	w := fs[0]
	for _, f := range fs[1:] {
		if rank(f) > rank(w) || rank(f) == rank(w) && f.Conform < w.Conform {
			w = f
		}
	}
	w.Risk = r.Share(1)
	return w
}
