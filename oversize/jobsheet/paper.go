// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"io"

	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
)

// WriteText writes the sheet for a person at a bench. An error is the writer's.
func (s Sheet) WriteText(w io.Writer) error { return s.Print(w, page.Text{}) }

// Print writes the text of the sheet on paper. An error is the writer's, or [page.ErrPaper].
func (s Sheet) Print(w io.Writer, paper page.Text) error {
	if err := paper.Write(w, s.document(false)); err != nil {
		return fmt.Errorf("jobsheet: %w", err)
	}
	return nil
}

// WriteHTML writes the sheet as one file for a browser, a telephone or A4, which needs nothing beside itself. An
// error is the writer's.
func (s Sheet) WriteHTML(w io.Writer) error { return page.HTML{}.Write(w, s.document(true)) }

// A draft is a sheet on its way to the paper, section by section.
type draft struct {
	Sheet
	show     show.In  // the units of the job
	pictures bool     // whether they are drawn
	rows     [][]*Row // of the engine, then of each cylinder
	doc      page.Doc
	part     page.Section // that is being written
}

// document puts the sheet, with pictures or without, in the order of a person at a bench: the verdict first, then the work in its order.
func (s Sheet) document(pictures bool) page.Doc {
	d := draft{Sheet: s.even(), show: s.Job.Units.in(), pictures: pictures}
	d.rows = grouped(d.Ledger, len(d.Cylinders))
	d.front()
	d.doc = page.Doc{Title: "JOB SHEET", Subject: s.Job.Title, Front: d.part.Blocks}
	d.section("BEFORE MEASURING", (*draft).before)
	if d.decided() {
		d.section("SIZES AT 20 °C (± expanded uncertainty, 95 %)", (*draft).sizes)
		d.section("FINDINGS against the maker's limits, along the axes and depths read", (*draft).findings)
		d.section("ROUTE: "+d.routeWords(), (*draft).route)
		d.section("PISTONS (clearance is on the diameter)", (*draft).clearances)
		d.section("SLEEVE (interference is DIAMETRAL)", (*draft).sleeve)
		d.section("FINISH SIZES at 20 °C (stock is on the diameter)", (*draft).finish)
		d.section("HONING", (*draft).crosshatch)
		d.section("PROOF: the finished bores, after the wash", (*draft).proof)
		d.section("RING GAPS", (*draft).rings)
		d.section("DISPLACEMENT AND COMPRESSION", (*draft).capacity)
		d.section("GOING TOGETHER, after the maker's manual", (*draft).together)
		d.section("RECORD to hand back with the engine", (*draft).record)
	}
	d.section("WHAT MUST BE TRUE before it goes together", (*draft).ledger)
	d.section("TAKEN, NOT USED, LEFT OUT", (*draft).leftOut)
	d.section("CAUTIONS that belong to no step above", (*draft).cautions)
	return d.doc
}

// section writes a section, where there is anything to say in it.
func (s *draft) section(title string, write func(*draft)) {
	s.part = page.Section{Title: title}
	if write(s); len(s.part.Blocks) > 0 {
		s.doc.Sections = append(s.doc.Sections, s.part)
	}
}

func (s *draft) add(blocks ...page.Block) { s.part.Add(blocks...) }

// say adds a sentence, heading a heading, and table a table where it has more than its head.
func (s *draft) say(format string, args ...any) { s.add(page.Sentence(fmt.Sprintf(format, args...))) }

// sentence adds one, where there is anything to say.
func (s *draft) sentence(text string) {
	if text != "" {
		s.add(page.Sentence(text))
	}
}

func (s *draft) heading(format string, args ...any) {
	s.add(page.Heading(fmt.Sprintf(format, args...)))
}

func (s *draft) table(rows [][]string) {
	if len(rows) > 1 {
		s.add(headed(rows))
	}
}

// even returns the sheet with as many cylinders in each of the lists that run side by side as the shortest has, so
// that one which nobody planned is written too.
func (s Sheet) even() Sheet {
	n := min(len(s.Cylinders), len(s.Job.Cylinders))
	if s.decided() {
		n = min(n, len(s.Choice.Cylinders))
		s.Choice.Cylinders = s.Choice.Cylinders[:n]
	}
	s.Cylinders, s.Job.Cylinders = s.Cylinders[:n], s.Job.Cylinders[:n]
	return s
}

// decided reports whether every cylinder has been read, so that there is a choice.
func (s Sheet) decided() bool { return len(s.Choice.Cylinders) > 0 }

// The blocks that need words put together, and the tables.

// headed returns a table with its head in the first of the rows, each of which is named by its first cell.
func headed(rows [][]string) page.Table { return page.Table{Head: rows[0], Rows: rows[1:], Keys: 1} }

// facts is a table of rows that each begin with what they are about, without a head.
func facts(rows [][]string) page.Table { return page.Table{Rows: rows, Keys: 1} }
