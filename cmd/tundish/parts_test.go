package main

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
)

func TestPartsFormats(t *testing.T) {
	text, _, code := tundish(t, "", "parts", "examples/back-to-back.plant")
	if code != exitClean || !strings.Contains(text, "no permission to build") || !strings.Contains(text, "Shut-1") {
		t.Errorf("exit %d\n%s", code, text)
	}
	table, _, code := tundish(t, "", "parts", "--format", "csv", "examples/back-to-back.plant")
	rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil || code != exitClean {
		t.Fatal(err, code)
	}
	doc, _, code := tundish(t, "", "parts", "--format", "json", "examples/back-to-back.plant")
	var d struct {
		Parts []struct {
			Why []struct{ Line int }
		}
		NotCounted  []any
		Differences *[]any
	}
	if err := json.Unmarshal([]byte(doc), &d); err != nil || code != exitClean {
		t.Fatal(err, code)
	}
	if len(rows)-1 != len(d.Parts) || d.NotCounted == nil || d.Differences != nil {
		t.Errorf("%d rows, %d parts, differences %v", len(rows), len(d.Parts), d.Differences)
	}
	for i, p := range d.Parts {
		if len(p.Why) == 0 || p.Why[0].Line == 0 {
			t.Errorf("part %d has no reason", i)
		}
	}
}

// The gate: a delivery that is not what the plant needs ends with 1, a table
// that cannot be read with 3 and a message for each fault.
func TestPartsDelivered(t *testing.T) {
	for _, c := range []struct {
		file string
		code int
		want string
	}{
		{"complete.csv", exitClean, "arrived, none too many"},
		{"three-faults.csv", exitFindings, "3 differences between"},
	} {
		out, errs, code := tundish(t, "", "parts", "examples/back-to-back.plant", "--delivered", "testdata/delivered/"+c.file)
		if code != c.code || !strings.Contains(out, c.want) {
			t.Errorf("%s: exit %d\n%s%s", c.file, code, out, errs)
		}
	}
	dir := t.TempDir()
	bad := write(t, dir, "bad.csv", "part,size,quantity\ncap,DN20,two\ncap,DN25\n")
	out, errs, code := tundish(t, "", "parts", "examples/back-to-back.plant", "--delivered", bad)
	if code != exitFailed || out != "" || !strings.Contains(errs, "line 2") || !strings.Contains(errs, "line 3") {
		t.Errorf("exit %d\n%s%s", code, out, errs)
	}
	if _, errs, code = tundish(t, "", "parts", "examples/back-to-back.plant", "--delivered", dir+"/none.csv"); code != exitFailed || !strings.Contains(errs, "none.csv") {
		t.Errorf("exit %d %s", code, errs)
	}
	if _, errs, code = tundish(t, "plant \"Test\"\nunits U1 {\n", "parts", "-"); code != exitFailed || !strings.Contains(errs, "cannot be read") {
		t.Errorf("a broken file: exit %d %s", code, errs)
	}
	if _, errs, code = tundish(t, "", "parts", "examples/catalogue.plant"); code != exitFailed || !strings.Contains(errs, "a catalogue, not a plant") {
		t.Errorf("a catalogue: exit %d %s", code, errs)
	}
}
