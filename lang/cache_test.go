package lang

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"unsafe"
)

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

// A cache for repeats keeps a line from its second sight on, in memory of its own;
// a cache for edits from the first.
func TestCacheSights(t *testing.T) {
	const text = "pipe P1 steel DN50 3 m\n"
	head := func(c *Cache) *Head { return Parse(NewSource("a", text), c).Statements[0].Head }
	edits, repeats := NewCache(), NewRepeatCache(1<<20)
	if first, second := head(edits), head(edits); first != second {
		t.Error("a cache for edits does not keep a line at first sight")
	}
	first, second := head(repeats), head(repeats)
	if first == second {
		t.Error("a cache for repeats keeps a line at first sight")
	}
	if head(repeats) != second {
		t.Error("a cache for repeats does not keep a line at second sight")
	}
}

// The cost of a line is that of its types.
func TestCacheCost(t *testing.T) {
	if n := unsafe.Sizeof(line{}) + unsafe.Sizeof(Bound{}); n > lineBytes || n < lineBytes-32 {
		t.Errorf("a line and a binding take %d bytes, not %d", n, lineBytes)
	}
	if n := unsafe.Sizeof(Item{}) + unsafe.Sizeof(Field{}); n != itemBytes {
		t.Errorf("an item and a field take %d bytes, not %d", n, itemBytes)
	}
	if n := unsafe.Sizeof(Expr{}) + unsafe.Sizeof(Value{}); n != exprBytes {
		t.Errorf("an expression and a value take %d bytes, not %d", n, exprBytes)
	}
}

// A full cache holds no more than its size, and a line that is asked for again and
// again stays in it.
func TestCacheBound(t *testing.T) {
	c := NewCacheSize(64 << 10)
	const often = "pipe P1 steel DN50 3 m"
	head := func(text string) *Head { return Parse(NewSource("a", text), c).Statements[0].Head }
	kept, lost := head(often), 0
	for i := range 5000 {
		head(fmt.Sprintf("pipe P%d steel DN50 %d m", i+2, i))
		if h := head(often); h != kept {
			kept = h
			lost++
		}
	}
	size := 0
	for i := range c.table {
		if l := c.table[i].line.Load(); l != nil {
			size += l.cost()
		}
	}
	if size != c.size || size > c.limit || size < c.limit/4 {
		t.Errorf("%d bytes of lines, %d counted, %d allowed", size, c.size, c.limit)
	}
	if lost > 50 {
		t.Errorf("a line that is asked for all the time was lost %d times", lost)
	}
}

// Files that are read side by side through a small cache, in memory that others
// gave back, say what they say without either.
func TestCacheAndRelease(t *testing.T) {
	var texts []string
	eachSeed(t, func(text string) { texts = append(texts, text) })
	says := func(text string, c *Cache) string {
		f := Parse(NewSource("a", text), c)
		Bind(f, Language())
		defer f.Release()
		var b strings.Builder
		Walk(f, func(st *Statement) bool {
			fmt.Fprintf(&b, "%d %q %d %v\n", st.Base, st.Head.Text, len(st.Block), st.Braces)
			for i := range st.Head.Items {
				for _, e := range st.Head.Items[i].Exprs {
					fmt.Fprintf(&b, "%d %q %g %g %q\n", e.Kind, e.Text, e.Num, e.Num2, e.UnitText)
				}
			}
			if st.Bound != nil {
				for i := range st.Bound.Fields {
					fmt.Fprintf(&b, "%s", st.Bound.Fields[i].Slot.Name)
					for _, v := range st.Bound.Fields[i].Values {
						fmt.Fprintf(&b, " %d %g %g %q %v", v.State, v.Num, v.Num2, v.Word, v.Expr.Span)
					}
					b.WriteByte('\n')
				}
			}
			return true
		})
		return fmt.Sprint(b.String(), f.Comments, f.Problems)
	}
	want := make([]string, len(texts))
	for i, text := range texts {
		want[i] = says(text, nil)
	}
	for _, cache := range []*Cache{nil, NewCacheSize(32 << 10), NewRepeatCache(32 << 10), NewRepeatCache(4 << 20)} {
		var wg sync.WaitGroup
		for worker := range 4 {
			wg.Go(func() {
				r := rand.New(rand.NewPCG(uint64(worker), 1))
				for range 3 {
					for _, i := range r.Perm(len(texts)) {
						if got := says(texts[i], cache); got != want[i] {
							t.Errorf("%q reads as\n%s\nnot\n%s", texts[i], got, want[i])
							return
						}
					}
				}
			})
		}
		wg.Wait()
	}
}
