// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

// groups are values by what they have in common, in the order in which that comes first.
type groups[K comparable, V any] struct {
	keys []K
	of   map[K][]V
}

func (g *groups[K, V]) add(k K, v V) {
	if g.of == nil {
		g.of = map[K][]V{}
	}
	if _, ok := g.of[k]; !ok {
		g.keys = append(g.keys, k)
	}
	g.of[k] = append(g.of[k], v)
}
