// SPDX-License-Identifier: BSD-3-Clause

// Package house_test holds the module as a whole: which way imports go, what importers inherit, and that
// the documents say what is so.
package house_test

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// root is the folder of the module.
var root = filepath.Join("..", "..")

// command runs a command in a folder and returns what it prints, or skips where there is no such command.
//
// What a child reads the go command does not see when it decides whether an old result of a test
// still holds. So all of the module is read here first.
func command(t *testing.T, dir, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("no command %s here", name)
	}
	files := 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			if err == nil && strings.HasPrefix(d.Name(), ".") && d.Name() != ".." {
				return fs.SkipDir
			}
			return err
		}
		files++
		_, err = os.ReadFile(path)
		return err
	})
	if err != nil || files < 100 {
		t.Fatalf("%d files of the module: %v", files, err)
	}
	var errs bytes.Buffer
	child := exec.Command(name, args...)
	child.Dir, child.Stderr = dir, &errs
	child.Env = append(os.Environ(), "GOFLAGS=", "GOWORK=off")
	out, err := child.Output()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, &errs)
	}
	return string(out)
}
