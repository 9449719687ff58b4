package lsp

import (
	"encoding/json"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.lsp.dev/protocol"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// Every initialize payload that was seen from a real client is understood.
func TestInitializePayloads(t *testing.T) {
	files, err := filepath.Glob("../testdata/lsp/initialize/*.json")
	if err != nil || len(files) < 8 {
		t.Fatalf("%d payloads, %v", len(files), err)
	}
	pageOfRules(t)
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			b, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			var whole map[string]json.RawMessage
			if err := json.Unmarshal(b, &whole); err != nil {
				t.Fatal(err)
			}
			params := json.RawMessage(b)
			if p, ok := whole["params"]; ok {
				params = p
			}
			c := newClient(t)
			r := c.result("initialize", params)
			contained(t, "the answer", r, "positionEncoding", "hoverProvider", "tundish")
			c.notify("initialized", object{})
			uri, text := example(t, "l-shaped-faulty.plant")
			c.open(uri, text, 0)
			found := false
			for m := range c.notes {
				if m["method"] == "textDocument/publishDiagnostics" {
					found = len(m["params"].(map[string]any)["diagnostics"].([]any)) > 50
					break
				}
			}
			if !found {
				t.Error("no diagnostics")
			}
			for _, method := range []string{"textDocument/hover", "textDocument/completion", "textDocument/codeLens", "textDocument/documentSymbol", "textDocument/inlayHint", "textDocument/semanticTokens/full"} {
				c.result(method, object{"textDocument": object{"uri": uri}, "position": object{"line": 30, "character": 5}, "range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 50, "character": 0}}})
			}
			c.result("shutdown", nil)
		})
	}
}

// The server lives through whatever a client sends.
func TestTorture(t *testing.T) {
	c := newClient(t)
	raw := func(s string) {
		c.wmu.Lock()
		defer c.wmu.Unlock()
		fmt.Fprint(c.out, s)
	}
	if m := c.request("textDocument/hover", object{}); m["error"].(map[string]any)["code"].(float64) != -32002 {
		t.Errorf("before initialize: %v", m)
	}
	c.initialize()
	c.notify("no/suchNotification", object{"x": 1})
	c.notify("$/setTrace", object{"value": "verbose"})
	c.notify("textDocument/didOpen", []int{1, 2, 3})
	c.notify("textDocument/didChange", object{"textDocument": "x"})
	c.notify("textDocument/didChange", nil)
	c.notify("$/cancelRequest", object{"id": nil})
	c.notify("$/cancelRequest", nil)
	c.notify("$/cancelRequest", object{"id": 4711})
	c.raw(`{"jsonrpc":"2.0","id":null,"method":"textDocument/hover","params":{}}`)
	c.raw(`{not json`)
	c.raw(``)
	c.raw(`[]`)
	c.raw(`{"jsonrpc":"2.0"}`)
	c.raw(`{"jsonrpc":"2.0","id":99,"result":null}`)
	raw("content-length: 45\r\nCONTENT-TYPE: x\r\n\r\n" + `{"jsonrpc":"2.0","method":"initialized"}     `)
	raw("Content-Length: 99999999999999\r\n\r\n")
	raw("Content-Length: -5\r\n\r\n")
	raw("Content-Length: abc\r\n\r\n")
	raw("Nonsense\r\n\r\n")
	for _, method := range []string{"no/suchRequest", "textDocument/hover", "textDocument/rename", "textDocument/codeAction", "textDocument/selectionRange", "callHierarchy/incomingCalls", "textDocument/semanticTokens/full/delta"} {
		for _, p := range []any{nil, object{}, []int{1}, "x", object{"textDocument": object{"uri": "untitled:None"}}, object{"position": object{"line": -1, "character": -1}}, object{"textDocument": object{"uri": "untitled:A"}, "position": object{"line": 4294967295, "character": 4294967295}}} {
			c.request(method, p)
		}
	}
	c.open("untitled:A", "plant \"x\"\nbasis {\n", 1)
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": "untitled:A", "version": nil}, "contentChanges": []object{{"range": nil, "rangeLength": -1, "text": "plant \"y\"\nbasis {\n  altitude 5 m\n}\n"}}})
	contained(t, "the text after a null range", c.result("textDocument/hover", object{"textDocument": object{"uri": "untitled:A"}, "position": object{"line": 2, "character": 3}}), "sea level")
	c.notify("textDocument/didClose", object{"textDocument": object{"uri": "untitled:A"}})
	c.result("shutdown", nil)
	if m := c.request("textDocument/hover", object{}); m["error"] == nil {
		t.Error("after shutdown a request is answered")
	}
	c.notify("exit", nil)
	select {
	case code := <-c.done:
		c.done <- code
		if code != 0 {
			t.Errorf("exit code %d after shutdown", code)
		}
	case <-time.After(5 * time.Second):
		t.Error("exit does not end the server")
	}
}

// A storm of requests, half of them canceled, leaves none without an answer.
func TestCancelStorm(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "back-to-back.plant")
	c.open(uri, text, 1)
	var all []chan map[string]any
	for i := range 400 {
		ch := c.start("textDocument/hover", object{"textDocument": object{"uri": uri}, "position": object{"line": i % 200, "character": 4}})
		all = append(all, ch)
		if i%2 == 0 {
			c.notify("$/cancelRequest", object{"id": c.next})
		}
		if i%10 == 0 {
			c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": i + 2}, "contentChanges": []object{{"range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 0, "character": 0}}, "text": "# x\n"}}})
		}
	}
	deadline := time.After(30 * time.Second)
	for i, ch := range all {
		select {
		case m := <-ch:
			if e, bad := m["error"].(map[string]any); bad && e["code"].(float64) != -32800 {
				t.Fatalf("request %d: %v", i, e)
			}
		case <-deadline:
			t.Fatalf("request %d has no answer", i)
		}
	}
}

// Random edits: the text built from increments equals the text built whole, and
// the diagnostics equal the linter's.
func TestRandomEdits(t *testing.T) {
	uri, text := example(t, "in-line.plant")
	for _, enc := range []encoding{utf16, utf8Bytes} {
		r := rand.New(rand.NewSource(int64(enc) + 3))
		c := newClient(t)
		init := strings.Replace(initAll, `"capabilities":{`, `"capabilities":{"general":{"positionEncodings":["utf-16"]},`, 1)
		if enc == utf8Bytes {
			init = strings.Replace(initAll, `"capabilities":{`, `"capabilities":{"general":{"positionEncodings":["utf-8","utf-16"]},`, 1)
		}
		c.result("initialize", json.RawMessage(init))
		c.notify("initialized", object{})
		want := text
		c.open(uri, want, 1)
		pieces := []string{"x", "🔥", "é", "\n", "  ", "{", "}", "\"", "#", " 5 m", "DN50", "\r\n", "e\u0301", "U1..U4", "(", "unknown"}
		for v := 2; v < 60; v++ {
			var changes []object
			for range 1 + r.Intn(3) {
				src := lang.NewSource("", want)
				a := rune0(want, r.Intn(len(want)+1))
				b := rune0(want, min(len(want), a+r.Intn(12)))
				ins := pieces[r.Intn(len(pieces))]
				changes = append(changes, object{"range": enc.rangeOf(src, lang.Span{Start: a, End: b}), "text": ins})
				// What a client means by the range: positions cannot stand between
				// "\r" and "\n", so apply through positions here too.
				sp := enc.span(src, enc.rangeOf(src, lang.Span{Start: a, End: b}))
				want = want[:sp.Start] + ins + want[sp.End:]
			}
			c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": v}, "contentChanges": changes})
			if v%7 != 0 {
				continue
			}
			got := codes(c.diagnostics(uri, v))
			if lint := lintCodes(t, uri, want); fmt.Sprint(got) != fmt.Sprint(lint) {
				t.Fatalf("version %d: the server says %v, the linter %v", v, got, lint)
			}
		}
	}
}

// rune0 moves an offset back to the start of a character.
func rune0(s string, i int) int {
	for i > 0 && i < len(s) && s[i]&0xC0 == 0x80 {
		i--
	}
	return i
}

// lintCodes counts the findings and open questions as the linter tells them.
func lintCodes(t *testing.T, uri, text string) map[string]int {
	t.Helper()
	name := pathOf(uri)
	parse := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), nil)
		lang.Bind(f, lang.Language())
		return f
	}
	p := plant.Resolve(parse(name, text), func(n string) (*lang.File, error) {
		b, err := os.ReadFile(n)
		if err != nil {
			return nil, err
		}
		return parse(n, string(b)), nil
	})
	rep := check.Run(check.Input{Plant: p, Rules: rules.All()})
	out := map[string]int{}
	for i := range rep.Findings {
		if f := &rep.Findings[i]; f.File == nil || f.File == p.File {
			out[f.Rule]++
		}
	}
	for i := range rep.Unknowns {
		out[rep.Unknowns[i].Rule]++
	}
	return out
}

func TestPositionsRoundTrip(t *testing.T) {
	text := "a🔥é\r\nß\n\ne\u0301x 𝔘\n"
	src := lang.NewSource("", text)
	for _, enc := range []encoding{utf16, utf8Bytes} {
		for i := range text {
			if text[i] == '\n' && i > 0 && text[i-1] == '\r' {
				continue
			}
			if got := enc.offset(src, enc.position(src, i)); got != i {
				t.Errorf("encoding %d: offset %d comes back as %d", enc, i, got)
			}
		}
		if got := enc.offset(src, protocol.Position{Line: 0, Character: 999}); text[got] != '\r' {
			t.Errorf("past the line's end: %d", got)
		}
	}
}

func FuzzPositionMapping(f *testing.F) {
	f.Add("a🔥é\r\nß\n", uint32(0), uint32(2))
	f.Fuzz(func(t *testing.T, text string, line, char uint32) {
		src := lang.NewSource("", text)
		for _, enc := range []encoding{utf16, utf8Bytes} {
			o := enc.offset(src, protocol.Position{Line: line, Character: char})
			if o < 0 || o > len(text) {
				t.Fatalf("offset %d of %d", o, len(text))
			}
			enc.position(src, o)
		}
	})
}

func FuzzStream(f *testing.F) {
	f.Add("Content-Length: 2\r\n\r\n{}")
	f.Add("content-length: 99999999999999999999\r\n\r\n")
	f.Add("\r\n\r\n\r\nX: y\r\n\r\n")
	f.Fuzz(func(t *testing.T, in string) {
		s := newStream(strings.NewReader(in), nil, nil)
		for range len(in) + 2 {
			b, err := s.read()
			if err != nil && err.Error() == "EOF" {
				return
			}
			if len(b) > len(in) {
				t.Fatalf("%d bytes out of %d", len(b), len(in))
			}
		}
		t.Fatal("the stream does not end")
	})
}

// A whole session, recorded, is valid by the protocol's own model.
func TestSessionAgainstModel(t *testing.T) {
	const validator = "../../shared/lsp/validate.mjs"
	if _, err := os.Stat(validator); err != nil {
		t.Skip("the protocol model and its validator are not beside this clone")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed")
	}
	pageOfRules(t)
	c := newClient(t)
	c.answers["window/showDocument"] = `{"success":true}`
	c.answers["workspace/applyEdit"] = `{"applied":true}`
	payload, err := os.ReadFile("../testdata/lsp/initialize/strict.json")
	if err != nil {
		t.Fatal(err)
	}
	var init map[string]any
	if err := json.Unmarshal(payload, &init); err != nil {
		t.Fatal(err)
	}
	if p, ok := init["params"].(map[string]any); ok {
		init = p
	}
	uri, text := example(t, "l-shaped-faulty.plant")
	init["rootUri"], init["workspaceFolders"], init["trace"] = nil, []object{{"uri": uriOf(filepath.Dir(pathOf(uri))), "name": "examples"}}, "verbose"
	c.result("initialize", init)
	c.notify("initialized", object{})
	c.open(uri, text, 1)
	if d := c.diagnostics(uri, 1)[0].(map[string]any); d["codeDescription"] == nil {
		t.Error("the session has no links to the rules")
	}
	doc := object{"uri": uri}
	whole := object{"start": object{"line": 0, "character": 0}, "end": object{"line": 170, "character": 0}}
	at := position(text, "G1         steel", 0)
	base := object{"textDocument": doc, "position": at, "range": whole, "options": object{"tabSize": 2, "insertSpaces": true}, "context": object{"diagnostics": []object{}, "includeDeclaration": true, "triggerKind": 1}, "positions": []object{at}}
	for _, m := range []string{"hover", "completion", "signatureHelp", "definition", "references", "documentHighlight", "documentSymbol", "codeAction", "codeLens", "documentLink", "formatting", "rangeFormatting", "prepareRename", "foldingRange", "selectionRange", "semanticTokens/full", "semanticTokens/range", "inlayHint", "prepareCallHierarchy", "linkedEditingRange", "diagnostic"} {
		c.result("textDocument/"+m, base)
	}
	base["newName"] = "G7"
	c.result("textDocument/rename", base)
	base["ch"] = "}"
	c.result("textDocument/onTypeFormatting", base)
	c.result("workspace/symbol", object{"query": "u", "workDoneToken": "w"})
	item := c.result("textDocument/prepareCallHierarchy", base).([]any)[0]
	c.result("callHierarchy/incomingCalls", object{"item": item})
	c.result("callHierarchy/outgoingCalls", object{"item": item})
	base["position"] = position(text, "DN50 16 m", 2)
	sizes := c.result("textDocument/completion", base).(map[string]any)["items"].([]any)
	c.result("completionItem/resolve", sizes[len(sizes)-1])
	base["position"] = object{"line": at["line"], "character": 2}
	c.result("textDocument/completion", base)
	base["context"] = object{"diagnostics": []object{}, "only": []string{"source.fixAll"}}
	c.result("textDocument/codeAction", base)
	base["context"] = object{"diagnostics": []object{}, "only": []string{"refactor"}}
	for _, action := range c.result("textDocument/codeAction", base).([]any) {
		c.result("codeAction/resolve", action)
	}
	full := c.result("textDocument/semanticTokens/full", base).(map[string]any)
	change := object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"range": object{"start": at, "end": at}, "text": "("}}}
	c.notify("textDocument/didChange", change)
	base["previousResultId"] = full["resultId"]
	c.result("textDocument/semanticTokens/full/delta", base)
	c.result("textDocument/inlayHint", base)
	c.result("textDocument/codeLens", base)
	c.result("textDocument/diagnostic", base)
	c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}})
	c.note("window/showDocument")
	c.result("workspace/executeCommand", object{"command": commandEdit, "arguments": []object{{"changes": object{}}}})
	c.note("workspace/applyEdit")
	catalogue, catalogueText := example(t, "catalogue.plant")
	c.result("workspace/willRenameFiles", object{"files": []object{{"oldUri": catalogue, "newUri": catalogue + "2.plant"}}})
	c.open(catalogue, catalogueText+"\n", 1)
	c.diagnostics(catalogue, 1)
	c.notify("workspace/didChangeConfiguration", object{"settings": object{"tundish": object{"hints": false}}})
	c.notify("textDocument/didClose", object{"textDocument": object{"uri": catalogue}})
	c.request("no/such", object{})
	c.result("shutdown", nil)
	log := filepath.Join(t.TempDir(), "session.jsonl")
	if err := os.WriteFile(log, c.log.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(node, validator, "--model", filepath.Join(filepath.Dir(validator), "metaModel-3.18.json"), "--strict", log).CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%.6000s", err, out)
	}
}
