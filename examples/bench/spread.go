// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"strconv"
	"strings"
)

// fewestSpread is how many numbers in one box are a list: two may be one that was typed with a space for its point.
const fewestSpread = 3

// spread writes a list of numbers that came into the box of one reading into that box and the empty ones after it, in the order
// in which a gauge goes round. It reports false where it is no list, or longer than there is room for, and has written nothing then.
func spread(job *node, path string, k kind, parts []string) bool {
	room := follow(job, path)
	if room == nil || len(parts) < 2 {
		return false
	}
	values := k.valuesIn(parts[0], parts[1])
	if len(values) < fewestSpread || len(values) > len(room) {
		return false
	}
	for _, v := range values {
		if !strings.ContainsAny(v[:1], "0123456789+-.,") {
			return false
		}
	}
	for i, v := range values {
		put(job, room[i], textNode(k.typed([]string{v, parts[1]})))
	}
	return true
}

// follow returns the box of a reading and the empty ones after it, as far as they go on; nil of any other box.
func follow(job *node, path string) (room []string) {
	from, to := strings.LastIndexByte(path, '['), strings.LastIndexByte(path, ']')
	if from < 0 {
		return nil
	}
	list, field := path[:from], path[to+1:]
	if list == "gauge.study" && field == ".reading" { // as many as are written
		first, _ := strconv.Atoi(path[from+1 : to])
		for i := first; i < mostItems; i++ {
			if at := fmt.Sprintf("%s[%d]%s", list, i, field); i == first || job.at(at) == nil {
				room = append(room, at)
				continue
			}
			break
		}
		return room
	}
	if !isGrid(list) || field != ".diameter" && field != ".deviation" {
		return nil
	}
	g := gridOf(job, list)
	for _, depth := range g.depths {
		// Once round, then again.
		for again, more := 0, true; more; again++ {
			more = false
			for _, axis := range g.axes {
				cell := g.cells[readingPlace{depth, axis}]
				if again >= len(cell) {
					continue
				}
				more = true
				at := fmt.Sprintf("%s[%d]", list, cell[again])
				switch {
				case at+field == path:
					room = append(room, path)
				case room == nil:
				case job.at(at+".diameter") != nil || job.at(at+".deviation") != nil:
					return room
				default:
					room = append(room, at+field)
				}
			}
		}
	}
	return room
}
