// SPDX-License-Identifier: BSD-3-Clause

// Html reads pages as a browser does, and holds each to what a sheet promises: well formed, with nothing that a
// browser would move or mend; every id once, and something behind every name of one; each picture with a title
// and a description; no script; no address outside the page.
//
//	go run -C .ci ./html ../examples/refresh/testdata/*.html
package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"log"
	"os"
	"slices"
	"strings"

	"golang.org/x/net/html"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("html: ")
	if len(os.Args) < 2 {
		log.Fatal("usage: go run -C .ci ./html FILE.html ...")
	}
	bad, pictures := false, 0
	for _, name := range os.Args[1:] {
		data, err := os.ReadFile(name)
		if err != nil {
			log.Fatal(err)
		}
		n, err := check(data)
		if err != nil {
			bad = true
			log.Printf("%s: %v", name, err)
		}
		pictures += n
	}
	if bad {
		os.Exit(1)
	}
	fmt.Printf("%d pages, %d pictures\n", len(os.Args)-1, pictures)
}

// check returns how many pictures a page has, and everything that is wrong with it.
func check(data []byte) (pictures int, err error) {
	root, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		return 0, err
	}
	var faults []error
	fault := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }

	written, err := elements(data)
	if err != nil {
		fault("not well formed: %w", err)
	}
	var understood []string
	ids, named := map[string]bool{}, []string{}
	for n := range root.Descendants() {
		if n.Type == html.CommentNode {
			fault("a comment: %q", n.Data)
		}
		if n.Type != html.ElementNode {
			continue
		}
		depth := -1
		for range n.Ancestors() {
			depth++
		}
		understood = append(understood, fmt.Sprint(depth, " ", n.Data))
		switch n.Data {
		case "script", "iframe", "object", "embed", "link", "base", "form", "foreignObject", "img", "image", "use", "audio", "video", "a":
			fault("<%s>", n.Data)
		case "style":
			if text := text(n); strings.Contains(text, "url(") || strings.Contains(text, "@import") {
				fault("the style reaches outside")
			}
		case "svg":
			pictures++
			if err := described(n); err != nil {
				fault("picture %d: %w", pictures, err)
			}
		}
		for _, a := range n.Attr {
			switch {
			case strings.HasPrefix(a.Key, "on"):
				fault("<%s %s>", n.Data, a.Key)
			case slices.Contains([]string{"src", "srcset", "href", "data", "action", "formaction", "poster", "background", "style", "ping"}, a.Key):
				fault("<%s %s=%q>", n.Data, a.Key, a.Val)
			case a.Key == "id":
				if ids[a.Val] || a.Val == "" {
					fault("id %q twice, or empty", a.Val)
				}
				ids[a.Val] = true
			case a.Key == "aria-labelledby" || a.Key == "aria-describedby" || a.Key == "for" || a.Key == "headers":
				named = append(named, strings.Fields(a.Val)...)
			}
			if at, id, ok := strings.Cut(a.Val, "url("); ok && n.Namespace == "svg" {
				id, _, _ = strings.Cut(id, ")")
				if at != "" || !strings.HasPrefix(id, "#") {
					fault("<%s %s=%q>", n.Data, a.Key, a.Val)
				}
				named = append(named, strings.TrimPrefix(id, "#"))
			}
		}
	}
	for i := range max(len(written), len(understood)) {
		if w, u := at(written, i), at(understood, i); w != u && err == nil {
			fault("element %d is written %q and understood %q (depth and name)", i, w, u)
			break
		}
	}
	for _, id := range named {
		if !ids[id] {
			fault("nothing has the id %q", id)
		}
	}
	return pictures, errors.Join(faults...)
}

// elements reads a page strictly, by the rules of XML, and returns the depth and name of each element in order.
func elements(data []byte) (list []string, err error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	depth := 0
	for {
		token, err := d.Token()
		if err == io.EOF {
			return list, nil
		}
		if err != nil {
			return nil, err
		}
		switch t := token.(type) {
		case xml.StartElement:
			list = append(list, fmt.Sprint(depth, " ", t.Name.Local))
			depth++
		case xml.EndElement:
			depth--
		}
	}
}

// described reports what a picture lacks for those who cannot see it.
func described(svg *html.Node) error {
	var label string
	role := false
	for _, a := range svg.Attr {
		switch a.Key {
		case "aria-labelledby":
			label = a.Val
		case "role":
			role = a.Val == "img"
		}
	}
	if !role {
		return errors.New("no role of an image")
	}
	for _, want := range []string{"title", "desc"} {
		found := false
		for child := range svg.ChildNodes() {
			if child.Type != html.ElementNode || child.Data != want || strings.TrimSpace(text(child)) == "" {
				continue
			}
			for _, a := range child.Attr {
				found = found || a.Key == "id" && slices.Contains(strings.Fields(label), a.Val)
			}
		}
		if !found {
			return fmt.Errorf("no <%s> that its label names", want)
		}
	}
	return nil
}

// text returns what stands in an element.
func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return b.String()
}

func at(list []string, i int) string {
	if i < len(list) {
		return list[i]
	}
	return "nothing"
}
