package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Sources that several rules on records share.
var (
	sourceRecord    = cite.Source{Work: "commissioning practice of gas units", Read: cite.Practice}
	sourceCOBands   = cite.Source{Work: "trade guidance on the ratio of CO to CO2 after BS 7967", Read: cite.Practice, Note: "0.0040 as new, 0.0080 not to be left in use"}
	sourceExamine   = cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 26", Read: cite.Published}
	sourceDesign    = cite.Source{Work: "the design's own computed value", Read: cite.Published}
	sourceUnitData  = cite.Source{Work: "data of the unit", Read: cite.Published}
	sourceAnalyser  = cite.Source{Work: "yearly calibration of flue gas analyzers", Read: cite.Practice}
	sourceChemistry = cite.Source{Work: "balance of the dry products: O2 = 20.95 % (1 - CO2/CO2max)", Read: cite.Memory, Note: "physics"}
)

// reading is what was measured at one unit and one rate.
type reading struct {
	unit  *plant.Part // of the design
	part  *plant.Part // the statement with the readings
	owner *plant.Part // the commissioned block or the log
	full  bool        // at maximum rate
}

// fire is the word for the rate in a message.
func (r *reading) fire() string {
	if r.full {
		return "maximum rate"
	}
	return "minimum rate"
}

// commissioned lists the units that were commissioned, each with its block.
func commissioned(p *plant.Plant) []reading {
	var out []reading
	for _, c := range p.ByKind("commissioned") {
		for _, ref := range c.Subjects() {
			if ref.Part.Kind == "unit" {
				out = append(out, reading{unit: ref.Part, part: c, owner: c})
			}
		}
	}
	return out
}

// readings lists every set of readings of a record: of the commissioning, and of
// the logs after it.
func readings(p *plant.Plant) []reading {
	var out []reading
	for _, c := range commissioned(p) {
		for _, fire := range [...]string{"high-fire", "low-fire"} {
			if r := c.part.Child(fire); r != nil {
				out = append(out, reading{c.unit, r, c.part, fire == "high-fire"})
			}
		}
	}
	for _, l := range p.ByKind("log") {
		for _, r := range l.Children("reading") {
			for _, ref := range r.Subjects() {
				if ref.Part.Kind == "unit" {
					out = append(out, reading{ref.Part, r, l, r.Get("fire").Is("high-fire")})
				}
			}
		}
	}
	return out
}

// day is a date that a part states; ok is false where it states none.
func day(part *plant.Part, slot string) (lang.Date, bool) {
	v := part.Get(slot)
	if !v.Known() {
		return lang.Date{}, false
	}
	return lang.ParseDate(v.Word)
}

// noDesign says that a record's rule lacks the plant; it reports whether it did.
func noDesign(p *check.Pass, part *plant.Part) bool {
	if p.Design != nil {
		return false
	}
	p.Unknown(part, "the plant that the record belongs to")
	return true
}

// fireWord is how the catalogue names a rate.
func fireWord(full bool) string {
	if full {
		return "full"
	}
	return "low"
}

// named is how a message speaks of a block of readings: "readings of U1", "log of
// 2027-06-14".
func named(part *plant.Part) string {
	if part.Kind == "log" {
		return "log of " + part.Get("date").Word
	}
	if u := part.Subject(); u != nil {
		return "readings of " + u.Label()
	}
	return "readings"
}

// recorded is the record's block of a keyword in a file that is a record.
func recorded(p *check.Pass, keyword string) *plant.Part {
	if p.Plant.Kind != "record" {
		return nil
	}
	return p.Plant.Block(keyword)
}
