package rules

import "example.org/tundish/lang"

// counted writes a number with what it counts: "1 cap", "2 caps".
func counted(n float64, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return lang.Num(n, 3) + " " + one + "s"
}
