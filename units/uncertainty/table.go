// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"strconv"
	"strings"
	"text/tabwriter"
)

// Table returns the budget as a table to put on the board: a line for each component, then the
// combined standard uncertainty with its degrees of freedom, the expanded uncertainty of 95 %
// coverage to two significant digits, and the component that dominates with what halving it
// would leave. The unit is the text of the result's unit, such as "nm". Errors are those of
// [Budget.Combined].
func (b Budget) Table(unit string) (string, error) {
	rows, err := b.Rows()
	if err != nil {
		return "", err
	}
	std, dof, err := b.Combined()
	if err != nil {
		return "", err
	}
	k, err := Coverage(textCoverage, dof)
	if err != nil {
		return "", err
	}
	best, err := b.Dominant()
	if err != nil {
		return "", err
	}
	var s strings.Builder
	w := tabwriter.NewWriter(&s, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "component\tstd\tsensitivity\tcontribution/%s\tshare\tdof\n", unit)
	for _, r := range rows {
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%.1f %%\t%s\n", r.Name, withUnit(r.Std, r.Unit),
			number(r.Sensitivity), number(r.Contribution), r.Share*100, dofText(r.DoF))
	}
	w.Flush()
	fmt.Fprintf(&s, "combined  %s %s, %s degrees of freedom\n", number(std), unit, dofText(dof))
	fmt.Fprintf(&s, "expanded  %s %s (95 %%, k = %s)\n", significant(k*std, 2), unit, number(k))
	for _, c := range b.Correlations {
		fmt.Fprintf(&s, "correlation of %s with %s  %s\n", c.A, c.B, number(c.R))
	}
	if std > 0 {
		fmt.Fprintf(&s, "halving %s would leave  %s %s\n", best.Name, number(best.Halved), unit)
	}
	return s.String(), nil
}

func withUnit(x float64, unit string) string {
	if unit == "" {
		return number(x)
	}
	return number(x) + " " + unit
}

// number returns x to four significant digits, without trailing zeros.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }

func dofText(dof float64) string {
	if dof == 0 {
		return "∞"
	}
	return number(dof)
}

// significant returns x > 0 with n significant digits and no exponent.
func significant(x float64, n int) string {
	e := strconv.FormatFloat(x, 'e', n-1, 64)
	x, _ = strconv.ParseFloat(e, 64)
	exponent := 0
	if x > 0 {
		exponent, _ = strconv.Atoi(e[strings.IndexByte(e, 'e')+1:])
	}
	return strconv.FormatFloat(x, 'f', max(0, n-1-exponent), 64)
}
