package sizing

import (
	"os"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var sharedCache = lang.NewCache()

func load(name string) (*lang.File, error) {
	b, err := os.ReadFile("../../examples/" + name)
	if err != nil {
		return nil, err
	}
	f := lang.Parse(lang.NewSource(name, string(b)), sharedCache)
	lang.Bind(f, lang.Language())
	return f, nil
}

func judge(p *plant.Plant) *check.Report {
	return check.Run(check.Input{Plant: p, Rules: rules.All()})
}

func read(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func propose(text string) *Proposal {
	return Propose(Input{Name: "x.plant", Text: text, Load: load, Cache: sharedCache, Check: judge, Only: -1})
}

var plants = []string{"in-line.plant", "back-to-back.plant", "us-units.plant", "l-shaped-faulty.plant"}

// tally counts the findings of a text by rule and line, by a way of its own.
func tally(t *testing.T, text string) (map[string]int, int) {
	t.Helper()
	f := lang.Parse(lang.NewSource("x.plant", text), nil)
	lang.Bind(f, lang.Language())
	rep := judge(plant.Resolve(f, load))
	out := map[string]int{}
	for _, fd := range rep.Findings {
		out[fd.Rule+" at line "+lang.Num(float64(f.Source.LineOf(fd.Span.Start)), 6)]++
	}
	return out, len(rep.Unknowns)
}

// The proposal brings no finding and no open question, and is proposed again
// when it is sized again.
func TestProposalHolds(t *testing.T) {
	for _, name := range plants {
		text := read(t, name)
		p := propose(text)
		before, open := tally(t, text)
		after, openAfter := tally(t, p.Text)
		for k, n := range after {
			if n > before[k] {
				t.Errorf("%s: new with the proposed sizes: %s", name, k)
			}
		}
		if openAfter > open {
			t.Errorf("%s: %d open questions, before %d", name, openAfter, open)
		}
		if again := propose(p.Text); again.Text != p.Text {
			t.Errorf("%s: sized again: %+v", name, again.Changes)
		}
		if strings.Count(p.Text, "\n") != strings.Count(text, "\n") {
			t.Errorf("%s: the lines moved", name)
		}
	}
}

// No single size of a proposal can go down by itself: each smaller one brings a
// finding, is smaller than what it joins, or is seen by no rule. Each is tried by
// writing it into the text.
func TestNothingSmaller(t *testing.T) {
	for _, name := range plants {
		p := propose(read(t, name))
		f := lang.Parse(lang.NewSource("x.plant", p.Text), nil)
		lang.Bind(f, lang.Language())
		now, _ := tally(t, p.Text)
		values := compared(p.Text)
		tried := 0
		for _, c := range choices(plant.Resolve(f, load)) {
			if c.from <= c.least || c.from == 0 {
				continue
			}
			small := c.options[c.from-1]
			var edits []lang.Edit
			for _, span := range append([]lang.Span{c.span}, c.follow...) {
				edits = append(edits, lang.Edit{Span: span, NewText: small.text})
			}
			text := lang.Apply(p.Text, edits)
			worse := false
			for k, n := range mustTally(t, text) {
				worse = worse || n > now[k]
			}
			fed := false
			for _, o := range choices(plant.Resolve(f, load)) {
				fed = fed || o.feeder != nil && o.feeder.part.Stmt.Base == c.part.Stmt.Base && o.options[o.from].num > small.num
			}
			if !worse && !fed && compared(text) != values && !brokenMore(text, p.Text) {
				t.Errorf("%s: %s could be %s", name, groupName(c.part), small.text)
			}
			tried++
		}
		if tried < 5 {
			t.Errorf("%s: only %d sizes were tried", name, tried)
		}
	}
}

func mustTally(t *testing.T, text string) map[string]int {
	m, _ := tally(t, text)
	return m
}

func report(text string) *check.Report {
	f := lang.Parse(lang.NewSource("x.plant", text), nil)
	lang.Bind(f, lang.Language())
	return judge(plant.Resolve(f, load))
}

// compared lists the values that limits judge.
func compared(text string) string {
	var b strings.Builder
	for _, c := range report(text).Comparisons {
		b.WriteString(lang.Num(c.Quantity.Num, 9) + " ")
	}
	return b.String()
}

// brokenMore tells whether a limit that b breaks already is broken by more in a.
func brokenMore(a, b string) bool {
	x, y := report(a).Comparisons, report(b).Comparisons
	if len(x) != len(y) {
		return true
	}
	for i := range x {
		u, ok1 := x[i].Used()
		v, ok2 := y[i].Used()
		if ok1 && ok2 && !x[i].Holds && u > v {
			return true
		}
	}
	return false
}

// From sizes that are all far too small the same search finds a plant without
// the findings that sizes can mend.
func TestGrows(t *testing.T) {
	text := read(t, "in-line.plant")
	small := strings.NewReplacer("steel DN65 14 m", "steel DN25 14 m", "steel DN65 2.0 m", "steel DN25 2.0 m", "steel DN65 1.9 m", "steel DN25 1.9 m", "steel DN80", "steel DN32", "600 cm2 free", "120 cm2 free", "DN225", "DN125").Replace(text)
	before, _ := tally(t, small)
	p := propose(small)
	after, _ := tally(t, p.Text)
	sound, _ := tally(t, text)
	if len(before) <= len(sound) {
		t.Fatal("the small sizes give no finding")
	}
	for k := range after {
		if sound[k] == 0 {
			t.Errorf("left: %s", k)
		}
	}
}

// A gas run does not widen on its way, and a fitting keeps the size of its pipe.
func TestTaperAndFittings(t *testing.T) {
	for _, name := range plants {
		p := propose(read(t, name))
		f := lang.Parse(lang.NewSource("x.plant", p.Text), nil)
		lang.Bind(f, lang.Language())
		fed := 0
		for _, c := range choices(plant.Resolve(f, load)) {
			if c.feeder == nil {
				continue
			}
			fed++
			if c.options[c.from].num > c.feeder.options[c.feeder.from].num*(1+1e-9) {
				t.Errorf("%s: %s is wider than %s, which feeds it", name, groupName(c.part), groupName(c.feeder.part))
			}
		}
		if name != "l-shaped-faulty.plant" && fed < 3 {
			t.Errorf("%s: only %d gas pipes have a feeder", name, fed)
		}
	}
	p := propose(read(t, "in-line.plant"))
	for _, want := range []string{"valve Shut-1    emergency DN50", "blank           DN32 dead-end of Man-A", "filter Mag      magnetic DN65 on PR"} {
		if !strings.Contains(p.Text, want) {
			t.Errorf("the proposal lacks %q", want)
		}
	}
}

// One line alone is sized when only that is asked.
func TestOnly(t *testing.T) {
	text := read(t, "l-shaped-faulty.plant")
	line := strings.Count(text[:strings.Index(text, "  pipe G1")], "\n")
	p := Propose(Input{Name: "x.plant", Text: text, Load: load, Check: judge, Only: line})
	if len(p.Changes) != 1 || p.Changes[0].Part != "G1" || p.Changes[0].To != "DN65" || len(p.Kept) != 0 {
		t.Errorf("%+v %+v", p.Changes, p.Kept)
	}
}

func BenchmarkPropose(b *testing.B) {
	text := read(b, "back-to-back.plant")
	for b.Loop() {
		propose(text)
	}
}
