package lsp

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// writePage writes the page of the rules into the cache folder of the tests.
var writePage = sync.OnceValue(func() error { return new(rulePage).write("test") })

func pageOfRules(t *testing.T) {
	t.Helper()
	if err := writePage(); err != nil {
		t.Fatal(err)
	}
}

// Each diagnostic links to its rule on a page of the user's cache folder; the
// page comes after the first diagnostics and is there at once the next time.
func TestCodeDescription(t *testing.T) {
	cacheIn(t.Setenv, t.TempDir())
	init := json.RawMessage(strings.Replace(initAll, `"relatedInformation":true`, `"relatedInformation":true,"codeDescriptionSupport":true`, 1))
	for session := range 2 {
		c := newClient(t)
		c.result("initialize", init)
		c.notify("initialized", object{})
		uri, text := example(t, "l-shaped-faulty.plant")
		c.open(uri, text, 1)
		list := c.diagnostics(uri, 1)
		linked := list[0].(map[string]any)["codeDescription"] != nil
		if session == 0 && !linked {
			list = c.diagnostics(uri, 1) // told again, with links
		} else if session == 1 && !linked {
			t.Error("the second session does not take the page that is there")
		}
		var page string
		for _, d := range list {
			m := d.(map[string]any)
			link, _ := m["codeDescription"].(map[string]any)
			href, _ := link["href"].(string)
			file, anchor, _ := strings.Cut(href, "#")
			if anchor != m["code"] {
				t.Fatalf("%v links to %q", m["code"], href)
			}
			if page == "" {
				b, err := os.ReadFile(pathOf(file))
				if err != nil {
					t.Fatal(err)
				}
				page = string(b)
			}
			if !strings.Contains(page, `id="`+anchor+`"`) {
				t.Errorf("the page has no place %s", anchor)
			}
		}
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		t.Fatal(err)
	}
	left, _ := filepath.Glob(filepath.Join(cache, "tundish", "*"))
	if len(left) != 1 {
		t.Errorf("the cache folder holds %v", left)
	}
	for _, r := range rules.All() {
		if r.ID == "" || strings.ContainsAny(r.ID, " #%") {
			t.Errorf("the id %q does not stand in a link as it is", r.ID)
		}
	}
}

// Where the page cannot be written there are no links, and the log says why.
func TestCodeDescriptionUnwritable(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	cacheIn(t.Setenv, file)
	c := newClient(t)
	c.result("initialize", json.RawMessage(strings.Replace(initAll, `"relatedInformation":true`, `"relatedInformation":true,"codeDescriptionSupport":true`, 1)))
	c.notify("initialized", object{})
	uri, text := example(t, "l-shaped-faulty.plant")
	c.open(uri, text, 1)
	if d := c.diagnostics(uri, 1)[0].(map[string]any); d["codeDescription"] != nil {
		t.Errorf("a link to %v", d["codeDescription"])
	}
	if m := c.note("window/logMessage"); !strings.Contains(m["message"].(string), "no links") {
		t.Errorf("logged is %v", m)
	}
}

// A statement that does nothing is marked as such.
func TestTags(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text+"deviation pipe-too-fast on PF because \"x\" by D1 until 2027-01-01\n", 1)
	d := find(c.diagnostics(uri, 1), "deviation-unused", "")
	if d == nil {
		t.Fatal("the deviation counts as used")
	}
	contained(t, "the finding", d, `"tags":[1]`)
}

// Blocks are written by snippets for clients that have them, and by the bare word
// for others.
func TestSnippets(t *testing.T) {
	text := "plant \"x\"\n\n"
	for _, able := range []bool{false, true} {
		c := newClient(t)
		init := json.RawMessage(initAll)
		if able {
			init = json.RawMessage(strings.Replace(initAll, `"textDocument":{`, `"textDocument":{"completion":{"completionItem":{"snippetSupport":true}},`, 1))
		}
		c.result("initialize", init)
		c.notify("initialized", object{})
		c.open("untitled:S", text, 1)
		r := c.result("textDocument/completion", object{"textDocument": object{"uri": "untitled:S"}, "position": object{"line": 1, "character": 0}})
		blocks := 0
		for _, i := range r.(map[string]any)["items"].([]any) {
			item := i.(map[string]any)
			edit := item["textEdit"].(map[string]any)["newText"].(string)
			if strings.ContainsAny(item["label"].(string), " {$") {
				t.Errorf("the label %q is no plain word", item["label"])
			}
			if item["insertTextFormat"] == nil {
				if strings.ContainsAny(edit, "${") {
					t.Errorf("plain text %q", edit)
				}
				continue
			}
			blocks++
			if !able || !strings.Contains(edit, "$0") {
				t.Errorf("a snippet %q", edit)
			}
		}
		if able && blocks < 5 {
			t.Errorf("%d blocks are written by snippets", blocks)
		}
	}
}

// A standard size tells velocity at once, and loss and findings when it is looked
// at: what the text with that size in it gives.
func TestSizeTrial(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	at := position(text, "DN65 14 m", 2)
	items := c.result("textDocument/completion", object{"textDocument": object{"uri": uri}, "position": at}).(map[string]any)["items"].([]any)
	trial := func(label string) map[string]any {
		for _, i := range items {
			if m := i.(map[string]any); m["label"] == label {
				return c.result("completionItem/resolve", m).(map[string]any)
			}
		}
		t.Fatalf("%s is not offered", label)
		return nil
	}
	now := trial("DN65")
	contained(t, "the size that stands there", now, "bore 68.9 mm", "loses 0.1568 mbar", "Nothing is found")
	small := trial("DN32")
	contained(t, "a size too small", small, "loses ", "G1 alone loses")
	// The same, put into the text, gives the loss that was told.
	changed := strings.Replace(text, "DN65 14 m", "DN32 14 m", 1)
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"text": changed}}})
	hover := c.result("textDocument/hover", object{"textDocument": object{"uri": uri}, "position": position(changed, "G1         steel", 0)})
	_, loss, _ := strings.Cut(small["detail"].(string), "loses ")
	contained(t, "the values of the changed text", hover, "pressure-loss.all-full = "+loss)
	// The text has changed since: nothing is tried in another text.
	if again := c.result("completionItem/resolve", items[0]).(map[string]any); again["documentation"] != nil {
		t.Errorf("tried in another text: %v", again)
	}
	if plain := c.result("completionItem/resolve", object{"label": "altitude", "kind": 14}).(map[string]any); plain["label"] != "altitude" {
		t.Errorf("an item without a size comes back as %v", plain)
	}
}

// A plain client gets hovers without signs of Markdown; the words are the same.
func TestHoverPlain(t *testing.T) {
	plain := json.RawMessage(strings.Replace(initAll, `["markdown","plaintext"]`, `["plaintext"]`, 1))
	var texts []string
	for _, init := range []json.RawMessage{json.RawMessage(initAll), plain} {
		c := newClient(t)
		c.result("initialize", init)
		c.notify("initialized", object{})
		uri, text := example(t, "in-line.plant")
		c.open(uri, text, 1)
		r := c.result("textDocument/hover", object{"textDocument": object{"uri": uri}, "position": position(text, "G1         steel", 0)}).(map[string]any)["contents"].(map[string]any)
		texts = append(texts, r["kind"].(string)+" "+r["value"].(string))
	}
	if !strings.HasPrefix(texts[0], "markdown **G1**") || !strings.HasPrefix(texts[1], "plaintext G1: a") || strings.ContainsAny(texts[1], "*`") && strings.Contains(texts[1], "**") {
		t.Errorf("%.80q\n%.80q", texts[0], texts[1])
	}
	bare := strings.NewReplacer("markdown", "plaintext", "**", "", "`", "", "  \n", "\n", `\`, "").Replace(texts[0])
	if bare != texts[1] {
		t.Errorf("the texts differ:\n%.600s\n%.600s", bare, texts[1])
	}
}

// A client to which an action can only be a command gets its edit sent.
func TestActionsAsCommands(t *testing.T) {
	c := newClient(t)
	c.answers["workspace/applyEdit"] = `{"applied":true}`
	c.result("initialize", json.RawMessage(`{"processId":null,"rootUri":null,"capabilities":{"workspace":{"applyEdit":true}}}`))
	c.notify("initialized", object{})
	uri, text := example(t, "in-line.plant")
	text = with(t, text, "DN65 14 m", "DN32 14 m")
	c.open(uri, text, 1)
	at := position(text, "DN32 14 m", 0)
	actions := c.result("textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": object{"start": at, "end": at}, "context": object{"diagnostics": []object{}}}).([]any)
	first := actions[0].(map[string]any)
	if first["command"] != commandEdit || first["edit"] != nil || first["kind"] != nil {
		t.Fatalf("the first action is %v", first)
	}
	c.result("workspace/executeCommand", object{"command": first["command"], "arguments": first["arguments"]})
	contained(t, "the edit", c.note("workspace/applyEdit"), `"changes"`, uri, `"newText"`)
	if m := c.request("workspace/executeCommand", object{"command": commandEdit, "arguments": []int{1}}); m["error"] == nil {
		t.Error("an edit that is none is sent")
	}
}

// $/setTrace turns the client's log on and off.
func TestTrace(t *testing.T) {
	c := newClient(t)
	c.initialize()
	ask := func() { c.result("workspace/symbol", object{"query": "secret-word"}) }
	ask()
	c.notify("$/setTrace", object{"value": "messages"})
	ask()
	if p := c.note("$/logTrace"); !strings.HasPrefix(p["message"].(string), "workspace/symbol took ") || p["verbose"] != nil {
		t.Errorf("messages: %v", p)
	}
	c.notify("$/setTrace", object{"value": "verbose"})
	ask()
	if p := c.note("$/logTrace"); !strings.Contains(p["verbose"].(string), "secret-word") {
		t.Errorf("verbose: %v", p)
	}
	c.notify("$/setTrace", object{"value": "off"})
	ask()
	for {
		select {
		case m := <-c.notes:
			if m["method"] == "$/logTrace" {
				t.Fatalf("off: %v", m)
			}
		case <-time.After(100 * time.Millisecond):
			return
		}
	}
}

// The server registers for what a client reports only then, asks for settings,
// and asks the client to ask again when something that it shows has changed.
func TestRegistrationAndRefresh(t *testing.T) {
	c := newClient(t)
	c.answers["workspace/configuration"] = `[{"hints":{"velocity":false}}]`
	init := strings.Replace(initAll, `"workspace":{`, `"workspace":{"configuration":true,"didChangeConfiguration":{"dynamicRegistration":true},"didChangeWatchedFiles":{"dynamicRegistration":true},"codeLens":{"refreshSupport":true},"semanticTokens":{"refreshSupport":true},"diagnostics":{"refreshSupport":true},`, 1)
	c.result("initialize", json.RawMessage(init))
	c.notify("initialized", object{})
	contained(t, "registered", c.note("client/registerCapability"), "workspace/didChangeWatchedFiles", "**/*.plant", "workspace/didChangeConfiguration")
	c.note("workspace/inlayHint/refresh") // the settings came
	uri, text := example(t, "in-line.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	whole := object{"textDocument": object{"uri": uri}, "range": object{"start": object{"line": 0, "character": 0}, "end": object{"line": 999, "character": 0}}}
	hints := c.result("textDocument/inlayHint", whole)
	contained(t, "hints", hints, "loses")
	if raw, _ := json.Marshal(hints); strings.Contains(string(raw), "m/s") {
		t.Error("a kind of hints that is off is shown")
	}
	c.notify("workspace/didChangeConfiguration", object{"settings": object{"tundish": object{"hints": false}}})
	c.note("workspace/inlayHint/refresh")
	if hints := c.result("textDocument/inlayHint", whole).([]any); len(hints) != 0 {
		t.Errorf("all hints are off, and %d are shown", len(hints))
	}
	c.result("textDocument/diagnostic", object{"textDocument": object{"uri": uri}})
	cat, catText := example(t, "catalogue.plant")
	c.open(cat, with(t, catText, "input           61.8 kW net", "input           90 kW net"), 1)
	want := map[string]bool{"workspace/inlayHint/refresh": true, "workspace/codeLens/refresh": true, "workspace/semanticTokens/refresh": true, "workspace/diagnostic/refresh": true}
	for deadline := time.After(20 * time.Second); len(want) > 0; {
		select {
		case m := <-c.notes:
			if _, ok := m["params"]; ok && strings.HasSuffix(m["method"].(string), "/refresh") {
				t.Errorf("%v has parameters", m["method"])
			}
			delete(want, m["method"].(string))
		case <-deadline:
			t.Fatalf("not asked again: %v", want)
		}
	}
}

// What was pulled and is the same still is not sent again.
func TestPullUnchanged(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri := "untitled:Pull"
	c.open(uri, "plant \"x\"\nbasis {\n  altitude 10 bar\n}\n", 1)
	first := c.result("textDocument/diagnostic", object{"textDocument": object{"uri": uri}}).(map[string]any)
	again := c.result("textDocument/diagnostic", object{"textDocument": object{"uri": uri}, "previousResultId": first["resultId"]}).(map[string]any)
	if again["kind"] != "unchanged" || again["resultId"] != first["resultId"] || again["items"] != nil {
		t.Errorf("the same again: %v", again)
	}
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"text": "plant \"x\"\nbasis {\n  altitude 10 m\n}\n"}}})
	now := c.result("textDocument/diagnostic", object{"textDocument": object{"uri": uri}, "previousResultId": first["resultId"]}).(map[string]any)
	if now["kind"] != "full" || find(now["items"].([]any), "wrong-unit", "") != nil {
		t.Errorf("after the mend: %v", now)
	}
}

// Comments of several lines fold.
func TestCommentFolds(t *testing.T) {
	c := newClient(t)
	c.initialize()
	c.open("untitled:F", "# one\n# two\nplant \"x\"\n# alone\nbasis {\n  # a\n  # b\n  altitude 5 m\n}\n", 1)
	r := c.result("textDocument/foldingRange", object{"textDocument": object{"uri": "untitled:F"}})
	raw, _ := json.Marshal(r)
	if strings.Count(string(raw), `"comment"`) != 2 {
		t.Errorf("folds are %s", raw)
	}
}

// Lines that move while a statement is broken keep what was computed for them.
func TestLineMap(t *testing.T) {
	for _, k := range []struct {
		old, new string
		want     []int // line of the new text for each of the old; -1: gone
	}{
		{"a\nb\nc\n", "a\nb\nc\n", []int{0, 1, 2, 3}},
		{"a\nb\nc\n", "a\nX\nb\nc\n", []int{0, 2, 3, 4}},
		{"a\nb\nc\n", "X\na\nb\nc\n", []int{1, 2, 3, 4}},
		{"a\nb\nc\n", "a\nc\n", []int{0, -1, 1, 2}},
		{"a\nb\nc\n", "a\nB\nc\n", []int{0, 1, 2, 3}},
		{"a\nb\nc", "", []int{0, -1, -1}},
	} {
		m := mapLines(lang.NewSource("", k.old), lang.NewSource("", k.new))
		for i, want := range k.want {
			got, ok := m.line(i)
			if !ok {
				got = -1
			}
			if got != want {
				t.Errorf("%q to %q: line %d goes to %d, want %d", k.old, k.new, i, got, want)
			}
		}
	}
}

// Strings of messages are JSON whatever bytes they hold.
func TestAppendString(t *testing.T) {
	for _, s := range []string{"", "plain", "a\"b\\c\n\t\r\x00\x1f\x7f", "ü🔥\u2028", "bad \xff\xfe end", "\xc3"} {
		var got string
		if err := json.Unmarshal(appendString(nil, s), &got); err != nil || got != strings.ToValidUTF8(s, "\ufffd") && len([]rune(got)) != len([]rune(s)) {
			t.Errorf("%q comes back as %q, %v", s, got, err)
		}
	}
}

// The search for the smallest size waits until the user takes the action, where
// the client can wait for an edit; where it cannot, until the user asks.
func TestLazySizes(t *testing.T) {
	lazy := strings.Replace(initAll, `"codeAction":{`, `"codeAction":{"dataSupport":true,"resolveSupport":{"properties":["edit"]},`, 1)
	for _, init := range []string{initAll, lazy} {
		c := newClient(t)
		c.result("initialize", json.RawMessage(init))
		c.notify("initialized", object{})
		uri, text := example(t, "in-line.plant")
		c.open(uri, text, 1)
		ask := func(at object, trigger int) []any {
			return c.result("textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": object{"start": at, "end": at}, "context": object{"diagnostics": []object{}, "only": []string{"refactor"}, "triggerKind": trigger}}).([]any)
		}
		pf := position(text, "DN80 3.0 m", 0)
		invoked, automatic := ask(pf, 1), ask(pf, 2)
		if len(ask(position(text, "altitude", 0), 1)) != 0 {
			t.Error("a size is looked for where there is none")
		}
		if init == initAll {
			contained(t, "asked", invoked, "Take the smallest size of PF that passes: DN65", `"newText":"DN65"`)
			if len(automatic) != 0 {
				t.Errorf("moving the cursor searches: %v", automatic)
			}
			continue
		}
		contained(t, "offered", automatic, "Take the smallest size of PF that passes", `"data"`)
		if automatic[0].(map[string]any)["edit"] != nil {
			t.Error("the edit is there already")
		}
		contained(t, "taken", c.result("codeAction/resolve", automatic[0]), "documentChanges", `"newText":"DN65"`, `"version":1`)
		smallest := ask(position(text, "DN65 14 m", 0), 1) // G1 is as small as it may be, or not
		if r := c.result("codeAction/resolve", smallest[0]).(map[string]any); r["edit"] == nil {
			if m := c.note("window/showMessage"); !strings.Contains(m["message"].(string), "smallest that passes") {
				t.Errorf("told is %v", m)
			}
		}
		c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"text": text + "\n"}}})
		if m := c.request("codeAction/resolve", automatic[0]); m["error"] == nil {
			t.Error("an action of an older text is carried out")
		}
		whole := object{"title": "x", "kind": "quickfix"}
		if r := c.result("codeAction/resolve", whole).(map[string]any); r["title"] != "x" {
			t.Errorf("a whole action comes back as %v", r)
		}
	}
}
