package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

var _ = register(&ruleExitWithoutStop)

var ruleExitWithoutStop = check.Rule{
	ID: "exit-without-stop", Group: check.Air, Severity: lang.Error, Device: true, Since: "0.1",
	Summary: "An exit of the plant room has no emergency stop.",
	Why:     "Nobody goes back through the room to stop the plant.",
	Mend:    "add an emergency stop beside the exit that closes the gas",
	Sources: sources(cite.Source{Work: "emergency stop at each exit of a plant room", Read: cite.Practice}),
	Run: func(p *check.Pass) {
		doors := p.Plant.ByKind("door")
		if len(doors) == 0 {
			return
		}
		if p.Plant.Block("air") == nil {
			p.Unknown(doors[0], "an air block with the emergency stops")
			return
		}
		exits := 0
		for _, d := range doors {
			if d.Has("exit") {
				exits++
			}
		}
		if exits == 0 && len(doors) > 1 {
			p.Unknown(doors[0], "which door is an exit")
			return
		}
		for _, d := range doors {
			if !d.Has("exit") && len(doors) > 1 {
				continue
			}
			found := false
			for _, s := range p.Plant.ByKind("stop") {
				if r, ok := s.Ref("exit"); ok && r.Part == d {
					found = true
					if s.Get("closes").Open() {
						p.Unknown(s, "what "+s.Label()+" closes")
					} else if len(s.Refs("closes")) == 0 {
						p.Absent(s, "what "+s.Label()+" closes", check.Finding{Message: s.Label() + " closes no gas valve."})
					}
				}
			}
			if !found {
				missing(p, d, "the stop at "+d.Label(), check.Finding{Message: "The exit " + d.Label() + " has no emergency stop."}, "stop")
			}
		}
	},
}
