//go:build pages

package main

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/textproto"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"example.org/tundish/lsp"
)

// session is a small client of the language server.
type session struct {
	t    *testing.T
	out  *io.PipeWriter
	in   *bufio.Reader
	next int
}

func startSession(t *testing.T) *session {
	t.Helper()
	toServer, fromClient := io.Pipe()
	toClient, fromServer := io.Pipe()
	done := make(chan struct{})
	go func() {
		defer close(done)
		lsp.Run(context.Background(), toServer, fromServer, lsp.Options{Version: version, Figures: figures})
		fromServer.Close()
	}()
	s := &session{t: t, out: fromClient, in: bufio.NewReader(toClient)}
	t.Cleanup(func() {
		fromClient.Close()
		go io.Copy(io.Discard, toClient)
		<-done
	})
	s.ask("initialize", map[string]any{"processId": nil, "rootUri": nil, "capabilities": map[string]any{}})
	s.send("initialized", 0, map[string]any{})
	return s
}

func (s *session) send(method string, id int, params any) {
	m := map[string]any{"jsonrpc": "2.0", "method": method, "params": params}
	if id > 0 {
		m["id"] = id
	}
	body, err := json.Marshal(m)
	if err != nil {
		s.t.Fatal(err)
	}
	if _, err := fmt.Fprintf(s.out, "Content-Length: %d\r\n\r\n%s", len(body), body); err != nil {
		s.t.Fatal(err)
	}
}

// read gives the next message of the server.
func (s *session) read() map[string]json.RawMessage {
	head, err := textproto.NewReader(s.in).ReadMIMEHeader()
	if err != nil {
		s.t.Fatal(err)
	}
	n, err := strconv.Atoi(head.Get("Content-Length"))
	if err != nil {
		s.t.Fatal(err)
	}
	body := make([]byte, n)
	if _, err := io.ReadFull(s.in, body); err != nil {
		s.t.Fatal(err)
	}
	var m map[string]json.RawMessage
	if err := json.Unmarshal(body, &m); err != nil {
		s.t.Fatal(err)
	}
	return m
}

func (s *session) ask(method string, params any) json.RawMessage {
	s.t.Helper()
	s.next++
	s.send(method, s.next, params)
	for {
		m := s.read()
		if string(m["id"]) == strconv.Itoa(s.next) && m["method"] == nil {
			if m["error"] != nil {
				s.t.Fatalf("%s: %s", method, m["error"])
			}
			return m["result"]
		}
	}
}

// The live sheet renews itself in the browser as the text changes, leaves the
// reader at the same calculation, and says when the text cannot be read.
func TestLivePage(t *testing.T) {
	tab := openBrowser(t)
	file, err := filepath.Abs("../../examples/in-line.plant")
	if err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text, uri := string(b), "file://"+file
	s := startSession(t)
	s.send("textDocument/didOpen", 0, map[string]any{"textDocument": map[string]any{"uri": uri, "languageId": "plant", "version": 1, "text": text}})
	var address string
	if err := json.Unmarshal(s.ask("workspace/executeCommand", map[string]any{"command": "tundish.sheet", "arguments": []string{uri}}), &address); err != nil {
		t.Fatal(err)
	}
	go func() { // the server's further messages are taken and left
		for {
			if _, err := s.in.Discard(1); err != nil {
				return
			}
		}
	}()
	version := 1
	change := func(old, now string) {
		t.Helper()
		if !strings.Contains(text, old) {
			t.Fatalf("the example has no %q any more", old)
		}
		version++
		s.send("textDocument/didChange", 0, map[string]any{"textDocument": map[string]any{"uri": uri, "version": version}, "contentChanges": []any{map[string]any{"text": strings.Replace(text, old, now, 1)}}})
	}
	p := &shownPage{t: t, name: "live", ctx: tab(t)}
	p.visit(address)
	wait := func(what, condition string) {
		t.Helper()
		p.run(what, chromedp.Poll(condition, nil))
	}
	// place is where the calculations begin, seen from the top of the window.
	place := func() (top float64) {
		t.Helper()
		p.run("place", chromedp.Evaluate(`document.getElementById("calculations").getBoundingClientRect().top`, &top))
		return top
	}
	p.run("reading", chromedp.EmulateViewport(1280, 900), chromedp.Evaluate(`document.getElementById("calculations").scrollIntoView(); scrollBy(0, 60)`, nil))
	before := place()
	if before > 0 || before < -200 {
		t.Fatalf("the calculations stand at %v", before)
	}
	same := func(what string) {
		t.Helper()
		if now := place(); now < before-2 || now > before+2 {
			t.Errorf("%s: the calculations stood at %v and stand at %v", what, before, now)
		}
	}
	change("DN65 14 m", "DN32 14 m")
	wait("the finding of the changed text", `document.getElementById("findings").textContent.includes("G1 alone loses")`)
	same("after a change")
	change("DN65 14 m", "DN(\"")
	wait("the word that the text is broken", `!!document.getElementById("notice") && document.getElementById("findings").textContent.includes("G1 alone loses")`)
	same("while the text is broken")
	change("plant \"", "plant \"New ")
	wait("the mended text", `!document.getElementById("notice") && !document.getElementById("findings").textContent.includes("G1 alone loses") && document.title.startsWith("New ")`)
	same("after the mend")
	for i := range 40 { // a storm of typing ends in the last text
		change("DN65 14 m", fmt.Sprintf("DN65 %d.5 m", i+10))
	}
	wait("the last of many changes", `document.getElementById("text").textContent.includes("DN65 49.5 m")`)
	same("after many changes")
	var loaded []string
	p.run("what was loaded", chromedp.Evaluate(`performance.getEntriesByType("resource").map((e) => e.name)`, &loaded))
	for _, l := range loaded {
		if !strings.HasPrefix(l, address) {
			t.Errorf("the page asks %s", l)
		}
	}
}
