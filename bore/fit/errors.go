// SPDX-License-Identifier: BSD-3-Clause

package fit

import "errors"

// ErrNarrow: the doubt of the measurement, or the form of the bore, is wider than the window it has to hit. What else
// is refused carries the sentinels of package units.
var ErrNarrow = errors.New("window narrower than the doubt of the measurement")
