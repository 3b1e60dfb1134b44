// SPDX-License-Identifier: BSD-3-Clause

// Exam prints a paper of ten questions, with numbers drawn from a seed, and its worked answers apart.
//
// They are on measuring, deciding on and fitting a cylinder.
//
//	go run ./examples/exam -seed 7              the paper
//	go run ./examples/exam -seed 7 -answers     its answers, for the teacher
//	go run ./examples/exam -seed 7 -html >7.html     to print
//
// The same seed gives the same paper on every machine, so that thirty seeds are thirty papers for a class.
// Each answer comes from the library, and a second way by other arithmetic agrees with it; the lessons
// of the same names teach what is asked. A calculator with cosine and square root is enough.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the program with its arguments and streams; it returns the exit code.
func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("exam", flag.ContinueOnError)
	flags.SetOutput(errs)
	seed := flags.Uint64("seed", 1, "`number` of the paper: the same number, the same paper")
	answers := flags.Bool("answers", false, "print the worked answers in place of the paper")
	asHTML := flags.Bool("html", false, "print a page for the printer in place of text")
	switch err := flags.Parse(args); {
	case err == flag.ErrHelp:
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(errs, "exam: %q: want no argument\n", flags.Arg(0))
		return 2
	}
	paper, err := draw(*seed)
	if err == nil {
		write := paper.text
		if *asHTML {
			write = paper.html
		}
		err = write(out, *answers)
	}
	if err != nil {
		fmt.Fprintln(errs, "exam:", err)
		return 1
	}
	return 0
}
