// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The package travels in playground texts, so it stays small.
func TestPackageIsSmall(t *testing.T) {
	names, err := filepath.Glob("*.go")
	check(t, err)
	lines, files := 0, 0
	for _, name := range names {
		if !strings.HasSuffix(name, "_test.go") {
			b, err := os.ReadFile(name)
			check(t, err)
			lines, files = lines+bytes.Count(b, []byte("\n")), files+1
		}
	}
	if lines >= 1560 || files > 10 || files == 0 {
		t.Errorf("%d lines in %d files, want under 1560 in at most 10", lines, files)
	}
}
