package lsp

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/lang"
)

// A URI comes back as the client wrote it, and other spellings of the same file
// mean the same document.
func TestURIsEchoed(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "l-shaped-faulty.plant")
	odd := strings.Replace(uri, "l-shaped", "%6C%2Dshaped", 1)
	c.open(odd, text, 1)
	if find(c.diagnostics(odd, 1), "gas-drop-over-limit", "") == nil {
		t.Fatal("no diagnostics under the client's own spelling")
	}
	at := position(text, "G1         steel", 0)
	contained(t, "asked by another spelling", c.result("textDocument/references", object{"textDocument": object{"uri": uri}, "position": at, "context": object{"includeDeclaration": true}}), `"uri":"`+odd+`"`)
	c.notify("textDocument/didClose", object{"textDocument": object{"uri": uri}})
	for {
		if p := c.note("textDocument/publishDiagnostics"); p["uri"] == odd && len(p["diagnostics"].([]any)) == 0 {
			return
		}
	}
}

// Folders come and go; files in them are found while they are there.
func TestSeveralRoots(t *testing.T) {
	c, _ := workspace(t, initAll, map[string]string{"catalogue.plant": exampleText(t, "catalogue.plant")})
	second := t.TempDir()
	if err := os.WriteFile(filepath.Join(second, "hall.plant"), []byte(exampleText(t, "in-line.plant")), 0o600); err != nil {
		t.Fatal(err)
	}
	folder := []object{{"uri": uriOf(second), "name": "second"}}
	count := func(query string) int { return len(c.result("workspace/symbol", object{"query": query}).([]any)) }
	if count("Wall-60") == 0 || count("Man-A") != 0 {
		t.Fatal("the first folder alone is not what is searched")
	}
	c.notify("workspace/didChangeWorkspaceFolders", object{"event": object{"added": folder, "removed": []object{}}})
	if count("Man-A") == 0 {
		t.Error("the second folder is not searched")
	}
	c.notify("workspace/didChangeWorkspaceFolders", object{"event": object{"added": []object{}, "removed": folder}})
	if count("Man-A") != 0 || count("Wall-60") == 0 {
		t.Error("the second folder is searched after it was closed")
	}
}

// A catalogue that goes from the disk, or comes back, is heard of.
func TestDeletedFiles(t *testing.T) {
	plant := exampleText(t, "in-line.plant")
	catalogue := exampleText(t, "catalogue.plant")
	c, uri := workspace(t, initAll, map[string]string{"in-line.plant": plant, "catalogue.plant": catalogue})
	c.open(uri("in-line.plant"), plant, 1)
	c.diagnostics(uri("in-line.plant"), 1)
	name := pathOf(uri("catalogue.plant"))
	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	c.notify("workspace/didDeleteFiles", object{"files": []object{{"uri": uri("catalogue.plant")}}})
	if find(c.diagnostics(uri("in-line.plant"), 1), "file-missing", "") == nil {
		t.Error("the deleted catalogue is not missed")
	}
	if err := os.WriteFile(name, []byte(catalogue), 0o600); err != nil {
		t.Fatal(err)
	}
	c.notify("workspace/didChangeWatchedFiles", object{"changes": []object{{"uri": uri("catalogue.plant"), "type": 1}}})
	if find(c.diagnostics(uri("in-line.plant"), 1), "file-missing", "") != nil {
		t.Error("the catalogue that is back is still missed")
	}
}

// applied makes the edits of one document to a text.
func applied(t *testing.T, text string, edits any) string {
	t.Helper()
	raw, err := json.Marshal(edits)
	if err != nil {
		t.Fatal(err)
	}
	var list []struct {
		Range   json.RawMessage `json:"range"`
		NewText string          `json:"newText"`
	}
	if err := json.Unmarshal(raw, &list); err != nil {
		t.Fatal(err)
	}
	src := lang.NewSource("", text)
	var out []lang.Edit
	for _, e := range list {
		p, err := decode[docPosition](json.RawMessage(`{"range":` + string(e.Range) + `}`))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, lang.Edit{Span: utf16.span(src, p.Range), NewText: e.NewText})
	}
	return lang.Apply(text, out)
}

// Everything that is safe to fix is fixed at once, when asked for by its kind; a
// missing caution is among it.
func TestFixAll(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	lines := strings.SplitAfter(text, "\n")
	text = ""
	for _, l := range lines {
		if !strings.HasPrefix(l, "caution gas ") && !strings.HasPrefix(l, "caution lifting ") {
			text += l
		}
	}
	text += "deviation pipe-too-fast on PF because \"x\" by D1 until 2027-01-01\n"
	c.open(uri, text, 1)
	before := codes(c.diagnostics(uri, 1))
	if before["caution-missing"] != 2 || before["deviation-unused"] != 1 {
		t.Fatalf("the faulty text gives %v", before)
	}
	whole := object{"start": object{"line": 0, "character": 0}, "end": object{"line": len(lines), "character": 0}}
	ask := func(only ...string) any {
		return c.result("textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": whole, "context": object{"diagnostics": []object{}, "only": only}})
	}
	contained(t, "quick fixes", ask("quickfix"), "Add the caution on gas", "Take the deviation out")
	if raw, _ := json.Marshal(ask()); strings.Contains(string(raw), "source.fixAll") {
		t.Error("the source action is offered unasked")
	}
	all := ask("source.fixAll").([]any)
	if len(all) != 1 {
		t.Fatalf("%d actions fix all", len(all))
	}
	edits := all[0].(map[string]any)["edit"].(map[string]any)["documentChanges"].([]any)[0].(map[string]any)["edits"]
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"text": applied(t, text, edits)}}})
	after := codes(c.diagnostics(uri, 2))
	if after["caution-missing"]+after["deviation-unused"] != 0 {
		t.Errorf("after the fix: %v", after)
	}
	delete(before, "caution-missing")
	delete(before, "deviation-unused")
	for rule, n := range after {
		if n > before[rule] {
			t.Errorf("the fix brings %s", rule)
		}
	}
}

// A range and a finished line are formatted alone; the rest stays as it is.
func TestFormattingParts(t *testing.T) {
	c := newClient(t)
	c.initialize()
	text := "plant \"x\"\nbasis {\n altitude   10   m\n   outside -3   degC\n}\n"
	c.open("untitled:P", text, 1)
	options := object{"tabSize": 2, "insertSpaces": true}
	doc := object{"uri": "untitled:P"}
	one := object{"start": object{"line": 2, "character": 0}, "end": object{"line": 2, "character": 5}}
	want := "plant \"x\"\nbasis {\n  altitude        10 m\n   outside -3   degC\n}\n"
	if got := applied(t, text, c.result("textDocument/rangeFormatting", object{"textDocument": doc, "range": one, "options": options})); got != want {
		t.Errorf("the range gives\n%s", got)
	}
	if got := applied(t, text, c.result("textDocument/onTypeFormatting", object{"textDocument": doc, "position": object{"line": 3, "character": 0}, "ch": "\n", "options": options})); got != want {
		t.Errorf("the new line gives\n%s", got)
	}
}

// The outline is a tree for clients that show one and a list for others; both
// hold the same names.
func TestOutline(t *testing.T) {
	var names [2]map[string]int
	for i, init := range []string{initAll, strings.Replace(initAll, `"hierarchicalDocumentSymbolSupport":true`, `"hierarchicalDocumentSymbolSupport":false`, 1)} {
		c := newClient(t)
		c.result("initialize", json.RawMessage(init))
		c.notify("initialized", object{})
		uri, text := example(t, "in-line.plant")
		c.open(uri, text, 1)
		names[i] = map[string]int{}
		var walk func(list []any)
		walk = func(list []any) {
			for _, o := range list {
				m := o.(map[string]any)
				names[i][m["name"].(string)]++
				if place, flat := m["location"].(map[string]any); flat != (i == 1) || flat && place["uri"] != uri {
					t.Fatalf("an entry is %v", m)
				}
				if kids, ok := m["children"].([]any); ok {
					walk(kids)
				}
			}
		}
		walk(c.result("textDocument/documentSymbol", object{"textDocument": object{"uri": uri}}).([]any))
	}
	if names[0]["Man-A"] != 1 || names[0]["U1..U4"] == 0 || names[0]["jurisdiction"] != 0 || len(names[0]) < 40 || !maps.Equal(names[0], names[1]) {
		t.Errorf("the tree has %v, the list %v", names[0], names[1])
	}
}

// What is kept of the files on disk is bounded, whatever is looked through.
func TestKeptFiles(t *testing.T) {
	d := &disk{files: map[string]diskFile{}}
	for i := range 100 {
		name := strings.Repeat("x", i+1)
		d.keep(name, diskFile{size: maxKept / 7})
		d.keep(name, diskFile{size: maxKept / 7}) // read again after a change
		if _, ok := d.files[name]; !ok {
			t.Fatal("the newest file is not kept")
		}
		if d.size > maxKept || d.size != int64(len(d.files))*(maxKept/7) {
			t.Fatalf("%d bytes are kept of %d files", d.size, len(d.files))
		}
	}
	d.keep("large", diskFile{size: 2 * maxKept})
	if len(d.files) != 1 {
		t.Errorf("beside a large file %d are kept", len(d.files)-1)
	}
}
