// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

// Bench serves a page for the whole of a job: type what the gauge shows, see at once what it means. It also writes that
// page as one file with the library inside, which opens without a network.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"os"
	"os/signal"
	"time"
)

const usage = `bench serves a page for the whole of a job, from the first reading to the last proof, on this machine alone.

  bench                 serves it, and prints its address
  bench -at HOST:PORT   at another address of this machine; port 0 is a free one
  bench -o bench.html   writes it as one file with the library inside, for a telephone or a machine without a
                        network: copy the file there and open it
  bench -photo -o photo.html
                        writes another page, which marks a photograph of a wall and says which angle its
                        crosshatch has

A telephone does not reach an address of this machine: the file is its road. Writing it wants the Go
tools and the sources of this module, so run it in a clone.
`

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// run does the program's work until ctx ends, and returns its exit code.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("bench", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	at := flags.String("at", "127.0.0.1:8417", "the `address` to serve the page at")
	out := flags.String("o", "", "the `file` to write the page to, instead of serving it")
	photo := flags.Bool("photo", false, "write the page of photographs")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "bench: %q: want no argument beside the flags; -h explains\n", flags.Arg(0))
		return 2
	}
	if *photo && *out == "" {
		fmt.Fprintln(stderr, "bench: -photo wants -o: the page of photographs is a file; -h explains")
		return 2
	}
	var err error
	if *out != "" {
		err = writeFile(ctx, *out, *photo)
	} else {
		err = serve(ctx, *at, stdout)
	}
	if err != nil {
		fmt.Fprintln(stderr, "bench:", err)
		return 1
	}
	return 0
}

// serve serves the page until ctx ends.
func serve(ctx context.Context, at string, stdout io.Writer) error {
	if err := loopback(at); err != nil {
		return err
	}
	listener, err := net.Listen("tcp", at)
	if err != nil {
		return fmt.Errorf("%w (-at gives another address)", err)
	}
	server := newServer()
	go func() {
		<-ctx.Done()
		grace, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		server.Shutdown(grace)
	}()
	fmt.Fprintf(stdout, "http://%s/\n", listener.Addr())
	if err := server.Serve(listener); ctx.Err() == nil {
		return err
	}
	return nil
}
