// SPDX-License-Identifier: BSD-3-Clause

// Play builds and runs playground texts under the limits of the Go playground, and holds what they
// print to golden texts.
//
//	go run -C .ci ./play -golden ../examples/testdata FILE.txtar ...
//
// Each text is built alone for linux/amd64 with the tag faketime, from an empty module cache and a build
// cache that holds standard packages and nothing else, in 10 s at most, and run in 5 s at most. Other
// modules come from this machine's module cache where it has them. A line IMAGE: must stand alone in
// its moment, since the page shows it as a picture in that case only.
package main

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

const (
	maxBuild = 10 * time.Second
	maxRun   = 5 * time.Second
)

// standard is what programs and other modules take from the standard library, with all that stands
// behind it: the part of it that has to be warm, as all of it is in the playground.
var standard = []string{
	"bufio", "database/sql/driver", "embed", "encoding/base64", "encoding/csv", "encoding/json", "flag", "fmt", "image/png", "iter", "log",
	"maps", "math/big", "math/cmplx", "math/rand", "math/rand/v2", "os", "text/tabwriter", "time",
}

func main() {
	log.SetFlags(0)
	log.SetPrefix("play: ")
	golden := flag.String("golden", "", "`folder` with what NAME.txtar prints, as NAME.txt")
	flag.Parse()
	tmp, err := os.MkdirTemp("", "play")
	if err != nil {
		log.Fatal(err)
	}
	err = playAll(tmp, *golden, flag.Args())
	os.RemoveAll(tmp)
	if err != nil {
		log.Fatal(err)
	}
}

func playAll(tmp, golden string, names []string) error {
	shared, err := exec.Command("go", "env", "GOMODCACHE", "GOPROXY").Output()
	if err != nil {
		return err
	}
	cache, proxy, _ := strings.Cut(strings.TrimSpace(string(shared)), "\n")
	env := append(os.Environ(), "GOPROXY=file://"+cache+"/cache/download,"+proxy, "GOSUMDB=off", "GOFLAGS=", "GOWORK=off",
		"CGO_ENABLED=0", "GOOS=linux", "GOARCH=amd64")
	std := filepath.Join(tmp, "std")
	warm := append([]string{"install", "-tags=faketime"}, standard...)
	if err := command(context.Background(), tmp, append(env, "GOCACHE="+std), "go", warm...); err != nil {
		return err
	}
	var all error
	for i, name := range names {
		took, err := play(filepath.Join(tmp, fmt.Sprint(i)), std, golden, name, env)
		if err != nil {
			all = errors.Join(all, fmt.Errorf("%s: %w", name, err))
			continue
		}
		fmt.Printf("%-24s %s\n", filepath.Base(name), took)
	}
	return all
}

// play builds, vets and runs one text in a folder of its own.
func play(dir, std, golden, name string, env []string) (string, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return "", err
	}
	work, cache := filepath.Join(dir, "work"), filepath.Join(dir, "cache")
	if err := errors.Join(unpack(work, string(text)), link(std, cache)); err != nil {
		return "", err
	}
	env = append(env, "GOCACHE="+cache, "GOMODCACHE="+filepath.Join(dir, "modules"), "PWD="+work)
	ctx, cancel := context.WithTimeout(context.Background(), maxBuild)
	defer cancel()
	start := time.Now()
	if err := command(ctx, work, env, "go", "build", "-o", "../program", "-tags=faketime", "-modcacherw", "-mod=mod", "."); err != nil {
		return "", fmt.Errorf("built in %v: %w", time.Since(start), err)
	}
	built := time.Since(start)
	if err := command(context.Background(), work, env, "go", "vet", "-tags=faketime", "-mod=mod", "."); err != nil {
		return "", err
	}
	ctx, cancel = context.WithTimeout(context.Background(), maxRun)
	defer cancel()
	start = time.Now()
	out, err := exec.CommandContext(ctx, filepath.Join(dir, "program")).Output()
	if err != nil {
		return "", fmt.Errorf("ran for %v: %w", time.Since(start), err)
	}
	ran := time.Since(start)
	printed, pictures, err := moments(out)
	if err != nil {
		return "", err
	}
	if golden != "" {
		want, err := os.ReadFile(filepath.Join(golden, strings.TrimSuffix(filepath.Base(name), ".txtar")+".txt"))
		if err != nil {
			return "", err
		}
		if before, _, _ := bytes.Cut(want, []byte("IMAGE:")); !bytes.Equal(printed, before) {
			return "", fmt.Errorf("prints\n%s", printed)
		}
	}
	return fmt.Sprintf("built in %.2f s, ran in %.3f s, %d pictures", built.Seconds(), ran.Seconds(), pictures), nil
}

// unpack writes the files of an archive; the text before the first is prog.go.
func unpack(dir, text string) error {
	files, name := map[string]string{}, "prog.go"
	for line := range strings.Lines(text) {
		if n, ok := strings.CutPrefix(line, "-- "); ok && strings.HasSuffix(n, " --\n") {
			name = strings.TrimSuffix(n, " --\n")
			continue
		}
		files[name] += line
	}
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, []byte(text), 0o644)); err != nil {
			return err
		}
	}
	return nil
}

// link copies a folder by hard links.
func link(from, to string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			return os.MkdirAll(filepath.Join(to, rel), 0o755)
		}
		return os.Link(path, filepath.Join(to, rel))
	})
}

// moments takes the playback headers out of what a program with a fake clock printed ("\0\0PB", eight
// bytes of time, four of length), and counts the pictures among the texts of one time each.
func moments(out []byte) (printed []byte, pictures int, err error) {
	var texts [][]byte
	last := uint64(0)
	for len(out) > 0 {
		if len(out) < 16 || !bytes.HasPrefix(out, []byte("\x00\x00PB")) {
			return nil, 0, fmt.Errorf("no playback header before %.20q", out)
		}
		at, n := binary.BigEndian.Uint64(out[4:]), int(binary.BigEndian.Uint32(out[12:]))
		text := out[16:min(16+n, len(out))]
		out = out[16+len(text):]
		if len(texts) > 0 && at == last {
			texts[len(texts)-1] = append(texts[len(texts)-1], text...)
		} else {
			texts = append(texts, bytes.Clone(text))
		}
		last = at
	}
	for _, t := range texts {
		switch i := bytes.Index(append([]byte("\n"), t...), []byte("\nIMAGE:")); {
		case i < 0:
			printed = append(printed, t...)
		case i > 0 || bytes.Count(t, []byte("\n")) != 1:
			return nil, 0, errors.New("a picture that is not alone in its moment")
		default:
			pictures++
		}
	}
	return printed, pictures, nil
}

func command(ctx context.Context, dir string, env []string, name string, args ...string) error {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Dir, cmd.Env = dir, env
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, out)
	}
	return nil
}
