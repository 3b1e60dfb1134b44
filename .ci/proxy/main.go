// SPDX-License-Identifier: BSD-3-Clause

// Proxy writes a module as it stands in a folder into a file tree that GOPROXY can name, so that a
// module that is not published can be got as if it were.
//
//	go run -C .ci ./proxy FOLDER VERSION TREE
//
// The archive is the one that the go command would make of the repository.
package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"time"

	"golang.org/x/mod/modfile"
	"golang.org/x/mod/module"
	"golang.org/x/mod/zip"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("proxy: ")
	if len(os.Args) != 4 {
		log.Fatal("usage: go run -C .ci ./proxy FOLDER VERSION TREE")
	}
	if err := write(os.Args[1], os.Args[2], os.Args[3]); err != nil {
		log.Fatal(err)
	}
}

func write(folder, version, tree string) error {
	mod, err := os.ReadFile(filepath.Join(folder, "go.mod"))
	if err != nil {
		return err
	}
	m := module.Version{Path: modfile.ModulePath(mod), Version: version}
	var archive bytes.Buffer
	if err := zip.CreateFromDir(&archive, m, folder); err != nil {
		return err
	}
	path, err := module.EscapePath(m.Path)
	if err != nil {
		return err
	}
	info, err := json.Marshal(map[string]any{"Version": version, "Time": time.Unix(0, 0).UTC()})
	if err != nil {
		return err
	}
	dir := filepath.Join(tree, filepath.FromSlash(path), "@v")
	fmt.Printf("%s %d bytes\n", m, archive.Len())
	return errors.Join(
		os.MkdirAll(dir, 0o755),
		os.WriteFile(filepath.Join(dir, "list"), []byte(version+"\n"), 0o644),
		os.WriteFile(filepath.Join(dir, version+".info"), info, 0o644),
		os.WriteFile(filepath.Join(dir, version+".mod"), mod, 0o644),
		os.WriteFile(filepath.Join(dir, version+".zip"), archive.Bytes(), 0o644),
	)
}
