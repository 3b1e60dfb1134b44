// SPDX-License-Identifier: BSD-3-Clause

// Package golist asks the go command what packages a module has.
package golist

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
)

// Packages returns what go list says of all packages below a folder, as values of a struct with the fields that the
// arguments ask for: "-json=Dir,ImportPath".
func Packages[P any](folder string, args ...string) ([]P, error) {
	cmd := exec.Command("go", append(append([]string{"list"}, args...), "./...")...)
	cmd.Dir, cmd.Stderr = folder, os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, err
	}
	var list []P
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p P
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return list, nil
		} else if err != nil {
			return nil, err
		}
		list = append(list, p)
	}
}
