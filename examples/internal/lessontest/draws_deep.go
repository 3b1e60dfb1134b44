// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package lessontest

// draws is how many sets of data are drawn for a lesson.
const draws = 20000
