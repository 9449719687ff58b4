package cite

import "testing"

func TestString(t *testing.T) {
	for want, s := range map[string]Source{
		"EN 12828:2012+A1:2014, 4.6": {Work: "EN 12828", Edition: "2012+A1:2014", Clause: "4.6"},
		"A book, 5th ed., table 2":   {Work: "A book", Edition: "5th ed.", Clause: "table 2"},
		"A practice":                 {Work: "A practice"},
	} {
		if got := s.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
