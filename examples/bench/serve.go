// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net"
	"net/http"
	"net/url"
	"time"

	"borewright.example/oversize/jobsheet"
)

// mostBytes is the largest request that is read. It holds a job of at most as much.
const mostBytes = 1 << 20

// loopback refuses an address that others could reach: jobs are nobody else's business, and nobody is asked who he is.
func loopback(at string) error {
	host, _, err := net.SplitHostPort(at)
	if err != nil {
		return err
	}
	if ip := net.ParseIP(host); host == "localhost" || ip != nil && ip.IsLoopback() {
		return nil
	}
	return fmt.Errorf("address %q: want one that only this machine reaches, such as 127.0.0.1:8417: the page asks nobody for a name, "+
		"so whoever reaches it has the job; for another machine or a telephone write the one file with -o", at)
}

// newServer returns a server of the page, with limits of time for whoever dawdles.
func newServer() *http.Server {
	return &http.Server{
		Handler:           handler(bench{jobsheet.Plan}),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       10 * time.Second,
		WriteTimeout:      30 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
	}
}

// handler answers the two addresses that there are, to a page of this machine alone.
func handler(b bench) http.Handler {
	page := document{}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		io.WriteString(w, page.html())
	})
	mux.HandleFunc("POST /turn", b.serveTurn)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", page.policy()+"; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if !own(r.Host) {
			http.Error(w, "this host is not served here", http.StatusMisdirectedRequest)
			return
		}
		if origin := r.Header.Get("Origin"); origin != "" {
			if u, err := url.Parse(origin); err != nil || u.Scheme != "http" || u.Host != r.Host {
				http.Error(w, "a page of another origin has no business here", http.StatusForbidden)
				return
			}
		}
		mux.ServeHTTP(w, r)
	})
}

// own reports whether a request names this machine, so that no name of a stranger's that leads here is served.
func own(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	return host == "localhost" || host == "127.0.0.1" || host == "::1" || host == "[::1]"
}

func (b bench) serveTurn(w http.ResponseWriter, r *http.Request) {
	if media, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || media != "application/json" {
		http.Error(w, "want application/json", http.StatusUnsupportedMediaType)
		return
	}
	var request Request
	err := json.NewDecoder(http.MaxBytesReader(w, r.Body, mostBytes)).Decode(&request)
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		http.Error(w, fmt.Sprintf("larger than %d bytes", mostBytes), http.StatusRequestEntityTooLarge)
		return
	case err != nil:
		http.Error(w, "not a request: "+err.Error(), http.StatusBadRequest)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	b.turn(request).write(w)
}
