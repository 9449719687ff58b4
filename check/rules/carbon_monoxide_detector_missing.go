package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleCarbonMonoxideDetectorMissing)

var ruleCarbonMonoxideDetectorMissing = check.Rule{
	ID: "carbon-monoxide-detector-missing", Group: check.Air, Severity: lang.Warning, Since: "0.1",
	Summary: "No detector of carbon monoxide is stated.",
	Why:     "Carbon monoxide is not noticed by people.",
	Mend:    "add a detector at breathing height that shuts the gas",
	Sources: sources(cite.Source{Work: "IGEM/UP/11 and BB 100", Read: cite.Practice, Note: "for educational buildings; elsewhere by risk assessment"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("air")
		if block == nil {
			return
		}
		for _, d := range block.Children("detector") {
			switch gas := d.Get("gas"); {
			case gas.Is("carbon-monoxide"):
				return
			case !gas.Known():
				p.Unknown(d, "the gas that "+d.Label()+" detects")
				return
			}
		}
		f := check.Finding{Message: "No detector of carbon monoxide is stated for the room."}
		if p.Plant.Block("basis").Child("building").Has("occupied-above") {
			f.Message = "No detector of carbon monoxide is stated, and people are above the room."
		}
		if q := mostBackFlow(p); q != nil && !block.Child("intake").First().Is("ducted") {
			f.Message += " A damper that sticks open at " + q.Part.Label() + " lets " + p.In(q.Num, q.Unit) + " of the others' products through the stopped unit."
			f.Quantity = q
		}
		p.Absent(block, "a detector", f)
	},
}

// mostBackFlow is the greatest flow of products through a stopped unit whose
// damper is stuck open; nil where none is pushed back, or none is known.
func mostBackFlow(p *check.Pass) (most *solve.Quantity) {
	for _, u := range p.Plant.Units() {
		if q := p.Results.Get(u, "flue-back-flow", solve.DamperOpen); q.Known() && q.Num > 0 && (most == nil || q.Num > most.Num) {
			most = q
		}
	}
	return most
}
