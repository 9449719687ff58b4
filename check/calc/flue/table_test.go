package flue_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/check/calc/flue"
)

func readTable(tb testing.TB, path string) []map[string]string {
	tb.Helper()
	text, err := os.ReadFile("../../../testdata/" + path)
	if err != nil {
		tb.Fatal(err)
	}
	var kept strings.Builder
	for _, line := range strings.SplitAfter(string(text), "\n") {
		if !strings.HasPrefix(line, "#") {
			kept.WriteString(line)
		}
	}
	r := csv.NewReader(strings.NewReader(kept.String()))
	r.FieldsPerRecord = -1
	records, err := r.ReadAll()
	if err != nil || len(records) < 2 {
		tb.Fatalf("%s: %d records, %v", path, len(records), err)
	}
	var out []map[string]string
	for _, rec := range records[1:] {
		m := map[string]string{}
		for i, name := range records[0] {
			if i < len(rec) {
				m[name] = rec[i]
			}
		}
		out = append(out, m)
	}
	return out
}

func num(tb testing.TB, s string) float64 {
	tb.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		tb.Fatal(err)
	}
	return v
}

// near fails when got is farther from want than the relative tolerance.
func near(tb testing.TB, what string, got, want, tolerance float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		tb.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tolerance)
	}
}

func no(tb testing.TB, err error) {
	tb.Helper()
	if err != nil {
		tb.Fatal(err)
	}
}

func firstWord(s string) string { return strings.Fields(s)[0] }

func lastWord(s string) string {
	words := strings.Fields(s)
	return words[len(words)-1]
}

func TestZetaOf(t *testing.T) {
	for part, want := range map[string]float64{"90 deg bend, smooth": 0.6, "45 deg bend": 0.35, "90 deg tee entry": 1} {
		if z, ok := flue.ZetaOf(part); !ok || z.Use != want {
			t.Errorf("%s: %g, in the table %g", part, z.Use, want)
		}
	}
	if _, ok := flue.ZetaOf("90 deg bend"); ok {
		t.Error("a part that the table does not name")
	}
}
