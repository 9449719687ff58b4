package draw_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math/rand/v2"
	"os"
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

// Plants at random until each number of units from 1 to 8 was seen, in line and
// back to back as the generator makes them, and round a corner; once with long
// names too.
func TestLabelsOfRandomPlantsApart(t *testing.T) {
	seen := map[string]int{}
	try := func(seed uint64, text string) {
		rep := judge(t, "random.plant", text)
		key := fmt.Sprint(len(rep.Plant.Units()), " ", rep.Plant.One("frame").Get("layout").Word)
		if seen[key]++; seen[key] > 2 {
			return
		}
		for kind, f := range kinds {
			apart(t, fmt.Sprintf("%s of %s (seed %d)", kind, key, seed), f(rep.Plant, rep.Results, rep))
		}
	}
	long := strings.NewReplacer("Flow-H", "Flow-header-over-the-long-row", "Man-A", "Manifold-under-the-ceiling", "Neut", "Neutraliser-with-a-long-name", "Shut-1", "Emergency-shut-off-valve-1")
	for seed := range uint64(120) {
		text := plants.Sound(rand.New(rand.NewPCG(seed, 7)))
		if seed%2 == 1 {
			text = strings.Replace(text, "back-to-back {", "l-shaped {", 1)
		}
		if seed%3 == 2 {
			text = long.Replace(text)
		}
		try(seed, text)
	}
	for n := 1; n <= 8; n++ {
		found := false
		for key := range seen {
			found = found || strings.HasPrefix(key, strconv.Itoa(n)+" ")
		}
		if !found {
			t.Errorf("no plant with %d units among the random ones", n)
		}
	}
	for _, layout := range []string{"in-line", "back-to-back", "l-shaped"} {
		found := false
		for key := range seen {
			found = found || strings.HasSuffix(key, layout)
		}
		if !found {
			t.Errorf("no %s plant among the random ones", layout)
		}
	}
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
				if part.Name != "" && !links["#"+draw.Anchor(part.Address)] {
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
