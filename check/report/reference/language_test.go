package reference_test

import (
	"bytes"
	"html"
	"strings"
	"testing"

	"example.org/tundish/check/report/reference"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// Every statement of the schema is told once, with what each of its values is and
// how it is written, and every unit is listed.
func TestLanguagePage(t *testing.T) {
	s := lang.Language()
	l := reference.OfLanguage(s)
	var b bytes.Buffer
	if err := l.WriteHTML(&b, "1.2.3"); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	ids := onePage(t, page)
	for i := range s.Rows {
		r := &s.Rows[i]
		id := r.In[0] + "." + r.Keyword
		if !ids[id] {
			t.Errorf("%s is not on the page", id)
			continue
		}
		_, at, _ := strings.Cut(page, `<article id="`+id+`">`)
		at, _, _ = strings.Cut(at, "</article>")
		at = html.UnescapeString(at)
		for _, must := range append([]string{r.Help, r.Example, r.Source}, r.In...) {
			if !strings.Contains(at, must) {
				t.Errorf("%s: the page does not say %q", id, must)
			}
		}
		if n := strings.Count(at, "<dt>value</dt>") + strings.Count(at, "<dt>needed</dt>"); n != len(r.Slots) {
			t.Errorf("%s: %d values on the page, %d in the schema", id, n, len(r.Slots))
		}
		for _, x := range r.Slots {
			for _, must := range append([]string{x.Help, x.Label, x.Suffix, x.Default, x.DefaultFrom}, x.Choices...) {
				if !strings.Contains(at, must) {
					t.Errorf("%s, %s: the page does not say %q", id, x.Name, must)
				}
			}
			if x.Type == lang.QuantityType && !strings.Contains(at, x.Dim.String()) {
				t.Errorf("%s, %s: the page does not say that it is a %s", id, x.Name, x.Dim)
			}
		}
	}
	_, units, _ := strings.Cut(page, `<section id="units-of-quantities">`)
	for d := lang.NoDimension; d < lang.Derived; d++ {
		for _, u := range lang.UnitsOf(d, lang.US) {
			if !strings.Contains(units, "<code>"+html.EscapeString(u.Symbol)+"</code>") {
				t.Errorf("the unit %s is not on the page", u.Symbol)
			}
		}
	}
}

// The other forms say the same statements and rules.
func TestOtherForms(t *testing.T) {
	l := reference.OfLanguage(lang.Language())
	var text, mark bytes.Buffer
	if err := l.WriteText(&text); err != nil {
		t.Fatal(err)
	}
	if err := l.WriteMarkdown(&mark, "1.2.3"); err != nil {
		t.Fatal(err)
	}
	for _, word := range l.Keywords() {
		if !strings.Contains(mark.String(), "\n### "+word+"\n") || !strings.Contains("\n"+text.String(), "\n"+word+" (in ") {
			t.Errorf("the statement %s is missing in text or Markdown", word)
		}
	}
	var list bytes.Buffer
	all := reference.Rules(rules.All())
	if err := reference.WriteRulesMarkdown(&list, all, rules.All(), "1.2.3"); err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		if strings.Count(list.String(), "\n### "+r.ID+"\n") != 1 {
			t.Errorf("%s has not one heading in Markdown", r.ID)
		}
	}
	if n := strings.Count(list.String(), "```"); n%2 != 0 {
		t.Errorf("%d fences in Markdown", n)
	}
}
