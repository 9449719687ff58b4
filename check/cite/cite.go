// Package cite says where a number or a formula comes from. Every limit,
// formula and table of the project carries a Source; the printers show it
// beside the number. The package knows nothing else.
package cite

import "strings"

// Read says how the number reached the project.
type Read string

// The three ways of reading, as printed beside every number.
const (
	Published Read = "published"                  // read in a published copy of the source
	Memory    Read = "from memory"                // known, not read in print
	Practice  Read = "common practice, no source" // what the trade does
)

// Source is one place a number or formula comes from. Edition and Clause stay
// empty where they are not known: a citation is never invented.
type Source struct {
	Work    string // title or number of the work, "EN 13384-1"
	Edition string // year or edition, "2015"
	Clause  string // clause, table or page where known
	Read    Read
	Note    string // what the reader must know before relying on it
}

// String gives the source on one line, without how it was read.
func (s Source) String() string {
	var b strings.Builder
	b.WriteString(s.Work)
	if s.Edition != "" {
		if isYear(s.Edition) { // as standards are cited: EN 12828:2012+A1:2014
			b.WriteString(":")
		} else {
			b.WriteString(", ")
		}
		b.WriteString(s.Edition)
	}
	if s.Clause != "" {
		b.WriteString(", ")
		b.WriteString(s.Clause)
	}
	return b.String()
}

// isYear reports whether an edition begins with a year.
func isYear(edition string) bool {
	n := 0
	for n < len(edition) && edition[n] >= '0' && edition[n] <= '9' {
		n++
	}
	return n == 4
}

// Firm reports whether a limit from this source may decide an error. A limit
// known only from memory or practice is a warning until a printed standard
// confirms it.
func (s Source) Firm() bool { return s.Read == Published }
