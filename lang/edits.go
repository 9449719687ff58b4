package lang

import (
	"strings"
	"unicode/utf8"
)

// Edits gives the edits that turn one text into another: only lines that
// differ, and of a line only the stretches that differ, so that cursors and
// marks of an editor stay where they are. They are in order and do not touch.
func Edits(old, text string) []Edit {
	var d differ
	d.lines(old, text, 0)
	return d.edits
}

// FormatRange gives the edits that make the lines from..to (0-based, both
// included) canonical and leave all others as they are.
func FormatRange(f *File, from, to int) []Edit {
	want, marks := format(f)
	src := f.Source
	old := src.Text
	if want == old {
		return nil
	}
	var d differ
	if len(marks) == 0 {
		d.lines(old, want, 0)
	}
	// A group is what the formatter made of some lines of the source: the text
	// is compared group by group, so that one line more or less moves nothing.
	oldAt, newAt := 0, 0
	for i := 0; i < len(marks); {
		next := i + 1
		for next < len(marks) && marks[next].line == marks[i].line {
			next++
		}
		oldEnd, newEnd := len(old), len(want)
		if next < len(marks) {
			oldEnd, newEnd = src.LineStart(marks[next].line), marks[next].out
		}
		if oldEnd > src.LineStart(from) || from <= 0 || oldEnd == len(old) {
			if src.LineOf(oldAt) > to {
				break
			}
			d.lines(old[oldAt:oldEnd], want[newAt:newEnd], oldAt)
		}
		oldAt, newAt, i = oldEnd, newEnd, next
	}
	kept := d.edits[:0]
	for _, e := range d.edits {
		first, last := src.LineOf(e.Span.Start), src.LineOf(e.Span.End)
		if last > first && e.Span.End == src.LineStart(last) {
			last-- // whole lines: the end stands at the start of the next
		}
		if last >= from && first <= to {
			kept = append(kept, e)
		}
	}
	return kept
}

type differ struct{ edits []Edit }

func (d *differ) add(start, end int, text string) {
	if start < end || text != "" {
		d.edits = append(d.edits, Edit{Span: Span{start, end}, NewText: text})
	}
}

// maxAligned bounds the table by which lines are aligned; a greater change is
// one edit.
const maxAligned = 1 << 20

// lines compares two texts line by line; base is where the old one starts.
func (d *differ) lines(old, text string, base int) {
	if old == text {
		return
	}
	a, b := strings.SplitAfter(old, "\n"), strings.SplitAfter(text, "\n")
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		base += len(a[0])
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	if len(a) == len(b) || len(a)*len(b) > maxAligned {
		d.run(a, b, base)
		return
	}
	d.align(a, b, base)
}

// align finds the longest list of lines that both sides hold, blanks apart, and
// compares what stands between.
func (d *differ) align(a, b []string, base int) {
	x, y := squeezeAll(a), squeezeAll(b)
	width := len(b) + 1
	best := make([]int32, (len(a)+1)*width) // of a[i:] and b[j:]
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if x[i] == y[j] {
				best[i*width+j] = best[(i+1)*width+j+1] + 1
			} else {
				best[i*width+j] = max(best[(i+1)*width+j], best[i*width+j+1])
			}
		}
	}
	i, j, fromA, fromB := 0, 0, 0, 0
	at := base // where a[fromA] starts
	for i < len(a) && j < len(b) {
		switch {
		case x[i] == y[j]:
			d.run(a[fromA:i], b[fromB:j], at)
			at += size(a[fromA:i])
			d.pair(a[i], b[j], at)
			at += len(a[i])
			i, j = i+1, j+1
			fromA, fromB = i, j
		case best[(i+1)*width+j] >= best[i*width+j+1]:
			i++
		default:
			j++
		}
	}
	d.run(a[fromA:], b[fromB:], at)
}

func size(lines []string) int {
	n := 0
	for _, l := range lines {
		n += len(l)
	}
	return n
}

func squeezeAll(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = strings.Join(strings.Fields(l), "")
	}
	return out
}

// run replaces lines by lines: one by one where there are as many.
func (d *differ) run(a, b []string, base int) {
	if len(a) == len(b) {
		for i := range a {
			d.pair(a[i], b[i], base)
			base += len(a[i])
		}
		return
	}
	if len(a) == 0 || len(b) == 0 { // whole lines come or go
		d.add(base, base+size(a), strings.Join(b, ""))
		return
	}
	d.trimmed(strings.Join(a, ""), strings.Join(b, ""), base)
}

// pair compares two lines: where only blanks differ, blank by blank.
func (d *differ) pair(a, b string, base int) {
	if a == b {
		return
	}
	n := len(d.edits)
	i, j := 0, 0
	for i < len(a) || j < len(b) {
		i2, j2 := afterBlanks(a, i), afterBlanks(b, j)
		if a[i:i2] != b[j:j2] {
			d.trimmed(a[i:i2], b[j:j2], base+i)
		}
		i, j = i2, j2
		if i < len(a) && j < len(b) && a[i] == b[j] {
			i, j = i+1, j+1
			continue
		}
		if i < len(a) || j < len(b) { // more than blanks
			d.edits = d.edits[:n]
			d.trimmed(a, b, base)
			return
		}
	}
}

func afterBlanks(s string, i int) int {
	for i < len(s) && isBlank(s[i]) {
		i++
	}
	return i
}

// trimmed replaces what is left when both lose what they share at their ends;
// it never cuts a character in two.
func (d *differ) trimmed(a, b string, base int) {
	pre := 0
	for pre < len(a) && pre < len(b) && a[pre] == b[pre] {
		pre++
	}
	for pre > 0 && !(runeBoundary(a, pre) && runeBoundary(b, pre)) {
		pre--
	}
	post := 0
	for post < len(a)-pre && post < len(b)-pre && a[len(a)-1-post] == b[len(b)-1-post] {
		post++
	}
	for post > 0 && !(runeBoundary(a, len(a)-post) && runeBoundary(b, len(b)-post)) {
		post--
	}
	d.add(base+pre, base+len(a)-post, b[pre:len(b)-post])
}

// runeBoundary tells that a cut before a byte splits no character; a line end
// of two bytes counts as one.
func runeBoundary(s string, i int) bool {
	if i == 0 || i >= len(s) {
		return true
	}
	return utf8.RuneStart(s[i]) && !(s[i] == '\n' && s[i-1] == '\r')
}
