// SPDX-License-Identifier: BSD-3-Clause

// Hammer calls every exported function and every exported method of a module with hostile values: zeros, NaN,
// infinities, the ends of integers, nothing, too much, unsorted, doubled, and what other calls gave back. No call may
// panic, hang, change what it was given, or let out a number that is none without an error.
//
// The list of what there is comes from the tool api, so that nothing is left out; .ci/hammer/run writes it beside this
// file, in a module of its own.
package main

import (
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"reflect"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"time"
)

func main() {
	rounds := flag.Int("rounds", 300, "`calls` of each function")
	seed := flag.Uint64("seed", 1, "of the values")
	share := flag.Bool("share", false, "call the methods of shared values from 64 goroutines, for the race detector")
	flag.Parse()
	h := hammer{values: values{rand.New(rand.NewPCG(*seed, 0)), map[reflect.Type][]reflect.Value{}}, found: map[string]string{}, done: map[string]int{}}
	calls := everything()
	for round := range *rounds {
		for _, c := range calls {
			h.strike(c, round)
		}
	}
	if *share {
		h.share(calls)
	}
	answered := 0
	for _, c := range calls {
		if h.done[c.name] > 0 {
			answered++
		}
	}
	for _, name := range slices.Sorted(maps.Keys(h.found)) {
		fmt.Println(h.found[name])
	}
	fmt.Printf("%d functions and methods, each called %d times, %d of them with an answer at least once; %d findings\n", len(calls), *rounds, answered, len(h.found))
	if len(h.found) > 0 {
		os.Exit(1)
	}
}

// A call is a function, or a method as a function of its receiver.
type call struct {
	name    string
	f       reflect.Value
	pointer bool // it may change its receiver
}

// everything returns the functions, and the methods of all types, in an order that does not change.
func everything() []call {
	var all []call
	for _, name := range slices.Sorted(maps.Keys(functions)) {
		all = append(all, call{name, reflect.ValueOf(functions[name]), false})
	}
	for _, pointer := range types {
		p := reflect.TypeOf(pointer)
		for i := range p.NumMethod() {
			m := p.Method(i)
			if value, ok := p.Elem().MethodByName(m.Name); ok {
				all = append(all, call{p.Elem().String() + "." + m.Name, value.Func, false})
			} else {
				all = append(all, call{p.String() + "." + m.Name, m.Func, true})
			}
		}
	}
	return all
}

// fills are the methods whose business is to fill what they are given.
var fills = map[string]bool{"simulate.Simulation.Chunk": true}

type hammer struct {
	values values
	found  map[string]string // the first finding of each kind
	done   map[string]int    // answers without an error
}

func (h *hammer) say(c call, what string, args []reflect.Value) {
	key := numeral.ReplaceAllString(c.name+": "+what, "N")
	if h.found[key] == "" {
		var given []string
		for _, a := range args {
			given = append(given, fmt.Sprintf("%.600s", safely(a)))
		}
		h.found[key] = c.name + ": " + what + "\n\t(" + strings.Join(given, "; ") + ")"
	}
}

// numeral is what differs between findings of one kind.
var numeral = regexp.MustCompile(`0x[0-9a-f]+|-?\d+`)

// safely prints a value without calling its methods.
func safely(v reflect.Value) string { return fmt.Sprintf("%#v", v) }

// strike calls once: all zero in the first round, hostile in the others.
func (h *hammer) strike(c call, round int) {
	t := c.f.Type()
	args := make([]reflect.Value, t.NumIn())
	for i := range args {
		switch {
		case round == 0 && t.In(i).Kind() == reflect.Pointer && c.pointer && i == 0:
			args[i] = reflect.New(t.In(i).Elem())
		case round == 0 && t.In(i).Kind() != reflect.Interface && t.In(i).Kind() != reflect.Func:
			args[i] = reflect.Zero(t.In(i))
		default:
			args[i] = h.values.of(t.In(i), 0)
		}
		if c.pointer && i == 0 && args[i].IsNil() { // a nil receiver of a method that fills it is the caller's fault
			args[i] = reflect.New(t.In(i).Elem())
		}
	}
	before := make([]reflect.Value, len(args))
	for i := range args {
		before[i] = clone(args[i])
	}
	out, trouble := guarded(c, args)
	if trouble != "" {
		h.say(c, trouble, before)
		return
	}
	for i := range args {
		if !(c.pointer && i == 0) && !fills[c.name] && !same(args[i], before[i]) {
			h.say(c, fmt.Sprintf("argument %d was changed", i), before)
		}
	}
	refuses := len(out) > 0 && t.Out(len(out)-1) == errorType
	if refuses && !out[len(out)-1].IsNil() {
		if out[len(out)-1].Interface().(error).Error() == "" {
			h.say(c, "an error without a word", before)
		}
		return
	}
	// What cannot refuse may hand on what is no number, or so large or small that it has none, but not make it up.
	if refuses || !slices.ContainsFunc(before, func(a reflect.Value) bool { return wild(a, 0) }) {
		for _, o := range out {
			if where := notANumber(o, "", 0); where != "" {
				h.say(c, "no number and no error: "+where, before)
				return
			}
		}
	}
	h.done[c.name]++
	for _, o := range out {
		h.values.keep(o)
	}
	if c.pointer {
		h.values.keep(args[0].Elem())
	}
}

// guarded calls, and says what went wrong.
func guarded(c call, args []reflect.Value) (out []reflect.Value, trouble string) {
	defer func() {
		if r := recover(); r != nil {
			if strings.Contains(c.name, ".Must") { // which says so
				return
			}
			trouble = fmt.Sprintf("panic: %.200v in %s", r, place(debug.Stack()))
		}
	}()
	watch := time.AfterFunc(time.Minute, func() {
		fmt.Printf("%s hangs\n", c.name)
		for _, a := range args {
			fmt.Printf("\t%.2000s\n", safely(a))
		}
		os.Exit(1)
	})
	defer watch.Stop()
	if c.f.Type().IsVariadic() {
		return c.f.CallSlice(args), ""
	}
	return c.f.Call(args), ""
}

// place returns where in the module it broke.
func place(stack []byte) string {
	for line := range strings.Lines(string(stack)) {
		if strings.HasPrefix(line, module+"/") {
			return line[:strings.LastIndexByte(line, '(')]
		}
	}
	return "?"
}

// share has 64 goroutines call every method that changes nothing on one value, and read it.
func (h *hammer) share(calls []call) {
	for _, c := range calls {
		if c.pointer || c.f.Type().NumIn() == 0 {
			continue
		}
		args := make([]reflect.Value, c.f.Type().NumIn())
		for i := range args {
			args[i] = h.values.of(c.f.Type().In(i), 0)
			if args[i].Kind() == reflect.Interface || args[i].Kind() == reflect.Func {
				args = nil // a reader is read by one
				break
			}
		}
		if args == nil {
			continue
		}
		var wait sync.WaitGroup
		for range 64 {
			wait.Go(func() { guarded(c, args) })
		}
		wait.Wait()
	}
}
