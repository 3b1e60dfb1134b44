// SPDX-License-Identifier: BSD-3-Clause

// Refresh turns the job file of an engine into its job sheet.
package main

import (
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/jobsheet/page"
)

//go:embed jobs
var jobs embed.FS

const demo = "jobs/pump.json"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run does the program's work and returns its exit code: 0 with a sheet, 2 without.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("refresh", flag.ContinueOnError)
	flags.SetOutput(stderr)
	name := flags.String("job", "", "the job `file`, or - for standard input; left out, an invented demo job")
	format := flags.String("format", "text", "`text`, html or json")
	show := flags.String("units", "", "`units` to print in: mm, in or both; left out, the job's")
	lines := flags.Int("lines", 0, "of a page; 0 is one long page")
	ascii := flags.Bool("ascii", false, "for a printer that knows no other characters")
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "refresh: %q: want no argument beside the flags; -h explains\n", flags.Arg(0))
		return 2
	case *format != "text" && *format != "html" && *format != "json":
		fmt.Fprintf(stderr, "refresh: -format %q: want text, html or json\n", *format)
		return 2
	}
	sheet, err := plan(*name, *show, stdin)
	if err != nil {
		fmt.Fprintln(stderr, err)
		return 2
	}
	write := func(w io.Writer) error { return sheet.Print(w, page.Text{Lines: *lines, ASCII: *ascii}) }
	switch *format {
	case "html":
		write = sheet.WriteHTML
	case "json":
		write = sheet.WriteJSON
	}
	if err := write(stdout); err != nil {
		fmt.Fprintln(stderr, "refresh:", err)
		return 2
	}
	return 0
}

// plan reads a job, the demo where no name is given, and works it out, to be printed in the units
// shown, or the job's where that is empty.
func plan(name, show string, stdin io.Reader) (jobsheet.Sheet, error) {
	in := stdin
	switch name {
	case "-":
	case "":
		f, err := jobs.Open(demo)
		if err != nil {
			return jobsheet.Sheet{}, err
		}
		defer f.Close()
		in = f
	default:
		f, err := os.Open(name)
		if err != nil {
			return jobsheet.Sheet{}, err
		}
		defer f.Close()
		in = f
	}
	j, err := jobsheet.ReadJob(in)
	if err != nil {
		return jobsheet.Sheet{}, err
	}
	if show != "" {
		if err := j.Units.UnmarshalText([]byte(show)); err != nil {
			return jobsheet.Sheet{}, fmt.Errorf("refresh: -units: %w", err)
		}
	}
	return jobsheet.Plan(j)
}
