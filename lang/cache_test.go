package lang

import "testing"

// A line with a bracket that nothing closes ends where the next line says. It is
// not kept as a statement of its own for another file.
func TestCacheOpenBracket(t *testing.T) {
	for _, pair := range [][2]string{
		{"p (1\nq 2\n", "p (1\n)\n"},
		{"p (1 \")\"\nq 2\n", "p (1 \")\"\n)\n"},
		{"p (1 # )\nq 2\n", "p (1 # )\n)\n"},
	} {
		cache := NewCache()
		Parse(NewSource("a", pair[0]), cache)
		with, without := Parse(NewSource("b", pair[1]), cache), Parse(NewSource("b", pair[1]), nil)
		if len(with.Statements) != len(without.Statements) || len(with.Problems) != len(without.Problems) || with.Statements[0].Head.Text != without.Statements[0].Head.Text {
			t.Errorf("%q after %q: %q with cache, %q without", pair[1], pair[0], with.Statements[0].Head.Text, without.Statements[0].Head.Text)
		}
	}
}
