package reference

import (
	"strings"

	"github.com/pmezard/go-difflib/difflib"
)

// changed gives the lines that differ between two texts, with the line before and
// behind, the opening lines of the blocks around them, and the lines of the first
// text that are asked for.
func changed(was, is []string, want map[int]bool) []Line {
	ops := difflib.NewMatcher(was, is).GetOpCodes()
	show := map[int]bool{}
	near := func(i int) {
		if i < 0 || i >= len(was) {
			return
		}
		show[i] = true
		for depth := indent(was[i]); i >= 0 && depth > 0; i-- {
			if d := indent(was[i]); d < depth && strings.HasSuffix(was[i], "{") {
				show[i], depth = true, d
			}
		}
	}
	for i := range want {
		near(i)
	}
	for _, op := range ops {
		if op.Tag != 'e' {
			near(op.I1 - 1)
			near(op.I2)
		}
	}
	var out []Line
	left := false
	put := func(sign, text string) {
		if left {
			out = append(out, Line{"~", ""})
			left = false
		}
		out = append(out, Line{sign, text})
	}
	for _, op := range ops {
		for i := op.I1; i < op.I2; i++ {
			switch {
			case op.Tag != 'e':
				put("-", was[i])
			case show[i]:
				put(" ", was[i])
			default:
				left = true
			}
		}
		if op.Tag != 'e' {
			for j := op.J1; j < op.J2; j++ {
				put("+", is[j])
			}
		}
	}
	if left {
		out = append(out, Line{"~", ""})
	}
	return out
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " \t")) }
