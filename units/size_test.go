// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// The package travels in playground texts, so it stays small, and not by long lines.
func TestPackageIsSmall(t *testing.T) {
	names, err := filepath.Glob("*.go")
	check(t, err)
	lines, files := 0, 0
	for _, name := range names {
		if !strings.HasSuffix(name, "_test.go") {
			b, err := os.ReadFile(name)
			check(t, err)
			lines, files = lines+bytes.Count(b, []byte("\n")), files+1
			for i, line := range strings.Split(string(b), "\n") {
				if utf8.RuneCountInString(strings.ReplaceAll(line, "\t", "    ")) > 120 {
					t.Errorf("%s:%d: over 120 columns", name, i+1)
				}
			}
		}
	}
	if lines >= 1500 || files > 10 || files == 0 {
		t.Errorf("%d lines in %d files, want under 1500 in at most 10", lines, files)
	}
}
