// SPDX-License-Identifier: BSD-3-Clause

// Play builds and runs playground texts under the limits of the Go playground, and holds what they
// print to golden texts.
//
//	go run -C .ci ./play -golden ../examples/testdata FILE.txtar ...
//
// Each text is built alone for linux/amd64, in a folder of its own with an empty module cache, so that standard packages
// are all that is built before it, in 10 s at most, and run in 5 s at most. Other modules come from this machine's module
// cache where it has them. With -moments it is built with the tag faketime, as there, from a build cache of its own, which
// takes a minute to warm: then a line IMAGE: must stand alone in its moment, since the page shows it as a picture in that
// case only.
package main

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"flag"
	"fmt"
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
	var p player
	flag.StringVar(&p.golden, "golden", "", "`folder` with what NAME.txtar prints, as NAME.txt")
	flag.BoolVar(&p.moments, "moments", false, "build with the clock of the playground, and look at what is printed when")
	flag.Parse()
	tmp, err := os.MkdirTemp("", "play")
	if err != nil {
		log.Fatal(err)
	}
	err = p.playAll(tmp, flag.Args())
	os.RemoveAll(tmp)
	if err != nil {
		log.Fatal(err)
	}
}

// A player plays texts.
type player struct {
	golden  string // folder; "": what is printed is not held
	moments bool
	tags    string   // of a build
	env     []string // of every command
}

func (p *player) playAll(tmp string, names []string) error {
	shared, err := exec.Command("go", "env", "GOMODCACHE", "GOPROXY").Output()
	if err != nil {
		return err
	}
	cache, proxy, _ := strings.Cut(strings.TrimSpace(string(shared)), "\n")
	p.env = append(os.Environ(), "GOPROXY=file://"+cache+"/cache/download,"+proxy, "GOSUMDB=off", "GOFLAGS=", "GOWORK=off",
		"GOOS=linux", "GOARCH=amd64")
	if p.moments {
		p.tags = "faketime"
		p.env = append(p.env, "CGO_ENABLED=0", "GOCACHE="+filepath.Join(tmp, "std"))
	}
	warm := append([]string{"install", "-tags=" + p.tags}, standard...)
	if err := command(context.Background(), tmp, p.env, "go", warm...); err != nil {
		return err
	}
	var all error
	for i, name := range names {
		took, err := p.play(filepath.Join(tmp, fmt.Sprint(i)), name)
		if err != nil {
			all = errors.Join(all, fmt.Errorf("%s: %w", name, err))
			continue
		}
		fmt.Printf("%-24s %s\n", filepath.Base(name), took)
	}
	return all
}

// play builds, vets and runs one text in a folder of its own.
func (p *player) play(dir, name string) (string, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return "", err
	}
	work := filepath.Join(dir, "work")
	if err := unpack(work, string(text)); err != nil {
		return "", err
	}
	env := append(p.env[:len(p.env):len(p.env)], "GOMODCACHE="+filepath.Join(dir, "modules"), "PWD="+work)
	ctx, cancel := context.WithTimeout(context.Background(), maxBuild)
	defer cancel()
	start := time.Now()
	if err := command(ctx, work, env, "go", "build", "-o", "../program", "-tags="+p.tags, "-modcacherw", "-mod=mod", "."); err != nil {
		return "", fmt.Errorf("built in %v: %w", time.Since(start), err)
	}
	built := time.Since(start)
	if err := command(context.Background(), work, env, "go", "vet", "-tags="+p.tags, "-mod=mod", "."); err != nil {
		return "", err
	}
	ctx, cancel = context.WithTimeout(context.Background(), maxRun)
	defer cancel()
	start = time.Now()
	printed, err := exec.CommandContext(ctx, filepath.Join(dir, "program")).Output()
	if err != nil {
		return "", fmt.Errorf("ran for %v: %w", time.Since(start), err)
	}
	took := fmt.Sprintf("built in %.2f s, ran in %.3f s", built.Seconds(), time.Since(start).Seconds())
	if p.moments {
		var pictures int
		if printed, pictures, err = moments(printed); err != nil {
			return "", err
		}
		took += fmt.Sprintf(", %d pictures", pictures)
	}
	if p.golden != "" {
		want, err := os.ReadFile(filepath.Join(p.golden, strings.TrimSuffix(filepath.Base(name), ".txtar")+".txt"))
		if err != nil {
			return "", err
		}
		if printed = withoutPictures(printed); !bytes.Equal(printed, withoutPictures(want)) {
			return "", fmt.Errorf("prints\n%s", printed)
		}
	}
	return took, nil
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

// withoutPictures leaves out the lines that a page shows as pictures.
func withoutPictures(text []byte) (left []byte) {
	for line := range bytes.Lines(text) {
		if !bytes.HasPrefix(line, []byte("IMAGE:")) {
			left = append(left, line...)
		}
	}
	return left
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
