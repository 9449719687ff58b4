package lsp

import (
	"maps"
	"strings"
	"testing"
)

// A record is judged in the editor together with the plant that it belongs to,
// just as the linter judges it.
func TestRecord(t *testing.T) {
	c := newClient(t)
	c.initialize()
	uri, text := example(t, "back-to-back-record.plant")
	c.open(uri, text, 1)
	if got := codes(c.diagnostics(uri, 1)); !maps.Equal(got, lintCodes(t, uri, text)) {
		t.Errorf("the editor says %v, the linter %v", got, lintCodes(t, uri, text))
	}
	faulty := strings.Replace(text, "inlet U1        20.3 mbar", "inlet U1        18.4 mbar", 1)
	faulty = strings.Replace(faulty, "commissioned U8", "commissioned U9", 1)
	if faulty == text {
		t.Fatal("the edits found no place")
	}
	c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": 2}, "contentChanges": []object{{"text": faulty}}})
	got := codes(c.diagnostics(uri, 2))
	if got["inlet-under-design"] != 1 || got["unknown-name"] != 1 {
		t.Errorf("the faulty record gives %v", got)
	}
	if want := lintCodes(t, uri, faulty); !maps.Equal(got, want) {
		t.Errorf("the editor says %v, the linter %v", got, want)
	}
}
