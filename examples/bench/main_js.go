// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"encoding/json"
	"runtime/debug"
	"strings"
	"syscall/js"

	"borewright.example/oversize/jobsheet"
)

// In a browser the program gives the page one function, which takes a turn from JSON to JSON.
func main() {
	debug.SetGCPercent(400) // a turn makes some megabytes and is over: collecting them in the midst of it costs a third of its time
	b := bench{jobsheet.Plan}
	js.Global().Set("benchTurn", js.FuncOf(func(_ js.Value, args []js.Value) any {
		var r Request
		if err := json.Unmarshal([]byte(args[0].String()), &r); err != nil {
			return js.Global().Get("Error").New(err.Error())
		}
		var answer strings.Builder
		if err := b.turn(r).write(&answer); err != nil {
			return js.Global().Get("Error").New(err.Error())
		}
		return answer.String()
	}))
	select {}
}
