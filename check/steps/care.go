package steps

import (
	"slices"
	"strings"

	"example.org/tundish/check/cautions"
)

// careAt says in which steps a caution matters.
var careAt = []struct {
	topic string
	steps []string
}{
	{"gas", []string{"gas-manifold", "gas-drops", "gas-supply", "gas-strength-test", "gas-tightness-test", "purge", "first-fire", "commissioning"}},
	{"carbon-monoxide", []string{"dampers", "flue", "air", "first-fire", "commissioning"}},
	{"flue", []string{"dampers", "flue", "first-fire"}},
	{"pressure", []string{"old-circuits", "safety-devices", "strength-test", "flushing", "fill"}},
	{"hot-surface", []string{"old-circuits", "first-fire", "commissioning"}},
	{"lifting", []string{"delivery", "frame", "gas-manifold", "return-header", "flow-header", "units", "separation", "safety-devices"}},
	{"tip-over", []string{"frame", "supports", "gas-manifold", "return-header", "flow-header", "units", "unit-pipework"}},
	{"height", []string{"supports", "flow-header", "return-header", "flue", "air"}},
	{"electrical", []string{"wiring", "electrical-test", "first-fire", "commissioning"}},
	{"asbestos", []string{"survey", "old-circuits", "site", "frame", "supports", "flue", "air"}},
	{"legionella", []string{"flushing", "fill", "commissioning", "handover"}},
	{"confined-space", []string{"site", "delivery", "frame", "units", "purge"}},
	{"chemicals", []string{"old-circuits", "flushing", "fill"}},
	{"frost", []string{"condensate", "handover"}},
	{"condensate", []string{"condensate"}},
	{"hot-work", []string{"gas-manifold", "return-header", "flow-header", "gas-supply", "main-pipes", "separation", "unit-pipework"}},
	{"notification", []string{"site"}},
}

// mattersAt reports whether a caution matters in a step.
func mattersAt(topic, step string) bool {
	for i := range careAt {
		if careAt[i].topic == topic {
			return slices.Contains(careAt[i].steps, step)
		}
	}
	return false
}

// cautionsFor gives the cautions of a step: what the specification carries, and
// what it does not carry although the plant calls for it.
func (b *builder) cautionsFor(s *Step) {
	carried := map[string]bool{}
	for _, c := range b.p.ByKind("caution") {
		topic := c.Get("topic").Word
		if text := c.Get("text"); text.Known() && mattersAt(topic, s.ID) {
			carried[topic] = true
			s.Cautions = append(s.Cautions, Caution{Topic: topic, Text: text.Word, From: ref(c)})
		}
	}
	for i := range cautions.Triggers {
		t := &cautions.Triggers[i]
		if carried[t.Topic] || !mattersAt(t.Topic, s.ID) {
			continue
		}
		if p := t.Part(b.p); p != nil {
			s.Cautions = append(s.Cautions, Caution{Topic: t.Topic, Text: t.Text, From: ref(p), Missing: true})
		}
	}
}

// toolsFor adds the tools that the parts of a step ask for.
func (b *builder) toolsFor(s *Step) {
	add := func(tool string) {
		if !slices.Contains(s.Tools, tool) {
			s.Tools = append(s.Tools, tool)
		}
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		switch {
		case p.Name == "bolt with nut":
			add("spanners and torque wrench for " + p.Size)
		case strings.HasSuffix(p.Name, "steel pipe"), strings.HasPrefix(p.Name, "steel "):
			add("pipe cutter, and the gear of the joint that the pipe is made for (threads, press or weld)")
		case strings.HasPrefix(p.Name, "copper "):
			add("gear to press or braze copper")
		case strings.HasPrefix(p.Name, "union"), strings.HasPrefix(p.Name, "flat seal"), strings.HasPrefix(p.Name, "gas union"):
			add("spanners for unions")
		case strings.HasSuffix(p.Name, "lubricant for seals"):
			add(strings.TrimSuffix(p.Name, " for seals"))
		}
	}
}
