package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleDateImpossible)

var ruleDateImpossible = check.Rule{
	ID: "date-impossible", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A date of the record cannot be.",
	Why:     "Somebody wrote another day than that of the work; the order of the work cannot be proved.",
	Mend:    "correct the date",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		var built lang.Date
		haveBuilt := false
		if p.Plant.Of != nil {
			built, haveBuilt = day(p.Plant.Of.One("plant"), "date")
		}
		if p.Plant.Kind != "record" {
			return // the dates of a design are not those of work
		}
		for _, part := range p.Plant.All {
			v := part.Get("date")
			d, ok := day(part, "date")
			if !ok {
				continue
			}
			switch {
			case haveBuilt && d.Before(built) && !earlier(part):
				p.Report(part, check.Finding{Span: v.Span(), Found: d.String(), Limit: "not before " + built.String(), Message: "This is dated " + d.String() + ", before the revision of the design of " + built.String() + "."})
			case !p.Today.IsZero() && p.Today.Before(d):
				p.Report(part, check.Finding{Span: v.Span(), Found: d.String(), Limit: "not after " + p.Today.String(), Message: "This is dated " + d.String() + ", which is still to come."})
			}
		}
	},
}

// earlier tells what may have happened under an earlier revision of the design:
// parts arrive and frames are built while it is still revised.
func earlier(part *plant.Part) bool {
	switch part.Owner.Kind {
	case "delivery", "assembly", "as-built":
		return true
	}
	return false
}
