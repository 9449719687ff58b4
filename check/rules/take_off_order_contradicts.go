package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleTakeOffOrderContradicts)

var ruleTakeOffOrderContradicts = check.Rule{
	ID: "take-off-order-contradicts", Group: check.Water, Severity: lang.Error, Since: "0.1",
	Summary: "The order of the take-offs contradicts the stated return.",
	Why:     "The balance between first and last unit is not the one that was meant.",
	Mend:    "give both headers equal orders for reverse return, mirrored ones for direct return",
	Sources: sources(cite.Source{Work: "orders along the flow: equal is reverse return, mirrored is direct return", Read: cite.Published, Note: "definition of the plant language"}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("headers")
		takeOffs := block.Children("take-off")
		if len(takeOffs) != 2 {
			return
		}
		a, b := takeOffs[0].Refs("units"), takeOffs[1].Refs("units")
		if len(p.Plant.Units()) == 1 {
			return // one unit has no order
		}
		if len(a) != len(b) || len(a) < 2 {
			p.Unknown(block, "the same units in both take-off orders")
			return
		}
		equal, mirrored := true, true
		for i := range a {
			equal = equal && a[i].Part == b[i].Part
			mirrored = mirrored && a[i].Part == b[len(b)-1-i].Part
		}
		order := block.Get("order")
		if order.Is("reverse-return") && equal || order.Is("direct-return") && mirrored || !order.Known() {
			return
		}
		says := "neither reverse nor direct return"
		if equal {
			says = "reverse return"
		} else if mirrored {
			says = "direct return"
		}
		f := check.Finding{Span: order.Span(), Found: says, Limit: order.Word, Message: "The headers are said to be " + order.Word + ", but their take-off orders make " + says + "."}
		if equal || mirrored {
			to := "reverse-return"
			if mirrored {
				to = "direct-return"
			}
			f.Fixes = []lang.Fix{{Title: "Write " + to, Edits: []lang.Edit{{Span: order.Span(), NewText: to}}}}
		}
		p.Report(block, f)
	},
}
