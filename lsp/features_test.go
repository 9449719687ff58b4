package lsp

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/lang"
)

func contained(t *testing.T, what string, v any, words ...string) {
	t.Helper()
	raw, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	s := strings.NewReplacer(`\u003c`, "<", `\u003e`, ">", `\u0026`, "&").Replace(string(raw))
	for _, w := range words {
		if !strings.Contains(s, w) {
			t.Errorf("%s lacks %q:\n%.1500s", what, w, s)
		}
	}
}

// Editing the sound example into a faulty one and back: findings come and go,
// hints change, and the offered fix makes the text sound again.
func TestEditing(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	doc := object{"uri": uri}
	c.open(uri, text, 1)
	if got := codes(c.diagnostics(uri, 1)); got["gas-drop-over-limit"] != 0 || got["return-above-dew-point"] != 1 {
		t.Fatalf("the sound example gives %v", got)
	}
	before := c.result("textDocument/inlayHint", object{"textDocument": doc, "range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 999, "character": 0}}})
	contained(t, "hints", before, "loses 0.1568 mbar", "at 0.5802 m/s", "flue left")
	at := position(text, "DN65 14 m", 0)
	end := object{"line": at["line"], "character": at["character"].(int) + 4}
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"range": object{"start": at, "end": end}, "text": "DN32"}}})
	faulty := c.diagnostics(uri, 2)
	if got := codes(faulty); got["gas-drop-over-limit"] != 1 {
		t.Fatalf("DN32 gives %v", got)
	}
	contained(t, "diagnostics", faulty, "G1 alone loses", "BS 6891", "relatedInformation", "is left with")
	after := c.result("textDocument/inlayHint", object{"textDocument": doc, "range": object{"start": at, "end": end}})
	contained(t, "hints", after, "loses")
	actions := c.result("textDocument/codeAction", object{"textDocument": doc, "range": object{"start": at, "end": at}, "context": object{"diagnostics": []object{}}})
	contained(t, "actions", actions, "Take G1 in DN", `"isPreferred":true`, "documentChanges", `"version":2`, "Write a deviation from gas-drop-over-limit")
	pf := position(text, "DN80 3.0 m", 0)
	smaller := c.result("textDocument/codeAction", object{"textDocument": doc, "range": object{"start": pf, "end": pf}, "context": object{"diagnostics": []object{}, "only": []string{"refactor"}}})
	contained(t, "actions on PF", smaller, "Take the smallest size of PF that passes: DN65")
	// Take the offered size.
	edit := actions.([]any)[0].(map[string]any)["edit"].(map[string]any)["documentChanges"].([]any)[0].(map[string]any)["edits"].([]any)[0].(map[string]any)
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 5}, "contentChanges": []object{{"range": edit["range"], "text": edit["newText"]}}})
	if got := codes(c.diagnostics(uri, 5)); got["gas-drop-over-limit"] != 0 {
		t.Errorf("after the fix: %v", got)
	}
}

func TestHover(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text+"deviation pipe-too-fast on PF because \"x\" by D1 until 2027-01-01\n", 1)
	c.diagnostics(uri, 1)
	doc := object{"uri": uri}
	for _, h := range []struct {
		at    string
		n     int
		words []string
	}{
		{"G1         steel", 0, []string{"pressure-loss.all-full", "with Q =", "isothermal"}},
		{"regulator", -1, nil},
		{"altitude", 1, []string{"above sea level", "Example"}},
		{"units U1..U4 {", 2, []string{"Example:"}},
		{"gas-run {", 2, []string{"gas pipes", "Example: `gas-run { ... }`", "pressure-loss.all-full = "}},
		{"85 m", 0, []string{"278.9 ft", "altitude"}},
		{"pipe-too-fast on", 3, []string{"runs too fast", "CIBSE"}},
		{"non-return isolating", 2, []string{"non-return valve"}},
		{"Wall-60", 2, []string{"unit-type"}},
	} {
		if h.n < 0 {
			continue
		}
		r := c.result("textDocument/hover", object{"textDocument": doc, "position": position(text+"deviation pipe-too-fast on PF because \"x\" by D1 until 2027-01-01\n", h.at, h.n)})
		contained(t, "hover over "+h.at, r, h.words...)
	}
	if r := c.result("textDocument/hover", object{"textDocument": doc, "position": object{"line": 99999, "character": 99}}); r != nil {
		t.Errorf("hover past the end: %v", r)
	}
}

func TestCompletion(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	doc := object{"uri": uri}
	for i, k := range []struct {
		after, typed string
		want         []string
		not          string
	}{
		{"  firing          all-together\n", "  ", []string{`"altitude"`, `"load-curve"`}, `"riser"`},
		{"  firing          all-together\n", "  altitude 12 ", []string{`"m"`, `"ft"`}, `"bar"`},
		{"gas-run {\n", "  pipe G9 steel ", []string{`"DN50"`, `"bends"`, `"from"`}, `"DN9"`},
		{"gas-run {\n", "  pipe G9 steel DN50 3 m from ", []string{`"Meter"`, `"Shut-1"`}, `"falls"`},
		{"units U1..U4 {\n", "  type ", []string{`"Wall-60"`, `"Wall-100"`}, `"Plate-44"`},
		{"units U1..U4 {\n", "  gas-valve DN25 l", []string{`"lever"`}, ""},
		{"  firing          all-together\n}\n", "", []string{`"units"`, `"require"`}, ""},
	} {
		edited := strings.Replace(text, k.after, k.after+k.typed+"\n", 1)
		c.open(uri, edited, i+1)
		at := strings.Index(edited, k.after) + len(k.after) + len(k.typed)
		pos := utf16.position(lang.NewSource("", edited), at)
		r := c.result("textDocument/completion", object{"textDocument": doc, "position": pos})
		contained(t, "completion behind "+k.typed, r, k.want...)
		if raw, _ := json.Marshal(r); k.not != "" && strings.Contains(string(raw), `"label":`+k.not) {
			t.Errorf("completion behind %q offers %s", k.typed, k.not)
		}
	}
}

func TestNavigation(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	catalogue, _ := example(t, "catalogue.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	doc := object{"uri": uri}
	at := func(s string, n int) object { return object{"textDocument": doc, "position": position(text, s, n)} }
	contained(t, "definition of a type", c.result("textDocument/definition", at("Wall-60", 1)), catalogue)
	contained(t, "definition of a pipe", c.result("textDocument/definition", at("Man-A bends", 1)), uri)
	refs := object{"textDocument": doc, "position": position(text, "Shut-1    emergency", 1), "context": object{"includeDeclaration": true}}
	if got := len(c.result("textDocument/references", refs).([]any)); got != strings.Count(text, "Shut-1") {
		t.Errorf("%d references to Shut-1, the text has %d", got, strings.Count(text, "Shut-1"))
	}
	contained(t, "highlights", c.result("textDocument/documentHighlight", at("Flow-H, Return-H, PF", 1)), `"kind":3`, `"kind":2`)
	contained(t, "prepare rename", c.result("textDocument/prepareRename", at("Man-A bends", 1)), `"placeholder":"Man-A"`)
	rename := at("Man-A bends", 1)
	rename["newName"] = "Man-B"
	contained(t, "rename", c.result("textDocument/rename", rename), `"newText":"Man-B"`, "documentChanges")
	for _, bad := range []string{"man-b", "M16", "Shut-1", "A.b", ""} {
		rename["newName"] = bad
		if m := c.request("textDocument/rename", rename); m["error"] == nil {
			t.Errorf("renaming to %q is allowed", bad)
		}
	}
	contained(t, "symbols", c.result("textDocument/documentSymbol", object{"textDocument": doc}), `"name":"G1"`, `"name":"U1..U4"`, `"children"`)
	contained(t, "workspace symbols", c.result("workspace/symbol", object{"query": "shut"}), `"name":"Shut-1"`)
	contained(t, "folding", c.result("textDocument/foldingRange", object{"textDocument": doc}), "startLine")
	contained(t, "selection", c.result("textDocument/selectionRange", object{"textDocument": doc, "positions": []object{position(text, "DN65 14 m", 1)}}), "parent")
	contained(t, "links", c.result("textDocument/documentLink", object{"textDocument": doc}), catalogue)
	contained(t, "lenses", c.result("textDocument/codeLens", object{"textDocument": doc}), "tightest limit", "errors 0")
	contained(t, "signature", c.result("textDocument/signatureHelp", at("DN65 14 m", 0)), "pipe Name", "activeParameter")
	item := c.result("textDocument/prepareCallHierarchy", at("G1         steel", 0)).([]any)[0]
	contained(t, "upstream", c.result("callHierarchy/incomingCalls", object{"item": item}), `"name":"Meter"`)
	contained(t, "downstream", c.result("callHierarchy/outgoingCalls", object{"item": item}), `"name":"Shut-1"`)
}

func TestSemanticTokens(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text, 1)
	doc := object{"uri": uri}
	full := c.result("textDocument/semanticTokens/full", object{"textDocument": doc}).(map[string]any)
	old := full["data"].([]any)
	if len(old) == 0 || len(old)%5 != 0 {
		t.Fatalf("%d numbers", len(old))
	}
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 0, "character": 0}}, "text": "# new\n"}}})
	delta := c.result("textDocument/semanticTokens/full/delta", object{"textDocument": doc, "previousResultId": full["resultId"]}).(map[string]any)
	want := c.result("textDocument/semanticTokens/full", object{"textDocument": doc}).(map[string]any)["data"].([]any)
	got := append([]any(nil), old...)
	for _, e := range delta["edits"].([]any) {
		m := e.(map[string]any)
		s, n := int(m["start"].(float64)), int(m["deleteCount"].(float64))
		data, _ := m["data"].([]any)
		got = append(got[:s:s], append(append([]any(nil), data...), got[s+n:]...)...)
	}
	a, _ := json.Marshal(got)
	b, _ := json.Marshal(want)
	if string(a) != string(b) {
		t.Error("the delta does not lead to the full answer")
	}
}

func TestFormatting(t *testing.T) {
	c := newClient(t)
	c.initialize()
	text := "plant   \"x 🔥 ü\"\n\n\n\nbasis   {\naltitude 10   m   # high 🔥\n   outside -3   degC\n}\nroom { side 0.8 m }\n"
	c.open("untitled:One", text, 1)
	edits := c.result("textDocument/formatting", object{"textDocument": object{"uri": "untitled:One"}, "options": object{"tabSize": 2, "insertSpaces": true}}).([]any)
	raw, _ := json.Marshal(edits)
	var list []struct {
		Range struct {
			Start struct{ Line, Character uint32 }
			End   struct{ Line, Character uint32 }
		}
		NewText string
	}
	if err := json.Unmarshal(raw, &list); err != nil {
		t.Fatal(err)
	}
	src := lang.NewSource("", text)
	var le []lang.Edit
	for _, e := range list {
		var p docPosition
		p.Range.Start.Line, p.Range.Start.Character = e.Range.Start.Line, e.Range.Start.Character
		p.Range.End.Line, p.Range.End.Character = e.Range.End.Line, e.Range.End.Character
		le = append(le, lang.Edit{Span: utf16.span(src, p.Range), NewText: e.NewText})
	}
	f := lang.Parse(src, nil)
	lang.Bind(f, lang.Language())
	if got, want := lang.Apply(text, le), lang.Format(f); got != want {
		t.Errorf("the edits give\n%q\nwant\n%q", got, want)
	}
}

// A catalogue that changes in the editor changes the findings of the plant that
// uses it, unsaved.
func TestAcrossFiles(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	cat, catText := example(t, "catalogue.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	c.open(cat, strings.Replace(catText, "input           61.8 kW net", "input           90 kW net", 1), 1)
	for range 50 {
		if got := codes(c.diagnostics(uri, 1)); got["meter-too-small"] > 0 || got["gas-margin-used-up"] > 0 || got["flue-push-too-weak"] > 0 || got["chimney-approval-missing"] > 0 {
			return
		}
	}
	t.Error("the plant did not hear of its catalogue's change")
}

// Diagnostics are pushed until a document is first pulled, then withdrawn.
func TestPull(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri := "untitled:Pull"
	c.open(uri, "plant \"x\"\nbasis {\n  altitude 10 bar\n}\n", 7)
	if len(c.diagnostics(uri, 7)) == 0 {
		t.Fatal("nothing was pushed")
	}
	r := c.result("textDocument/diagnostic", object{"textDocument": object{"uri": uri}})
	contained(t, "pulled", r, `"kind":"full"`, "wrong-unit")
	if left := c.diagnostics(uri, 7); len(left) != 0 {
		t.Errorf("still pushed: %v", left)
	}
}

// While a statement is half typed hints keep the last good values, marked.
func TestStaleHints(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	at := position(text, "  fitting-allowance", 0)
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"range": object{"start": at, "end": at}, "text": "  pipe G7 ste(\n"}}})
	c.diagnostics(uri, 2)
	r := c.result("textDocument/inlayHint", object{"textDocument": object{"uri": uri}, "range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 999, "character": 0}}})
	contained(t, "hints", r, "before this edit", "loses 0.1568 mbar")
}

// The editor holds to the project's own limits as the linter does, also when the
// project file is written after the plant was opened.
func TestProjectSettings(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"l-shaped-faulty.plant", "catalogue.plant"} {
		_, text := example(t, name)
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	c := newClient(t)
	c.initialize()
	uri := uriOf(filepath.Join(dir, "l-shaped-faulty.plant"))
	_, text := example(t, "l-shaped-faulty.plant")
	c.open(uri, text, 1)
	before := codes(c.diagnostics(uri, 1))
	if before["gas-drop-over-limit"] == 0 {
		t.Fatal("the example lacks the fault that this test is about")
	}
	project := uriOf(filepath.Join(dir, "project.plant"))
	c.open(project, "project \"Own limits, invented\"\nlimit gas-drop-natural-uk 50 mbar because \"test\"\n", 1)
	after := codes(c.diagnostics(uri, 1))
	if after["gas-drop-over-limit"] != 0 {
		t.Errorf("the project's limit does not hold in the editor: %v", after)
	}
}

// A name is found in files of the workspace that nobody opened, and changed
// there too; the client hears how far the search is.
func TestWorkspaceNames(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"in-line.plant", "back-to-back.plant", "catalogue.plant"} {
		_, text := example(t, name)
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	c := newClient(t)
	c.result("initialize", json.RawMessage(strings.Replace(initAll, `"rootUri":null`, `"rootUri":"`+uriOf(dir)+`"`, 1)))
	c.notify("initialized", object{})
	uri := uriOf(filepath.Join(dir, "catalogue.plant"))
	_, text := example(t, "catalogue.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	at := position(text, "Wall-100", 2)
	refs := c.result("textDocument/references", object{"textDocument": object{"uri": uri}, "position": at, "context": object{"includeDeclaration": true}, "workDoneToken": "w1"})
	contained(t, "references", refs, "back-to-back.plant", "catalogue.plant")
	begun, ended := false, false
	for !ended {
		m := <-c.notes
		if m["method"] == "$/progress" {
			p := m["params"].(map[string]any)
			if p["token"] != "w1" {
				t.Fatalf("progress for %v", p["token"])
			}
			kind := p["value"].(map[string]any)["kind"]
			begun, ended = begun || kind == "begin", kind == "end"
		}
	}
	if !begun {
		t.Error("the progress ends without having begun")
	}
	edit := c.result("textDocument/rename", object{"textDocument": object{"uri": uri}, "position": at, "newName": "Wall-One"})
	contained(t, "rename", edit, "back-to-back.plant", "catalogue.plant", "Wall-One")
	symbols := c.result("workspace/symbol", object{"query": "neut"})
	contained(t, "symbols", symbols, "in-line.plant", `"Neut"`)
}

// A name and what refers to it are changed together while it is typed; the
// member of a span is not.
func TestLinkedEditing(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "back-to-back.plant")
	c.open(uri, text, 1)
	linked := c.result("textDocument/linkedEditingRange", object{"textDocument": object{"uri": uri}, "position": position(text, "Flow-H   steel", 1)})
	ranges := linked.(map[string]any)["ranges"].([]any)
	if want := strings.Count(text, "Flow-H"); len(ranges) != want {
		t.Errorf("%d places of Flow-H are linked, the text has %d", len(ranges), want)
	}
	if got := c.result("textDocument/linkedEditingRange", object{"textDocument": object{"uri": uri}, "position": position(text, "U1..U8 {", 0)}); got != nil {
		t.Errorf("a member of a span is linked: %v", got)
	}
}
