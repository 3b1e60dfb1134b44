// SPDX-License-Identifier: BSD-3-Clause

package page

// gap is what stands between two columns of a table.
const gap = "   "

// A grid is a table on its way to the paper: rows of equal length, of which the first may be its head.
type grid struct {
	rows [][]string
	head bool
	keys int // columns at the left that name a row
}

// table types a table in lined-up columns. Of one that is too wide the last column is wrapped, where that leaves room
// for words; else it is turned, columns for rows, where that fits; else split, its keys before each part; and
// where even one column beside the keys is too wide, its cells are written out one below the other.
func (p *typist) table(t Table) {
	if t.columns() == 0 || len(t.Rows) == 0 {
		return
	}
	if t.Title != "" {
		p.wrap(p.indent, t.Title)
	}
	g := t.grid(p.plain)
	room := p.Width - width(p.indent)
	if g.width() <= room {
		p.print(g)
		return
	}
	if folded := g.folded(room); folded.rows != nil {
		p.print(folded)
		return
	}
	if turned := g.turned(); g.head && g.keys > 0 && turned.width() <= room {
		p.print(turned)
		return
	}
	parts := g.split(room)
	for i, part := range parts {
		if i > 0 {
			p.line(nil)
		}
		p.print(part)
	}
	if parts == nil {
		p.written(g)
	}
}

// grid returns the table with every text as it is printed.
func (t Table) grid(plain func(string) string) grid {
	g := grid{keys: t.keys(), head: t.Head != nil}
	n := t.columns()
	g.rows = make([][]string, 0, len(t.Rows)+1)
	all := make([]string, 0, n*cap(g.rows))
	add := func(row []string) {
		for i := range n {
			all = append(all, single(plain(cell(row, i))))
		}
		g.rows = append(g.rows, all[len(all)-n:len(all):len(all)])
	}
	if g.head {
		add(t.Head)
	}
	for _, row := range t.Rows {
		add(row)
	}
	return g
}

// widths returns the width of each column.
func (g grid) widths() []int {
	w := make([]int, len(g.rows[0]))
	for _, row := range g.rows {
		for i, c := range row {
			w[i] = max(w[i], width(c))
		}
	}
	return w
}

func (g grid) width() int {
	sum := -len(gap)
	for _, w := range g.widths() {
		sum += w + len(gap)
	}
	return sum
}

// folded returns the grid with the texts of its last column wrapped, or none where they would have too little room.
func (g grid) folded(room int) grid {
	const least = 24
	last := len(g.rows[0]) - 1
	room -= g.width() - g.widths()[last]
	if room < least || last == 0 {
		return grid{}
	}
	f := grid{head: g.head, keys: g.keys}
	for _, row := range g.rows {
		for i, text := range fold(row[last], room, "") {
			cells := make([]string, last)
			if i == 0 {
				copy(cells, row)
			}
			f.rows = append(f.rows, append(cells, text))
		}
	}
	return f
}

// turned returns the grid with its columns as rows; what named the rows heads the columns.
func (g grid) turned() grid {
	var t grid
	for i := range g.rows[0] {
		var row []string
		for _, r := range g.rows {
			row = append(row, r[i])
		}
		t.rows = append(t.rows, row)
	}
	t.head, t.keys = true, 1
	return t
}

// split returns the grid in parts that fit, each with the keys, or nil where that cannot be.
func (g grid) split(room int) []grid {
	w := g.widths()
	keys := 0
	for _, k := range w[:g.keys] {
		keys += k + len(gap)
	}
	var parts []grid
	for from := g.keys; from < len(w); {
		to, sum := from, keys-len(gap)
		for to < len(w) && sum+len(gap)+w[to] <= room {
			sum += len(gap) + w[to]
			to++
		}
		if to == from {
			return nil
		}
		part := grid{head: g.head, keys: g.keys}
		for _, row := range g.rows {
			part.rows = append(part.rows, append(append([]string{}, row[:g.keys]...), row[from:to]...))
		}
		parts = append(parts, part)
		from = to
	}
	return parts
}

func (p *typist) print(g grid) {
	w := g.widths()
	for _, row := range g.rows {
		line := append(p.buffer[:0], p.indent...)
		for i, c := range row {
			line = append(line, c...)
			if i < len(row)-1 {
				line = append(append(line, blanks(w[i]-width(c))...), gap...)
			}
		}
		p.line(line)
		p.buffer = line
	}
}

// written writes every row out, a cell a line, behind the head of its column.
func (p *typist) written(g grid) {
	rows := g.rows
	var head []string
	if g.head {
		head, rows = rows[0], rows[1:]
	}
	for _, row := range rows {
		mark := p.indent
		for i, c := range row {
			if c == "" {
				continue
			}
			text := c
			if h := cell(head, i); h != "" {
				text = h + ": " + c
			}
			p.wrap(mark, text)
			mark = p.indent + "  "
		}
	}
}
