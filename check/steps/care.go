package steps

import (
	"slices"
	"strings"

	"example.org/tundish/check/cautions"
)

// careAt says in which steps a caution matters.
var careAt = map[string][]string{
	"gas":             {"gas-manifold", "gas-drops", "gas-supply", "gas-strength-test", "gas-tightness-test", "purge", "first-fire", "commissioning"},
	"carbon-monoxide": {"dampers", "flue", "air", "first-fire", "commissioning"},
	"flue":            {"dampers", "flue", "first-fire"},
	"pressure":        {"old-circuits", "safety-devices", "strength-test", "flushing", "fill"},
	"hot-surface":     {"old-circuits", "first-fire", "commissioning"},
	"lifting":         {"delivery", "frame", "gas-manifold", "return-header", "flow-header", "units", "separation", "safety-devices"},
	"tip-over":        {"frame", "supports", "gas-manifold", "return-header", "flow-header", "units", "unit-pipework"},
	"height":          {"supports", "flow-header", "return-header", "flue", "air"},
	"electrical":      {"wiring", "electrical-test", "first-fire", "commissioning"},
	"asbestos":        {"survey", "old-circuits", "site", "frame", "supports", "flue", "air"},
	"legionella":      {"flushing", "fill", "commissioning", "handover"},
	"confined-space":  {"site", "delivery", "frame", "units", "purge"},
	"chemicals":       {"old-circuits", "flushing", "fill"},
	"frost":           {"condensate", "handover"},
	"condensate":      {"condensate"},
	"hot-work":        {"gas-manifold", "return-header", "flow-header", "gas-supply", "main-pipes", "separation", "unit-pipework"},
	"notification":    {"site"},
}

// cautionsFor gives the cautions of a step: what the specification carries, and
// what it does not carry although the plant calls for it.
func (b *builder) cautionsFor(s *Step) {
	carried := map[string]bool{}
	for _, c := range b.p.ByKind("caution") {
		topic := c.Get("topic").Word
		if text := c.Get("text"); text.Known() && slices.Contains(careAt[topic], s.ID) {
			carried[topic] = true
			s.Cautions = append(s.Cautions, Caution{Topic: topic, Text: text.Word, From: ref(c)})
		}
	}
	for i := range cautions.Triggers {
		t := &cautions.Triggers[i]
		if carried[t.Topic] || !slices.Contains(careAt[t.Topic], s.ID) {
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
