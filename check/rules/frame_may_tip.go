package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleFrameMayTip)

var ruleFrameMayTip = check.Rule{
	ID: "frame-may-tip", Group: check.Frame, Severity: lang.Warning, Since: "0.3",
	Summary: "In a state of its building the frame stands near to tipping and nothing holds it.",
	Why:     "Units hang outside their feet before pipes hold the frame: a push, or the next unit, and it falls on people.",
	Mend:    "anchor or tie the frame before the first unit is hung, hang the sides in turn, or set the feet wider",
	Limits:  "The frame is taken as rigid with its feet at the corners of its arms; which way the units of an L face is not stated, and the worse is taken.",
	Sources: sources(stability.SourceTipLimits, stability.SourceStatics),
	Run: func(p *check.Pass) {
		for _, f := range p.Plant.ByKind("frame") {
			standing := f.Child("standing")
			if how := standing.First(); !how.Known() {
				p.Unknown(f, "how "+f.Label()+" stands (standing)")
				continue
			} else if !how.Is("free") {
				switch from := standing.Get("from"); {
				case from.Is("before-hanging"):
					continue
				case !from.Known():
					p.Unknown(standing, "when "+f.Label()+" is held (held before-hanging or after-piping)")
					continue
				}
			}
			limit := p.Limit("tip-angle-least")
			q := p.Results.Group(f, "tip-angle", solve.Least, solve.Always)
			found := p.AtLeast(q, limit)
			if found == nil {
				continue
			}
			state := ""
			for _, in := range q.Inputs {
				if in.Name == "state" {
					state = ", " + in.Text
				}
			}
			found.Message = f.Label() + " tips at " + found.Found + " while nothing holds it" + state + "; usual is at least " + limit.Text() + "."
			if q.Num <= 0 {
				found.Message = f.Label() + " tips by itself while nothing holds it" + state + "."
			}
			found.Span, found.File = standing.Span(), standing.File
			p.Report(f, *found)
		}
	},
}
