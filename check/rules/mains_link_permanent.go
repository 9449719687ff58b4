package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleMainsLinkPermanent)

var ruleMainsLinkPermanent = check.Rule{
	ID: "mains-link-permanent", Group: check.Pressure, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "The heating circuit stays linked to the mains without the right protection.",
	Why:     "Treated water flows back into drinking water.",
	Mend:    "use a temporary link, or a break tank or backflow preventer",
	Sources: sources(cite.Source{Work: "water regulations: heating water with additives in commercial plants", Read: cite.Memory, Note: "fluid category 4"}),
	Run: func(p *check.Pass) {
		s := p.Plant.Block("safety").Child("mains-link")
		kind := s.Get("kind")
		if !kind.Is("permanent") && !kind.Open() {
			return
		}
		switch v := s.Get("protection"); {
		case v.Open():
			p.Unknown(s, "what guards the mains")
		case v.Is("break-tank"), v.Is("air-gap"), v.Is("backflow-preventer"):
			return
		case kind.Open():
			p.Unknown(s, "whether the mains link is permanent")
		case v.Known():
			p.Report(s, check.Finding{Span: v.Span(), Found: v.Word, Limit: "break-tank, air-gap or backflow-preventer", Message: "The permanent mains link is guarded by a " + v.Word + " only, which does not keep heating water out of the mains."})
		default:
			p.Absent(s, "the protection", check.Finding{Message: "The permanent mains link has no protection against backflow."})
		}
	},
}
