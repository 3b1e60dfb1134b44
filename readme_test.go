// SPDX-License-Identifier: BSD-3-Clause

package borewright_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// blocks returns the fenced code blocks of a language in the README, in order.
func blocks(t *testing.T, language string) []string {
	t.Helper()
	text, err := os.ReadFile("README.md")
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

// run runs the go command here, or skips where there is none.
func run(t *testing.T, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip("no go command here")
	}
	var errs bytes.Buffer
	command := exec.Command("go", args...)
	command.Stderr = &errs
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go %s: %v\n%s", strings.Join(args, " "), err, &errs)
	}
	return string(out)
}

// TestReadmeProgram: the program in the README runs as it stands and prints what the README says.
func TestReadmeProgram(t *testing.T) {
	program := blocks(t, "go")[0]
	file := filepath.Join(t.TempDir(), "main.go")
	if err := os.WriteFile(file, []byte(program), 0o644); err != nil {
		t.Fatal(err)
	}
	if got, want := run(t, "run", file), blocks(t, "text")[1]; got != want {
		t.Errorf("the program prints\n%s\nthe README says\n%s", got, want)
	}
}

// TestReadmeSheet: the excerpt in the README is what the main command prints, each paragraph whole.
func TestReadmeSheet(t *testing.T) {
	sheet := run(t, "run", "./examples/refresh")
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
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range link.FindAllStringSubmatch(string(text), -1) {
			if _, err := os.Stat(filepath.FromSlash(m[1] + m[2])); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			found++
		}
	}
	if found < 15 {
		t.Errorf("%d links and commands, want more", found)
	}
}
