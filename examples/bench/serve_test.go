// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"bufio"
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"borewright.example/oversize/jobsheet"
)

// TestLoopback: an address that others could reach is refused, and it is said why and what to do instead.
func TestLoopback(t *testing.T) {
	for at, ok := range map[string]bool{
		"127.0.0.1:0": true, "localhost:80": true, "[::1]:80": true, "127.0.0.2:80": true,
		":8080": false, "0.0.0.0:80": false, "[::]:80": false, "192.168.1.5:80": false, "example.org:80": false, "127.0.0.1.example.org:80": false, "127.0.0.1": false,
	} {
		if err := loopback(at); (err == nil) != ok {
			t.Errorf("%s: %v", at, err)
		}
	}
	if err := loopback("0.0.0.0:80"); !strings.Contains(err.Error(), "-o") {
		t.Errorf("does not say what to do: %v", err)
	}
}

// TestServer: what is not of the page itself is refused, each in its way.
func TestServer(t *testing.T) {
	h := handler(theBench)
	turn := `{"job": ""}`
	for _, c := range []struct {
		name, method, target, body string
		header                     map[string]string // Host among them
		want                       int
	}{
		{"the page", "GET", "/", "", nil, 200},
		{"a turn", "POST", "/turn", turn, nil, 200},
		{"of its own origin", "POST", "/turn", turn, map[string]string{"Host": "localhost:9", "Origin": "http://localhost:9"}, 200},
		{"by number six", "GET", "/", "", map[string]string{"Host": "[::1]:9"}, 200},
		{"a name of a stranger's", "GET", "/", "", map[string]string{"Host": "bench.example.org"}, 421},
		{"a name that begins well", "GET", "/", "", map[string]string{"Host": "127.0.0.1.example.org"}, 421},
		{"no name", "GET", "/", "", map[string]string{"Host": ""}, 421},
		{"another origin", "POST", "/turn", turn, map[string]string{"Origin": "http://example.org"}, 403},
		{"another port", "POST", "/turn", turn, map[string]string{"Origin": "http://127.0.0.1:1"}, 403},
		{"no origin that it would own to", "POST", "/turn", turn, map[string]string{"Origin": "null"}, 403},
		{"a form's content", "POST", "/turn", turn, map[string]string{"Content-Type": "text/plain"}, 415},
		{"no content type", "POST", "/turn", turn, map[string]string{"Content-Type": ""}, 415},
		{"too large", "POST", "/turn", `{"job": "` + strings.Repeat("x", mostBytes) + `"}`, nil, 413},
		{"no request", "POST", "/turn", `{"job": 7}`, nil, 400},
		{"a turn by GET", "GET", "/turn", "", nil, 405},
		{"a page by POST", "POST", "/", turn, nil, 405},
		{"another address", "GET", "/index.html", "", nil, 404},
		{"a file", "GET", "/page.js", "", nil, 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest(c.method, c.target, strings.NewReader(c.body))
			r.Host = "127.0.0.1:8417"
			if c.method == "POST" {
				r.Header.Set("Content-Type", "application/json")
			}
			for name, value := range c.header {
				switch {
				case name == "Host":
					r.Host = value
				default:
					r.Header.Set(name, value)
				}
			}
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			if w.Code != c.want {
				t.Errorf("%d, want %d: %.200s", w.Code, c.want, w.Body)
			}
			for name, value := range map[string]string{"X-Content-Type-Options": "nosniff", "Cache-Control": "no-store"} {
				if got := w.Header().Get(name); got != value {
					t.Errorf("%s is %q", name, got)
				}
			}
			if !strings.Contains(w.Header().Get("Content-Security-Policy"), "frame-ancestors 'none'") {
				t.Error("may be framed")
			}
		})
	}
	s := newServer()
	if s.ReadHeaderTimeout <= 0 || s.ReadTimeout <= 0 || s.WriteTimeout <= 0 || s.IdleTimeout <= 0 || s.MaxHeaderBytes <= 0 {
		t.Error("somebody may dawdle for ever")
	}
}

// TestRun: the program prints its address, serves there, and ends when it is told to.
func TestRun(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	in, out := io.Pipe()
	ended := make(chan int, 1)
	go func() { ended <- run(ctx, []string{"-at", "127.0.0.1:0"}, out, io.Discard) }()
	address, err := bufio.NewReader(in).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	job := demos(t)["unread"]
	body, _ := json.Marshal(Request{Open: &job})
	r, err := http.Post(strings.TrimSpace(address)+"turn", "application/json", bytes.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	var served Answer
	if err := json.NewDecoder(r.Body).Decode(&served); err != nil {
		t.Fatal(err)
	}
	if here := theBench.turn(Request{Open: &job}); served.Sheet != here.Sheet || served.Job != here.Job {
		t.Error("served is another answer than here")
	}
	stop()
	select {
	case code := <-ended:
		if code != 0 {
			t.Errorf("exit %d", code)
		}
	case <-time.After(5 * time.Second):
		t.Error("does not end")
	}
	if code := run(context.Background(), []string{"-photo"}, io.Discard, io.Discard); code != 2 {
		t.Errorf("photographs without a file: exit %d", code)
	}
	var errs bytes.Buffer
	if code := run(context.Background(), []string{"-at", "0.0.0.0:0"}, io.Discard, &errs); code != 1 || errs.Len() == 0 {
		t.Errorf("exit %d: %s", code, &errs)
	}
}

// TestPolicy: a browser runs and shows what the page holds, and nothing that somebody wrote into it.
func TestPolicy(t *testing.T) {
	packed := document{packed: encode([]byte("library")), size: 7, support: "// support\n"}
	photo := packed
	photo.own, photo.look = photoScript, photoStyle
	for i, d := range []document{{}, packed, photo} {
		page := d.html()
		if i == 2 {
			page = photoHTML(packed)
			if _, err := bytesOf(page); err != nil {
				t.Error(err)
			}
		}
		policy := d.policy()
		for _, tag := range []string{"script", "style"} {
			_, rest, _ := strings.Cut(page, "<"+tag+">")
			inside, _, ok := strings.Cut(rest, "</"+tag+">")
			sum := sha256.Sum256([]byte(inside))
			if !ok || len(inside) < 1000 || !strings.Contains(policy, tag+"-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'") {
				t.Errorf("the hash of the %s is not that of the policy", tag)
			}
		}
		if strings.Contains(policy, "unsafe-inline") || strings.Contains(policy, "unsafe-eval'") != (d.packed != "") || strings.Contains(policy, "connect-src 'none'") != (d.packed != "") {
			t.Errorf("policy: %s", policy)
		}
		for _, address := range regexp.MustCompile(`(?:src|href|url)\s*[=(]\s*["']?(https?:|//)`).FindAllString(page, -1) {
			t.Errorf("reaches out: %s", address)
		}
	}
	for _, s := range []string{script, photoScript} {
		if n := strings.Count(s, "\n"); n > 120 {
			t.Errorf("%d lines of script", n)
		}
	}
}

var attributeThatActs = regexp.MustCompile(`<[a-z][^>]* (style|on[a-z]+)=`)

// TestNoActingAttributes: neither form nor sheet holds an attribute of style or of a script, which the policy forbids.
func TestNoActingAttributes(t *testing.T) {
	for name, job := range demos(t) {
		a := theBench.turn(Request{Open: &job})
		for _, p := range a.Form {
			if m := attributeThatActs.FindString(p.HTML); m != "" {
				t.Errorf("%s: %s", name, m)
			}
		}
		if m := attributeThatActs.FindString(a.Sheet + a.Head); m != "" {
			t.Errorf("%s: %s", name, m)
		}
	}
}

// TestPack: what is packed unpacks to what it was, with the rule of the script.
func TestPack(t *testing.T) {
	letters := []rune(digits)
	if len(letters) != 182 || strings.ContainsAny(digits, `<"\ `) {
		t.Fatalf("%d digits", len(letters))
	}
	for n := range 20 {
		data := []byte("\x00\xff\x80abcde\x00\xff\x80abcde\xff\xff\xff\xff")[:n]
		text := []rune(encode(data))
		if file, err := bytesOf(string(text)); err != nil || len(file) != len(text) {
			t.Errorf("%d letters in %d bytes: %v", len(text), len(file), err)
		}
		var back []byte
		held, bits := 0, 0
		for i := 0; i < len(text); i += 2 {
			held |= (slices.Index(letters, text[i]) + 182*slices.Index(letters, text[i+1])) << bits
			for bits += 15; bits > 7; bits, held = bits-8, held>>8 {
				back = append(back, byte(held))
			}
		}
		if len(back) < n || !bytes.Equal(back[:n], data) {
			t.Errorf("%q came back as %q", data, back)
		}
	}
}

// TestCharset: the page is written in letters that its file has, and one that has none there is refused.
func TestCharset(t *testing.T) {
	page := document{packed: encode([]byte("library")), size: 7}.html()
	file, err := bytesOf(page)
	if err != nil || !bytes.Contains(file[:1024], []byte(charset)) || bytes.Contains(file[:1024], []byte("utf-8")) {
		t.Errorf("%v: %.200s", err, file)
	}
	for _, letter := range []string{"…", "\u0085", "€"} {
		if _, err := bytesOf("a" + letter); err == nil {
			t.Errorf("%q is written", letter)
		}
	}
}

// TestPanic: where the library breaks, that is named, and nothing that was typed is lost.
func TestPanic(t *testing.T) {
	broken := bench{func(jobsheet.Job) (jobsheet.Sheet, error) { panic("index out of range") }}
	job := demos(t)["unread"]
	opened := theBench.turn(Request{Open: &job})
	entries := []Entry{{"set", "title", []string{"typed before it broke"}}}
	a := broken.turn(Request{Job: opened.Job, Entries: entries})
	whole := theBench.turn(Request{Job: opened.Job, Entries: entries})
	if a.Job != whole.Job || !strings.Contains(a.Job, "typed before it broke") {
		t.Error("something was lost")
	}
	if a.Sheet != "" || !strings.Contains(a.Head, "index out of range") || len(a.Form) != len(whole.Form) {
		t.Errorf("not named, or no form to go on with: %s", a.Head)
	}
}
