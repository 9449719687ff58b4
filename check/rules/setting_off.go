package rules

import (
	"math"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

var _ = register(&ruleSettingOff)

var ruleSettingOff = check.Rule{
	ID: "setting-off", Group: check.Record, Severity: lang.Warning, Since: "0.2",
	Summary: "A setting of the plant is not that of the design.",
	Why:     "The pressures and temperatures were chosen together; one that is off lets a valve lift or a burner stop.",
	Mend:    "set it as designed, or change the design",
	Sources: sources(sourceDesign),
	Run: func(p *check.Pass) {
		st := recorded(p, "settings")
		if st == nil || noDesign(p, st) {
			return
		}
		safety, controls := p.Plant.Of.Block("safety"), p.Plant.Of.Block("controls")
		say := func(at *plant.Part, what string, have, want plant.Value, unit string, tolerance *check.Limit) {
			if !have.Known() || !want.Known() || math.Abs(have.Num-want.Num) <= tolerance.Num*(1+1e-9) {
				return
			}
			p.Report(at, check.Finding{Span: have.Span(), Found: p.In(have.Num, unit), Limit: p.In(want.Num, unit) + " within " + tolerance.Text(), Source: tolerance.Source, Message: what + " was set to " + p.In(have.Num, unit) + "; the design says " + p.In(want.Num, unit) + "."})
		}
		bar, kelvin := p.Limit("setting-pressure-tolerance"), p.Limit("setting-temperature-tolerance")
		for _, f := range st.Children("fill") {
			for _, d := range safety.Children("fill") {
				if a, b := f.Get("side"), d.Get("side"); a.Word == b.Word || !a.Given && b.Is("primary") {
					say(f, "The cold fill", f.Get("pressure"), d.Get("pressure"), "bar", bar)
				}
			}
		}
		for _, f := range st.Children("precharge") {
			for _, ref := range f.Subjects() {
				say(f, "The precharge of "+ref.Part.Label(), f.Get("pressure"), ref.Part.Get("precharge"), "bar", bar)
			}
		}
		pr := safety.Child("pressurisation")
		high, low, flow := st.Child("high-pressure"), st.Child("low-pressure"), st.Child("set-point")
		say(high, "The high-pressure cut-out", high.Get("pressure"), pr.Get("high"), "bar", bar)
		say(low, "The low-pressure cut-out", low.Get("pressure"), pr.Get("low"), "bar", bar)
		say(flow, "The flow set point", flow.Get("temperature"), controls.Child("set-point").Get("temperature"), "degC", kelvin)
	},
}
