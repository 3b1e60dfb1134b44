// SPDX-License-Identifier: BSD-3-Clause

package fit

import "errors"

// Why a fit was refused, beside the sentinels of package units. Test with [errors.Is].
var (
	// ErrAlongPin: the piston was measured along its pin, where the skirt is smaller.
	ErrAlongPin = errors.New("measured along the pin: measure the skirt square to it")
	// ErrNarrow: the doubt of the measurement, or the form of the bore, is wider than the window it has to hit.
	ErrNarrow = errors.New("window narrower than the doubt of the measurement")
)
