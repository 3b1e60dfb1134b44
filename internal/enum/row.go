// SPDX-License-Identifier: BSD-3-Clause

package enum

// A Row is what there is to say of one value that is more than a name, such as a warning: its
// name, its sentence and where that comes from.
type Row [3]string

// Names returns the names of the rows.
func Names(rows []Row) []string {
	names := make([]string, len(rows))
	for i, r := range rows {
		names[i] = r[0]
	}
	return names
}

// Sentence returns the sentence of v, "" where it has no row.
func Sentence[E ~int8](v E, rows []Row) string { return of(v, rows)[1] }

// Source returns the source of v, "" where it has no row.
func Source[E ~int8](v E, rows []Row) string { return of(v, rows)[2] }

func of[E ~int8](v E, rows []Row) Row {
	if v < 0 || int(v) >= len(rows) {
		return Row{}
	}
	return rows[v]
}
