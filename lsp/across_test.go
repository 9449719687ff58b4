package lsp

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// workspace writes texts into a folder of their own and gives a client of it.
func workspace(t *testing.T, init string, texts map[string]string) (c *testClient, uri func(name string) string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range texts {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	c = newClient(t)
	c.result("initialize", json.RawMessage(strings.Replace(init, `"rootUri":null`, `"rootUri":"`+uriOf(dir)+`"`, 1)))
	c.notify("initialized", object{})
	return c, func(name string) string { return uriOf(filepath.ToSlash(filepath.Join(dir, filepath.FromSlash(name)))) }
}

func exampleText(t *testing.T, name string) string {
	t.Helper()
	_, text := example(t, name)
	return text
}

// with puts a text in the place of one that must be there.
func with(t *testing.T, text, old, now string) string {
	t.Helper()
	if !strings.Contains(text, old) {
		t.Fatalf("the example has no %q any more", old)
	}
	return strings.Replace(text, old, now, 1)
}

func find(list []any, code, text string) map[string]any {
	for _, d := range list {
		m := d.(map[string]any)
		if m["code"] == code && strings.Contains(m["message"].(string), text) {
			return m
		}
	}
	return nil
}

// What is wrong in a catalogue that nobody opened is shown at the use statement,
// with the place; when the catalogue is open, in the catalogue alone.
func TestFindingsElsewhere(t *testing.T) {
	plant := exampleText(t, "in-line.plant")
	catalogue := exampleText(t, "catalogue.plant")
	_, block, _ := strings.Cut(catalogue, "unit-type Wall-100 {")
	block, _, _ = strings.Cut(block, "\n}\n")
	catalogue += "\nunit-type Wall-100 {" + block + "\n}\n" // described twice
	c, uri := workspace(t, initAll, map[string]string{"in-line.plant": plant, "catalogue.plant": catalogue})
	c.open(uri("in-line.plant"), plant, 1)
	d := find(c.diagnostics(uri("in-line.plant"), 1), "name-twice", "catalogue.plant, line ")
	if d == nil {
		t.Fatal("the fault in the catalogue is not shown")
	}
	if line := d["range"].(map[string]any)["start"].(map[string]any)["line"].(float64); int(line) != position(plant, "use \"catalogue", 0)["line"] {
		t.Errorf("it is shown at line %v", line)
	}
	contained(t, "the fault", d, uri("catalogue.plant"), "it stands here")
	c.open(uri("catalogue.plant"), catalogue, 1)
	if find(c.diagnostics(uri("catalogue.plant"), 1), "name-twice", "") == nil {
		t.Error("the open catalogue does not show its fault")
	}
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri("in-line.plant"), "version": 2}, "contentChanges": []object{{"text": plant + "\n"}}})
	if find(c.diagnostics(uri("in-line.plant"), 2), "name-twice", "") != nil {
		t.Error("the fault is shown twice")
	}
}

// The editor leads to where a limit comes from: the project's file, the type.
func TestLimitOrigin(t *testing.T) {
	plant := exampleText(t, "in-line.plant")
	c, uri := workspace(t, initAll, map[string]string{
		"in-line.plant": plant, "catalogue.plant": exampleText(t, "catalogue.plant"),
		"project.plant": "project \"Own limits, invented\"\nlimit gas-drop-natural-uk 0.1 mbar because \"test\"\n",
	})
	c.open(uri("in-line.plant"), plant, 1)
	d := find(c.diagnostics(uri("in-line.plant"), 1), "gas-drop-over-limit", "")
	if d == nil {
		t.Fatal("the project's limit does not hold")
	}
	contained(t, "the finding", d, uri("project.plant"), "the project's own limit is set here", "is left with")
}

// A name of the plant that a record speaks of: it leads to the plant, and changes
// with it, in records that nobody opened too.
func TestNamesOfRecords(t *testing.T) {
	plant, record := exampleText(t, "back-to-back.plant"), exampleText(t, "back-to-back-record.plant")
	c, uri := workspace(t, initAll, map[string]string{
		"back-to-back.plant": plant, "record.plant": record, "catalogue.plant": exampleText(t, "catalogue.plant"),
		"other.plant": exampleText(t, "in-line.plant"),
	})
	c.open(uri("record.plant"), record, 1)
	at := object{"textDocument": object{"uri": uri("record.plant")}, "position": position(record, "Flow-H, Return-H water", 2)}
	contained(t, "definition", c.result("textDocument/definition", at), uri("back-to-back.plant"))
	member := object{"textDocument": object{"uri": uri("record.plant")}, "position": position(record, "U1 serial", 1)}
	contained(t, "definition of a member", c.result("textDocument/definition", member), uri("back-to-back.plant"))
	contained(t, "link", c.result("textDocument/documentLink", object{"textDocument": object{"uri": uri("record.plant")}}), uri("back-to-back.plant"))
	for _, method := range []string{"textDocument/prepareRename", "textDocument/rename"} {
		member["newName"] = "Unit-1"
		if m := c.request(method, member); m["error"] == nil {
			t.Errorf("%s of a member of a span: %v", method, m["result"])
		}
	}
	c.open(uri("back-to-back.plant"), plant, 4)
	rename := object{"textDocument": object{"uri": uri("back-to-back.plant")}, "position": position(plant, "Flow-H ", 2), "newName": "Flow-Main"}
	edit := c.result("textDocument/rename", rename)
	contained(t, "rename", edit, uri("record.plant"), uri("back-to-back.plant"), `"version":4`)
	raw, _ := json.Marshal(edit)
	if strings.Contains(string(raw), uri("other.plant")) {
		t.Error("another plant's header of the same name is renamed too")
	}
	if got, want := strings.Count(string(raw), `"newText":"Flow-Main"`), strings.Count(plant, "Flow-H")+strings.Count(record, "Flow-H"); got != want {
		t.Errorf("%d places are renamed, the texts have %d", got, want)
	}
	// A person that the record defines itself is nobody of the plant.
	own := "person D1 role designer register \"X 1\"\n"
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri("record.plant"), "version": 2}, "contentChanges": []object{{"text": record + own}}})
	rename = object{"textDocument": object{"uri": uri("back-to-back.plant")}, "position": position(plant, "person D1", 8), "newName": "D9"}
	if raw, _ := json.Marshal(c.result("textDocument/rename", rename)); strings.Contains(string(raw), uri("record.plant")) {
		t.Error("the record's own person is renamed with the plant's")
	}
}

// Files that get new names take the statements along that read them.
func TestRenameFiles(t *testing.T) {
	plant := exampleText(t, "in-line.plant")
	c, uri := workspace(t, initAll, map[string]string{
		"in-line.plant": plant, "catalogue.plant": exampleText(t, "catalogue.plant"), "records/r.plant": "record \"r\"\nof-plant \"../in-line.plant\" revision R2\n",
	})
	c.open(uri("in-line.plant"), plant, 3)
	edit := c.result("workspace/willRenameFiles", object{"files": []object{{"oldUri": uri("catalogue.plant"), "newUri": uri("types/all.plant")}}})
	contained(t, "new place of the catalogue", edit, uri("in-line.plant"), `"version":3`, `"newText":"\"types/all.plant\""`)
	edit = c.result("workspace/willRenameFiles", object{"files": []object{{"oldUri": uri("in-line.plant"), "newUri": uri("plants/hall.plant")}}})
	contained(t, "new place of the plant", edit, `"newText":"\"../catalogue.plant\""`, uri("records/r.plant"), `"newText":"\"../plants/hall.plant\""`)
	edit = c.result("workspace/willRenameFiles", object{"files": []object{{"oldUri": uri("records"), "newUri": uri("a/b")}}})
	contained(t, "new place of a folder", edit, `"newText":"\"../../in-line.plant\""`)
	if edit = c.result("workspace/willRenameFiles", object{"files": []object{{"oldUri": uri("none.plant"), "newUri": uri("x.plant")}}}); edit != nil {
		t.Errorf("a file that nobody reads: %v", edit)
	}
}

// A search in a large workspace tells how far it is without being asked, and
// stops when the user stops it; a rename is then not done by halves.
func TestProgressUnasked(t *testing.T) {
	texts := map[string]string{"catalogue.plant": exampleText(t, "catalogue.plant")}
	for i := range manyFiles + 10 {
		texts[strings.Repeat("x", i+1)+".plant"] = "plant \"x\"\n"
	}
	c, uri := workspace(t, strings.Replace(initAll, `"capabilities":{`, `"capabilities":{"window":{"workDoneProgress":true},`, 1), texts)
	c.result("workspace/symbol", object{"query": "Wall"})
	token := c.note("window/workDoneProgress/create")["token"]
	for kind := ""; kind != "end"; {
		p := c.note("$/progress")
		if p["token"] != token {
			t.Fatalf("progress of %v, created was %v", p["token"], token)
		}
		kind = p["value"].(map[string]any)["kind"].(string)
	}
	c.open(uri("catalogue.plant"), texts["catalogue.plant"], 1)
	at := object{"textDocument": object{"uri": uri("catalogue.plant")}, "position": position(texts["catalogue.plant"], "Wall-100", 2), "newName": "Wall-One"}
	answer := c.start("textDocument/rename", at)
	token = c.note("window/workDoneProgress/create")["token"]
	c.notify("window/workDoneProgress/cancel", object{"token": token})
	m := <-answer
	// The search may have been over before it was stopped.
	if e, failed := m["error"].(map[string]any); failed && e["code"].(float64) != float64(codeFailed) {
		t.Errorf("the stopped rename answers %v", e)
	} else if !failed && m["result"] == nil {
		t.Error("the rename answers nothing")
	}
}
