// SPDX-License-Identifier: BSD-3-Clause

package oversize

import "errors"

// ErrUnknownName: a text that is none of an enumeration's.
var ErrUnknownName = errors.New("unknown name")
