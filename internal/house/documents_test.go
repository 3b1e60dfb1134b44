// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// blocks returns the fenced code blocks of a language in the README, in order.
func blocks(t *testing.T, language string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for rest := string(text); ; {
		_, after, ok := strings.Cut(rest, "\n```"+language+"\n")
		if !ok {
			return found
		}
		block, left, ok := strings.Cut(after, "\n```\n")
		if !ok {
			t.Fatalf("a block of %s has no end", language)
		}
		found, rest = append(found, block+"\n"), left
	}
}

// TestReadmeProgram types what the README says beside a clone, with the program in it: that prints what the
// README says.
func TestReadmeProgram(t *testing.T) {
	typed := slices.DeleteFunc(blocks(t, "sh"), func(block string) bool { return !strings.Contains(block, "go mod ") })
	clone, err := filepath.Abs(root)
	if err != nil {
		t.Fatal(err)
	}
	beside := t.TempDir()
	if err := os.Symlink(clone, filepath.Join(beside, "borewright")); err != nil {
		t.Skip(err)
	}
	if err := os.WriteFile(filepath.Join(beside, "saved"), []byte(blocks(t, "go")[0]), 0o644); err != nil {
		t.Fatal(err)
	}
	script := strings.Join(typed, "cp ../saved main.go\n")
	if got, want := command(t, beside, "sh", "-e", "-c", script), blocks(t, "text")[1]; len(typed) != 2 || got != want {
		t.Errorf("%d blocks of commands print\n%s\nthe README says\n%s", len(typed), got, want)
	}
}

// TestReadmeSheet: the excerpt in the README is what the main command prints, each paragraph whole.
func TestReadmeSheet(t *testing.T) {
	sheet := command(t, root, "go", "run", "./examples/refresh")
	for _, paragraph := range strings.Split(strings.TrimSpace(blocks(t, "text")[0]), "\n\n") {
		if !strings.Contains(sheet, paragraph) {
			t.Errorf("not on the sheet:\n%s", paragraph)
		}
	}
}

// TestLinks: what the documents link to, and what their commands run, is there.
func TestLinks(t *testing.T) {
	link := regexp.MustCompile(`\]\(([^)#:]+)\)|go run (\./[a-z/]+)`)
	found := 0
	for _, name := range []string{"README.md", "DEVELOPERS.md", "CHANGELOG.md", "examples/doc.go"} {
		text, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range link.FindAllStringSubmatch(string(text), -1) {
			if _, err := os.Stat(filepath.Join(root, filepath.FromSlash(m[1]+m[2]))); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			found++
		}
	}
	if found < 15 {
		t.Errorf("%d links and commands, want more", found)
	}
}

// TestFront: the first folder shows the landing page and no other code.
func TestFront(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(root, "*.go"))
	if err != nil || len(files) != 1 || filepath.Base(files[0]) != "doc.go" {
		t.Errorf("%v, %v: want doc.go alone", files, err)
	}
}
