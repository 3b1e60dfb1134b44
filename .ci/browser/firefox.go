// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// reports is added to the page: once the library is there it plans each job and sends the sheet, a line with the job's
// name before it.
const reports = `<script>setTimeout(async function wait() {
	if (!globalThis.benchTurn) return setTimeout(wait, 100);
	for (const [name, job] of Object.entries(%s))
		await fetch("%s", {method: "POST", mode: "no-cors", body: name + "\n" + JSON.parse(benchTurn(JSON.stringify({job}))).sheet});
});</script></body>`

// firefoxChecks opens the page as a file in a firefox without a window, and holds the sheet of each job to that of the
// command line. Its policy, which lets no script but its own run nor anything be sent, is taken off the copy.
func firefoxChecks(program, sheets string, jobs []string) error {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	folder, err := os.MkdirTemp("", "firefox")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "bench.html")
	build := exec.CommandContext(ctx, program, "-o", file)
	build.Dir = ".."
	if out, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	data, err := os.ReadFile(file) // in single bytes, which stay as they are
	if err != nil {
		return err
	}
	texts := map[string]string{}
	for _, job := range jobs {
		text, err := os.ReadFile(job)
		if err != nil {
			return err
		}
		texts[strings.TrimSuffix(filepath.Base(job), ".json")] = string(text)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	got := make(chan string)
	server := http.Server{Handler: http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		if body, err := io.ReadAll(r.Body); err == nil {
			got <- string(body)
		}
	})}
	go server.Serve(listener)
	defer server.Close()
	names, err := json.Marshal(texts) // hides what ends a script
	if err != nil {
		return err
	}
	ascii := regexp.MustCompile(`[^\x00-\x7f]`).ReplaceAllStringFunc(string(names), func(s string) string { return fmt.Sprintf(`\u%04x`, []rune(s)[0]) })
	policy := regexp.MustCompile(`<meta http-equiv="Content-Security-Policy"[^>]*>`)
	page := strings.Replace(policy.ReplaceAllString(string(data), ""), "</body>", fmt.Sprintf(reports, ascii, "http://"+listener.Addr().String()), 1)
	if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
		return err
	}
	firefox := exec.CommandContext(ctx, "firefox-esr", "--headless", "--no-remote", "--profile", folder, "file://"+file)
	if err := firefox.Start(); err != nil {
		return err
	}
	defer firefox.Wait()
	defer firefox.Process.Kill()
	var faults []error
	for range jobs {
		select {
		case <-ctx.Done():
			return fmt.Errorf("firefox sent %d of %d sheets", len(jobs)-len(texts), len(jobs))
		case body := <-got:
			name, sheet, _ := strings.Cut(body, "\n")
			whole, err := os.ReadFile(filepath.Join(sheets, name+".html"))
			if err != nil {
				return err
			}
			inner := strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(sheet), `<div class="sheet">`), "</div>") // in the file a main
			if inner == "" || !strings.Contains(string(whole), inner) {
				faults = append(faults, fmt.Errorf("%s: in firefox the sheet is another: %.300s", name, sheet))
			}
			delete(texts, name)
		}
	}
	return errors.Join(faults...)
}
