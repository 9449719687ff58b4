package steps

import "example.org/tundish/check/plant"

// kind is one step that plants may need.
type kind struct {
	id, title string
	// asks gives the statements that ask for the step besides those of its parts;
	// without any, and without parts, the plant does not need it.
	asks func(*builder) []*plant.Part
	// after gives the steps it waits for; those that the plant lacks hand on
	// what they would have waited for.
	after func(*builder) []string
	tools []string
	fill  func(*builder, *Step)
}

// IDs are the words by which a record marks steps, in the usual order.
func IDs() []string {
	var out []string
	for i := range kinds {
		out = append(out, kinds[i].id)
	}
	return out
}

func find(id string) *kind {
	for i := range kinds {
		if kinds[i].id == id {
			return &kinds[i]
		}
	}
	return nil
}

func steps(ids ...string) func(*builder) []string { return func(*builder) []string { return ids } }

func byParts(*builder) []*plant.Part { return nil }

func block(keyword string) func(*builder) []*plant.Part {
	return func(b *builder) []*plant.Part { return []*plant.Part{b.p.Block(keyword)} }
}

func tests(b *builder, kind string, gas bool) []*plant.Part {
	var out []*plant.Part
	for _, t := range b.p.Block("tests").Children(kind) {
		if ofGas(t) == gas {
			out = append(out, t)
		}
	}
	return out
}

// ofGas tells a test of the gas pipes from one of the water pipes.
func ofGas(test *plant.Part) bool {
	for _, s := range test.Subjects() {
		for p := s.Part; p != nil; p = p.Owner {
			if p.Kind == "gas-run" {
				return true
			}
		}
	}
	return false
}

// watery are the statements that make a plant hold water.
func watery(b *builder) []*plant.Part {
	if h := b.p.Block("headers"); h != nil {
		return []*plant.Part{h}
	}
	return allUnits(b)
}

func allUnits(b *builder) []*plant.Part { return b.p.Units() }

// header gives what a header waits for: the lower is fitted first, so that the
// upper does not stand in its way.
func header(id string) func(*builder) []string {
	return func(b *builder) []string {
		if b.upper() == id {
			if id == "flow-header" {
				return []string{"return-header", "gas-manifold", "supports"}
			}
			return []string{"flow-header", "gas-manifold", "supports"}
		}
		return []string{"gas-manifold", "supports"}
	}
}

// kinds stand in the usual order of the work.
var kinds = []kind{
	{"survey", "Survey the building for asbestos", asbestos, steps(), nil, fillSurvey},
	{"old-circuits", "Isolate, drain and clean the circuits that stay", oldCircuits, steps("survey"), []string{"drain hoses", "flushing pump"}, fillOldCircuits},
	{"site", "Make floor, walls and room ready", roomOrPlant, steps("survey", "old-circuits"), []string{"tape", "level", "lights"}, fillSite},
	{"delivery", "Take delivery and count the parts", allUnits, steps("site"), []string{"hand truck or pallet truck", "the list of parts"}, fillDelivery},
	{"frame", "Stand the frame, level it and fix it", byParts, steps("site", "delivery"), []string{"spirit level", "spanners", "drill for fixings", "torque wrench"}, fillFrame},
	{"supports", "Fit pipe brackets and supports", byParts, steps("frame"), []string{"spirit level", "drill for fixings", "spanners"}, fillSupports},
	{"gas-manifold", "Fit the gas manifold", byParts, steps("supports"), []string{"level"}, fillManifold},
	{"return-header", "Fit the return header", byParts, header("return-header"), []string{"level"}, fillHeader},
	{"flow-header", "Fit the flow header", byParts, header("flow-header"), []string{"level"}, fillHeader},
	{"units", "Hang the units", byParts, steps("frame", "gas-manifold", "return-header", "flow-header"), []string{"what the lift plan names"}, fillUnits},
	{"unit-pipework", "Join each unit to the headers with its own devices", byParts, steps("units"), nil, fillUnitPipework},
	{"gas-drops", "Join each unit to the gas manifold", byParts, steps("units", "gas-manifold"), nil, fillGasDrops},
	{"gas-supply", "Bring gas from the meter to the manifold, shut and empty", byParts, steps("supports", "gas-manifold", "site"), nil, fillGasSupply},
	{"separation", "Set the separation", byParts, steps("return-header", "flow-header", "delivery"), []string{"level", "spanners"}, fillSeparation},
	{"main-pipes", "Join headers, separation and circuits", byParts, steps("return-header", "flow-header", "separation", "supports", "old-circuits"), nil, fillMainPipes},
	{"safety-devices", "Fit vessels, safety valves and discharge pipes", byParts, steps("unit-pipework", "main-pipes"), []string{"pressure gauge for the precharge"}, fillSafety},
	{"dampers", "Fit the flue dampers and prove each by hand", byParts, steps("units"), nil, fillDampers},
	{"flue", "Build the flue", byParts, steps("dampers", "units"), []string{"pipe cutter and deburring tool", "level or angle gauge", "platform"}, fillFlue},
	{"condensate", "Fit traps and drains", byParts, steps("units", "flue"), []string{"level", "water jug"}, fillCondensate},
	{"air", "Make openings, detectors and stops ready", byParts, steps("site"), []string{"drill", "platform"}, fillAir},
	{"wiring", "Wire units, dampers, pumps, sensors and interlocks", byParts, steps("units", "unit-pipework", "dampers", "air", "main-pipes", "gas-supply"), []string{"insulation tester", "multimeter", "locks for isolators"}, fillWiring},
	{"strength-test", "Test the water pipes for strength", func(b *builder) []*plant.Part {
		if t := tests(b, "strength", false); len(t) > 0 {
			return t
		}
		return watery(b)
	}, steps("unit-pipework", "main-pipes", "separation", "safety-devices", "flow-header", "return-header"), []string{"test pump", "calibrated gauge", "blanks for what is taken off"}, fillStrength},
	{"flushing", "Flush the water pipes", flushing, steps("strength-test", "old-circuits"), []string{"flushing pump", "hoses", "sample bottles"}, fillFlushing},
	{"insulation", "Insulate what was tested", byParts, steps("strength-test", "flushing", "flue", "condensate"), []string{"knife", "tape"}, fillInsulation},
	{"fill", "Fill, vent and prime", watery, steps("strength-test", "flushing", "safety-devices", "condensate"), []string{"filling hose", "pressure gauge", "water test set"}, fillFill},
	{"gas-strength-test", "Test the gas pipes for strength", func(b *builder) []*plant.Part { return tests(b, "strength", true) }, steps("gas-manifold", "gas-drops", "gas-supply"), []string{"test pump", "calibrated gauge"}, fillGasStrength},
	{"gas-tightness-test", "Test the gas pipes for tightness", func(b *builder) []*plant.Part {
		if t := tests(b, "tightness", true); len(t) > 0 {
			return t
		}
		return []*plant.Part{b.p.Block("gas-run")}
	}, steps("gas-manifold", "gas-drops", "gas-supply", "gas-strength-test"), []string{"calibrated gauge", "leak detection fluid"}, fillTightness},
	{"electrical-test", "Test the electrical work and prove every interlock with gas shut", block("electrical"), steps("wiring"), []string{"insulation tester", "multimeter"}, fillElectricalTest},
	{"purge", "Let gas in and purge the air", func(b *builder) []*plant.Part {
		if t := b.p.Block("tests").Children("purge"); len(t) > 0 {
			return t
		}
		return []*plant.Part{b.p.Block("gas-run")}
	}, steps("gas-tightness-test", "air"), []string{"gas detector", "purge hose to a safe place", "meter reading"}, fillPurge},
	{"first-fire", "Fire each unit for the first time", allUnits, steps("purge", "fill", "flue", "dampers", "condensate", "electrical-test", "air"), []string{"flue gas analyzer", "gas gauge"}, fillFirstFire},
	{"commissioning", "Commission every unit and the plant", allUnits, steps("first-fire", "insulation"), []string{"flue gas analyzer", "gas gauge", "thermometers", "flow meter"}, fillCommissioning},
	{"handover", "Hand over", func(b *builder) []*plant.Part {
		if h := b.p.Block("handover"); h != nil {
			return []*plant.Part{h}
		}
		return allUnits(b)
	}, steps("commissioning"), nil, fillHandover},
}
