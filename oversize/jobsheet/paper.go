// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"io"

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

// document puts the sheet, with pictures or without, in the order of a person at a bench: the verdict first, then the work in its order.
func (s Sheet) document(pictures bool) page.Doc {
	s = s.even()
	s.rows, s.pictures = grouped(s.Ledger, len(s.Cylinders)), pictures
	doc := page.Doc{Title: "JOB SHEET", Subject: s.Job.Title, Front: s.front()}
	parts := []func(Sheet) page.Section{Sheet.before}
	if s.decided() {
		parts = append(parts, Sheet.sizes, Sheet.findings, Sheet.route, Sheet.clearances, Sheet.sleeve, Sheet.finish, Sheet.crosshatch,
			Sheet.proofText, Sheet.rings, Sheet.capacity, Sheet.together, Sheet.record)
	}
	for _, part := range append(parts, Sheet.ledger, Sheet.leftOut) {
		if p := part(s); p.Title != "" { // else there is nothing to say of it
			doc.Sections = append(doc.Sections, p)
		}
	}
	if p := s.cautions(doc.Sections); len(p.Blocks) > 0 {
		doc.Sections = append(doc.Sections, p)
	}
	return doc
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

func sentence(format string, args ...any) page.Sentence {
	return page.Sentence(fmt.Sprintf(format, args...))
}

func heading(format string, args ...any) page.Heading {
	return page.Heading(fmt.Sprintf(format, args...))
}

// table has its head in the first of the rows, each of which is named by its first cell.
func table(rows [][]string) page.Table {
	return page.Table{Head: rows[0], Rows: rows[1:], Keys: 1}
}

// facts is a table of rows that each begin with what they are about, without a head.
func facts(rows [][]string) page.Table { return page.Table{Rows: rows, Keys: 1} }
