// SPDX-License-Identifier: BSD-3-Clause

package bore

// Choke is looked at by the tests from outside.
var Choke = Taper.choke
