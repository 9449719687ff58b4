package lang

import "testing"

// A statement that says only none or unknown is whole; with anything more beside
// it the required values are asked for as ever.
func TestStatedAbsenceIsWhole(t *testing.T) {
	for _, c := range []struct {
		block, text string
		state       State
		problems    int
	}{
		{"units", "trap none", Absent, 0}, // labelled values only
		{"units", "relief unknown", ToBeFound, 0},
		{"units", "relief unknown unit-side", ToBeFound, 1},
		{"units", "water-valve none", Absent, 0},
		{"basis", "gas unknown", ToBeFound, 0},
		{"air", "fire-alarm none", Absent, 0},
		{"air", "detector Det-1 unknown", ToBeFound, 0},
		{"plant", "deviation unknown", ToBeFound, 4}, // an exception is never left open
		{"units", "trap nothing", Known, 1},
	} {
		f := Parse(NewSource("x.plant", c.text), nil)
		row := Language().Row(c.block, f.Statements[0].Head.Keyword)
		if row == nil {
			t.Fatalf("%s: no such row in %s", c.text, c.block)
		}
		b := bindHead(f.Statements[0].Head, row)
		if len(b.Problems) != c.problems {
			t.Errorf("%s: %d problems, want %d: %v", c.text, len(b.Problems), c.problems, b.Problems)
		}
		if c.state == Known {
			continue
		}
		if len(b.Fields) == 0 || b.Fields[0].Values[0].State != c.state {
			t.Errorf("%s: the word is not kept", c.text)
		}
	}
}
