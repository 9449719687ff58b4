package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/steps"
	"example.org/tundish/lang"
)

var _ = register(&ruleStepOutOfOrder)

var ruleStepOutOfOrder = check.Rule{
	ID: "step-out-of-order", Group: check.Record, Severity: lang.Error, Since: "0.2",
	Summary: "A step of the building is marked before what it depends on.",
	Why:     "What is built over unfinished work hides it: units on a frame that is not fixed, insulation over a joint that nobody tested.",
	Mend:    "clear up what really was done when; mark the step that is lacking, or take the mark back",
	Limits:  "A step that no line marks is taken as not done. Tests, readings and signatures of the record stand as marks of their steps; their own order is that of work-out-of-order.",
	Sources: sources(sourceRecord),
	Run: func(p *check.Pass) {
		for _, f := range stepFaults(p) {
			switch {
			case f.Before == "":
			case !f.Late() && isTest(f.Before) && len(p.Plant.ByKind("commissioned")) > 0:
				// test-missing speaks of it
			case f.Mark.Get("state").Open():
				p.Unknown(f.Mark, "how far the step "+f.Step+" is")
			case !f.Late() && stepOpen(p, f.Before):
				p.Unknown(f.Mark, "how far the step "+f.Before+" is")
			case f.Late():
				p.Report(f.Mark, check.Finding{Part: f.Step, Found: f.On.String(), Limit: "not before " + f.Of.String(), Message: "The step " + f.Step + " is dated " + f.On.String() + ", before " + f.Before + " of " + f.Of.String() + ", which it depends on."})
			default:
				p.Report(f.Mark, check.Finding{Part: f.Step, Found: f.Before + " is not done", Limit: f.Before + " done first", Message: "The step " + f.Step + " is marked as " + f.Mark.Get("state").Word + ", but " + f.Before + ", which it depends on, is not done."})
			}
		}
	},
}

// stepFaults reads the marks of a record against the steps of its plant.
func stepFaults(p *check.Pass) []steps.Fault {
	a := recorded(p, "assembly")
	if len(a.Children("step")) == 0 {
		return nil
	}
	of := p.Plant.Of
	switch {
	case noDesign(p, a):
		return nil
	case of.Damaged():
		p.Unknown(a, "a plant that can be read whole")
		return nil
	case p.Plant.Damaged():
		p.Unknown(a, "a record that can be read whole")
		return nil
	}
	_, faults := steps.Read(designSteps(of), p.Plant)
	return faults
}

// stepOpen tells that a mark may be of a step and does not say how far it is.
func stepOpen(p *check.Pass, step string) bool {
	for _, m := range recorded(p, "assembly").Children("step") {
		if w := m.Get("step"); w.Open() || w.Is(step) && (m.Get("state").Open() || m.Get("units").Open()) {
			return true
		}
	}
	return false
}

// designSteps are the steps of a plant for their order alone: what is computed
// does not change it.
func designSteps(of *plant.Plant) *steps.List { return steps.Of(of, solve.NewResults(of)) }

// isTest tells a step that a test of the record proves.
func isTest(step string) bool {
	switch step {
	case "strength-test", "gas-tightness-test", "purge", "flushing":
		return true
	}
	return false
}
