package rules

import (
	"math/rand"
	"os"
	"path"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// breakLines spoils some lines of a text: takes words and lines out, doubles
// lines, puts values where they do not belong.
func breakLines(rnd *rand.Rand, text string) string {
	odd := [...]string{"none", "unknown", "0", "-3", "U1", "U1..U3", "Exch", "1e9", "{", "Meter"}
	lines := strings.Split(text, "\n")
	for range 1 + rnd.Intn(4) {
		j := rnd.Intn(len(lines))
		words := strings.Fields(lines[j])
		if len(words) == 0 {
			continue
		}
		x := rnd.Intn(len(words))
		switch rnd.Intn(4) {
		case 0:
			lines[j] = ""
		case 1:
			words[x] = odd[rnd.Intn(len(odd))]
			lines[j] = strings.Join(words, " ")
		case 2:
			lines[j] = strings.Join(append(words[:x:x], words[x+1:]...), " ")
		case 3:
			lines[j] = lines[rnd.Intn(len(lines))]
		}
	}
	return strings.Join(lines, "\n")
}

// No rule breaks down on a spoiled record, or on a sound one of a spoiled plant.
func TestSpoiledRecords(t *testing.T) {
	text := map[string]string{}
	for _, n := range [...]string{"back-to-back-record.plant", "back-to-back.plant", "catalogue.plant"} {
		b, err := os.ReadFile("../../examples/" + n)
		if err != nil {
			t.Fatal(err)
		}
		text[n] = string(b)
	}
	rnd := rand.New(rand.NewSource(7))
	cache := lang.NewCache()
	for i := range 160 {
		record, design := text["back-to-back-record.plant"], text["back-to-back.plant"]
		if i%2 == 0 {
			record = breakLines(rnd, record)
		} else {
			design = breakLines(rnd, design)
		}
		load := func(p string) (*lang.File, error) {
			if path.Base(p) == "back-to-back.plant" {
				return bindText(cache, p, design), nil
			}
			return bindText(cache, p, text[path.Base(p)]), nil
		}
		p := plant.Resolve(bindText(cache, "back-to-back-record.plant", record), load)
		rep := check.Run(check.Input{Plant: p, Rules: All(), Today: lang.Date{Year: 2028, Month: 7, Day: 1}})
		for j := range rep.Findings {
			if f := &rep.Findings[j]; f.Rule == "internal-fault" {
				t.Errorf("text %d: %s", i, f.Message)
			}
		}
	}
}
