package report

import (
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// One line of text for a group written as one statement; each member in JSON.
func TestOpenQuestionsOfAGroup(t *testing.T) {
	text := "plant \"x\"\nunits U1..U3 {\n  relief unknown\n}\nunits U4 {\n  relief unknown\n}\n"
	f := lang.Parse(lang.NewSource("x.plant", text), nil)
	lang.Bind(f, lang.Language())
	at := func(line string, nth int) lang.Span {
		i := strings.Index(text, line)
		for range nth {
			i += 1 + strings.Index(text[i+1:], line)
		}
		return lang.Span{Start: i, End: i + len(line)}
	}
	group, single := at("relief unknown", 0), at("relief unknown", 1)
	u := func(span lang.Span, rule, part, needs string) check.Unknown {
		return check.Unknown{Rule: rule, File: f, Span: span, Part: part, Needs: needs}
	}
	rep := &check.Report{Plant: &plant.Plant{File: f}, Unknowns: []check.Unknown{
		u(group, "r", "U1.relief", "the output of U1"),
		u(group, "r", "U2.relief", "the output of U2"),
		u(group, "r", "U3.relief", "the output of U3"),
		u(group, "r", "U1.relief", "the set pressure"),  // another question
		u(group, "q", "U1.relief", "the output of U1"),  // another rule
		u(group, "r", "U3.relief", "the output of U9"),  // the same member once more
		u(single, "r", "U4.relief", "the output of U4"), // another statement
		u(lang.Span{}, "r", "", "a flue block"),
		u(lang.Span{}, "s", "", "the length of G1"),
		u(lang.Span{}, "s", "", "the length of G2"), // no member of anything
	}}
	var b strings.Builder
	(&Text{W: &b}).File("x.plant", rep)
	want := `x.plant: 10 questions were not decided for want of input; that is not a pass.
    r: not evaluated, needs the output of U1; likewise U2, U3  (x.plant:3:3)
    r: not evaluated, needs the set pressure  (x.plant:3:3)
    q: not evaluated, needs the output of U1  (x.plant:3:3)
    r: not evaluated, needs the output of U9  (x.plant:3:3)
    r: not evaluated, needs the output of U4  (x.plant:6:3)
    r: not evaluated, needs a flue block  (x.plant:1:1)
    s: not evaluated, needs the length of G1  (x.plant:1:1)
    s: not evaluated, needs the length of G2  (x.plant:1:1)

`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
	d := NewDocument(Tool{})
	d.Add("x.plant", rep)
	if len(d.NotEvaluated) != len(rep.Unknowns) {
		t.Errorf("JSON has %d questions of %d", len(d.NotEvaluated), len(rep.Unknowns))
	}
}
