// SPDX-License-Identifier: BSD-3-Clause

// Package material has the properties of workshop metals and the sizes of parts that are not at 20 °C.
package material
