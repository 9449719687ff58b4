package lang

import "testing"

func TestArticle(t *testing.T) {
	for word, want := range map[string]string{"air": "an air", "electrical": "an electrical", "unit": "a unit", "gas-run": "a gas-run", "": "a "} {
		if got := Article(word); got != want {
			t.Errorf("Article(%q) = %q, want %q", word, got, want)
		}
	}
}
