package draw_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
	"example.org/tundish/testdata/plants"
)

const examples = "../../examples/"

var kinds = map[string]func(*plant.Plant, *solve.Results, *check.Report) []byte{
	"schematic": draw.Schematic,
	"elevation": draw.Elevation,
	"flue":      draw.Flue,
}

func judge(t testing.TB, name, text string) *check.Report {
	t.Helper()
	read := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), lang.NewCache())
		lang.Bind(f, lang.Language())
		return f
	}
	p := plant.Resolve(read(name, text), func(string) (*lang.File, error) {
		b, err := os.ReadFile(examples + plants.Catalogue)
		return read(plants.Catalogue, string(b)), err
	})
	return check.Run(check.Input{Plant: p, Rules: rules.All()})
}

func example(t testing.TB, name string) *check.Report {
	t.Helper()
	b, err := os.ReadFile(examples + name)
	if err != nil {
		t.Fatal(err)
	}
	return judge(t, name, string(b))
}

var exampleNames = []string{"in-line.plant", "back-to-back.plant", "l-shaped-faulty.plant", "us-units.plant"}

// piece is a text of a drawing with the box that it takes.
type piece struct {
	text           string
	link           string
	x0, y0, x1, y1 float64
}

// texts parses an SVG and gives its texts. A text is as wide as its textLength
// says, 0.8 of its size high over the base line and 0.2 under it.
func texts(t testing.TB, svg []byte) (list []piece, view [4]float64) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	link := ""
	var open *piece
	for {
		tok, err := d.Token()
		if tok == nil {
			if err.Error() != "EOF" {
				t.Fatalf("not well-formed: %v", err)
			}
			return list, view
		}
		switch e := tok.(type) {
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			f := func(k string) float64 {
				v, err := strconv.ParseFloat(at[k], 64)
				if err != nil {
					t.Fatalf("<%s> has %s=%q", e.Name.Local, k, at[k])
				}
				return v
			}
			switch e.Name.Local {
			case "svg":
				for i, v := range strings.Fields(at["viewBox"]) {
					view[i], _ = strconv.ParseFloat(v, 64)
				}
			case "a":
				link = at["href"]
			case "text":
				x, y, w, s := f("x"), f("y"), f("textLength"), f("font-size")
				open = &piece{link: link, x0: x, y0: y - 0.8*s, x1: x + w, y1: y + 0.2*s}
			}
		case xml.CharData:
			if open != nil {
				open.text += string(e)
			}
		case xml.EndElement:
			switch e.Name.Local {
			case "a":
				link = ""
			case "text":
				list = append(list, *open)
				open = nil
			}
		}
	}
}

func apart(t *testing.T, what string, svg []byte) []piece {
	t.Helper()
	list, view := texts(t, svg)
	if len(list) < 6 {
		t.Errorf("%s: only %d texts", what, len(list))
	}
	for i, a := range list {
		if a.x0 < view[0] || a.y0 < view[1] || a.x1 > view[0]+view[2] || a.y1 > view[1]+view[3] {
			t.Errorf("%s: %q leaves the drawing", what, a.text)
		}
		for _, b := range list[i+1:] {
			if a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 {
				t.Errorf("%s: %q covers %q", what, a.text, b.text)
			}
		}
	}
	return list
}

func TestLabelsOfExamplesApart(t *testing.T) {
	for _, name := range exampleNames {
		rep := example(t, name)
		for kind, f := range kinds {
			apart(t, kind+" of "+name, f(rep.Plant, rep.Results, rep))
		}
	}
}

var unitsOf = regexp.MustCompile(`(?m)^units U1(?:\.\.U(\d))? \{`)

// Every number of units from 1 to 8, in line, back to back and round a corner:
// plants at random until each was drawn, half of them with long names.
func TestLabelsOfEveryArrangementApart(t *testing.T) {
	long := strings.NewReplacer("Flow-H", "Flow-header-over-the-long-row", "Man-A", "Manifold-under-the-ceiling", "Neut", "Neutraliser-with-a-long-name", "Shut-1", "Emergency-shut-off-valve-1")
	drawn := map[string]int{}
	for seed := uint64(0); seed < 400; seed++ {
		text := plants.Sound(rand.New(rand.NewPCG(seed, 7)))
		m := unitsOf.FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("seed %d: no units", seed)
		}
		n := m[1]
		if n == "" {
			n = "1"
		}
		for _, a := range []string{"in-line", "back-to-back", "l-shaped"} {
			key := n + " " + a
			if drawn[key] >= 2 || key == "1 back-to-back" {
				continue
			}
			text := arranged(text, a, n)
			if text == "" {
				continue
			}
			if drawn[key]++; drawn[key] == 2 {
				text = long.Replace(text)
			}
			rep := judge(t, "random.plant", text)
			if got := rep.Plant.One("frame").Get("layout").Word; got != a || strconv.Itoa(len(rep.Plant.Units())) != n {
				t.Fatalf("seed %d: %d units %s, not %s", seed, len(rep.Plant.Units()), got, key)
			}
			for kind, f := range kinds {
				apart(t, fmt.Sprintf("%s of %s (seed %d)", kind, key, seed), f(rep.Plant, rep.Results, rep))
			}
		}
	}
	for n := 1; n <= 8; n++ {
		for _, a := range []string{"in-line", "back-to-back", "l-shaped"} {
			if key := fmt.Sprint(n, " ", a); drawn[key] < 2 && key != "1 back-to-back" {
				t.Errorf("%d plants of %s", drawn[key], key)
			}
		}
	}
}

var (
	frameLine = regexp.MustCompile(`(?m)^frame Frame-A (\S+) \{$`)
	frontRow  = regexp.MustCompile(`(?m)^  row Front .*\n`)
)

// arranged puts the n units of a plant in line into two rows where the
// arrangement has two; empty where the plant does not lend itself to it.
func arranged(text, arrangement, n string) string {
	was := frameLine.FindStringSubmatch(text)
	if was == nil || was[1] == arrangement {
		return text
	}
	if was[1] != "in-line" || arrangement == "in-line" {
		return ""
	}
	text = frameLine.ReplaceAllString(text, "frame Frame-A "+arrangement+" {")
	count, _ := strconv.Atoi(n)
	if count < 2 {
		return text
	}
	span := func(a, b int) string {
		if a == b {
			return fmt.Sprint("U", a)
		}
		return fmt.Sprintf("U%d..U%d", a, b)
	}
	half := (count + 1) / 2
	return frontRow.ReplaceAllString(text, "  row Long        "+span(1, half)+"\n  row Short       "+span(half+1, count)+"\n")
}

// Every unit, branch, drop and connector is in the schematic once at least, and
// its name leads to its calculation.
func TestSchematicNamesEveryPart(t *testing.T) {
	for _, name := range exampleNames {
		rep := example(t, name)
		list, _ := texts(t, draw.Schematic(rep.Plant, rep.Results, rep))
		links := map[string]bool{}
		for _, p := range list {
			links[p.link] = true
		}
		for _, kind := range []string{"unit", "drop", "branch", "connector", "manifold", "flue-header", "riser", "terminal", "pipe", "meter", "valve", "header", "circuit", "vessel", "gully"} {
			for _, part := range rep.Plant.ByKind(kind) {
				if part.Name != "" && !links["#"+draw.Anchor(part.Address())] {
					t.Errorf("%s: %s %s is not in the schematic", name, kind, part.Name)
				}
			}
		}
	}
}

func TestAnchor(t *testing.T) {
	for address, want := range map[string]string{"U3.damper": "calc-U3.damper", "Flow-H": "calc-Flow-H", "a b": "calc-a_20_b", `"<&`: "calc-_22__3c__26_"} {
		if got := draw.Anchor(address); got != want {
			t.Errorf("Anchor(%q) = %q, want %q", address, got, want)
		}
	}
}

// A half-written file is drawn as far as it goes, with what is missing said.
func TestDrawsHalfWritten(t *testing.T) {
	b, err := os.ReadFile(examples + "back-to-back.plant")
	if err != nil {
		t.Fatal(err)
	}
	text := string(b)
	for cut := 0; cut < len(text); cut += 331 {
		rep := judge(t, "half.plant", text[:cut])
		for kind, f := range kinds {
			list, _ := texts(t, f(rep.Plant, rep.Results, rep))
			if len(list) == 0 {
				t.Errorf("%s of the first %d bytes is empty", kind, cut)
			}
		}
	}
}
