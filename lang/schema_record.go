package lang

// readingSlots are what an analyzer and gauges show at one firing rate.
func readingSlots() []Slot {
	return slots(
		qty("co2", Ratio, "carbon dioxide").by(), qty("o2", Ratio, "oxygen").by(), qty("co", Ratio, "carbon monoxide").by(), qty("flue", Temperature, "flue temperature").by(),
		qty("gas-rate", VolumeFlow, "metered").by(), qty("inlet", Pressure, "working pressure at the inlet").by(), qty("static", Pressure, "pressure at the inlet without flow").by(), qty("air", Temperature, "temperature of the air").by(), qty("air-o2", Ratio, "oxygen in the intake").by(),
	)
}

// BuildSteps are the words by which a record marks the steps of the building, in
// their usual order. Which of them a plant has follows from what it contains.
var BuildSteps = []string{
	"survey", "old-circuits", "site", "delivery", "frame", "supports", "gas-manifold", "return-header", "flow-header",
	"units", "unit-pipework", "gas-drops", "gas-supply", "separation", "main-pipes", "safety-devices", "dampers", "flue",
	"condensate", "air", "wiring", "strength-test", "flushing", "insulation", "fill", "gas-strength-test",
	"gas-tightness-test", "electrical-test", "purge", "first-fire", "commissioning", "handover",
}

var recordRows = []Row{
	{
		In: in("record"), Keyword: "instrument", Name: Defines, Stage: 15,
		Slots: slots(choice("kind", "what it measures", "analyser", "gas-gauge", "water-gauge", "thermometer", "flow-meter", "multimeter").need(), text("serial", "serial number").by(), date("calibrated", "day of the calibration").by()),
		Help:  "An instrument with its calibration.", Example: `instrument An-1 analyser serial "AN 3391" calibrated 2025-06-17`,
	},
	{In: in("record"), Keyword: "delivery", Times: AtMostOnce, Block: MustBlock, Stage: 12, Help: "What arrived, by package.", Example: "delivery {\n}"},
	{In: in("delivery"), Keyword: "package", Name: Defines, Stage: 12, Slots: slots(choice("kind", "what it came on", "pallet", "crate", "carton", "loose"), date("date", "day"), choice("state", "what became of it", "arrived", "awaited", "damaged")), Help: "A package.", Example: "package P1 pallet 2025-09-22 arrived"},
	{In: in("delivery"), Keyword: "part", Kind: "delivered-part", Stage: 12, Slots: slots(word("part", "kind of part").need(), sizeSlot("size"), qty("count", Count, "how many").need(), code("type", "type").by(), part("on", "package", "package"), choice("state", "how it is", "sound", "damaged")), Help: "Parts in a package.", Example: "part gasket DN125 11 off on P2"},
	{In: in("record"), Keyword: "assembly", Times: AtMostOnce, Block: MustBlock, Stage: 13, Help: "Progress of the assembly.", Example: "assembly {\n}"},
	{In: in("assembly"), Keyword: "step", Stage: 13, Slots: slots(choice("step", "which step", BuildSteps...).need(), choice("state", "how far", "done", "part-done", "not-started").need(), date("date", "day"), Slot{Name: "units", Type: PartsType, List: true, Help: "for which units"}, part("by", "person", "person")), Help: "A step of the building and how far it is. A step that no line marks as done is not done.", Example: "step frame done 2025-09-29 by F1"},
	{In: in("record"), Keyword: "as-built", Times: AtMostOnce, Block: MustBlock, Stage: 13, Help: "What was built otherwise than drawn.", Example: "as-built {\n}"},
	{In: in("as-built"), Keyword: "changed", Name: Refers, Stage: 13, Slots: slots(qty("length", Length, "now").by(), qty("falls", Slope, "now").by(), Slot{Name: "size", Label: "size", Type: SizeType, Help: "now"}, qty("bends", Count, "now").by(), text("because", "why").by().need()), Help: "A part that was built otherwise.", Example: `changed G1 length 23.5 m because "moved round a beam"`},
	{In: in("as-built"), Keyword: "arrived", Stage: 12, Slots: slots(word("part", "kind of part").need(), sizeSlot("size"), qty("count", Count, "how many").need(), date("date", "day")), Help: "A part that came later.", Example: "arrived gasket DN125 1 off 2025-10-06"},
	{In: in("record"), Keyword: "tested", Times: AtMostOnce, Block: MustBlock, Stage: 14, Help: "Tests as they were done.", Example: "tested {\n}"},
	testedRow("strength", "strength Flow-H, Return-H water 6 bar 2 h fell 0 bar by E1 2025-10-15 passed"),
	testedRow("tightness", "tightness gas-run air 20 mbar 10 min fell 0 mbar with Ga-1 by E1 2025-10-16 passed"),
	{In: in("tested"), Keyword: "purge", Name: RefersMany, Stage: 14, Slots: slots(qty("volume", Volume, "gas let through").need(), qty("rate", VolumeFlow, "purge rate").by(), part("by", "person", "person").need(), date("date", "day").need(), choice("result", "outcome", "passed", "failed").need()), Help: "The purge as it was done.", Example: "purge gas-run 2.1 m3 by E1 2025-10-16 passed"},
	{In: in("tested"), Keyword: "flushing", Stage: 14, Slots: slots(qty("volume", Volume, "water"), choice("side", "which circuit", "primary", "secondary"), qty("velocity", Velocity, "flushing velocity").by(), part("by", "person", "person").need(), date("date", "day").need(), choice("result", "outcome", "passed", "failed")), Help: "The flushing as it was done.", Example: "flushing 6400 l secondary by E1 2025-10-12 passed"},
	{
		In: in("record"), Keyword: "commissioned", Name: Refers, Block: MustBlock, Stage: 15,
		Slots: slots(text("serial", "serial number of the unit").by().need(), date("date", "day").need(), part("by", "engineer", "person").need(), part("with", "analyzer", "instrument")),
		Help:  "Readings of one unit.", Example: "commissioned U1 serial \"W100-25-00811\" 2025-10-20 by E1 with An-1 {\n}",
	},
	{In: in("commissioned"), Keyword: "high-fire", Times: AtMostOnce, Stage: 15, Slots: readingSlots(), Help: "Readings at maximum rate.", Example: "high-fire co2 9.1 % co 62 ppm flue 66 degC gas-rate 10.6 m3/h inlet 19.4 mbar"},
	{In: in("commissioned"), Keyword: "low-fire", Times: AtMostOnce, Stage: 15, Slots: readingSlots(), Help: "Readings at minimum rate.", Example: "low-fire co2 8.7 % co 18 ppm flue 44 degC gas-rate 2.1 m3/h inlet 20.6 mbar"},
	{In: in("commissioned"), Keyword: "water", Times: AtMostOnce, Stage: 15, Slots: slots(qty("flow", Temperature, "flow temperature").by(), qty("return", Temperature, "return temperature").by(), qty("rate", VolumeFlow, "water flow").by(), qty("pressure", Pressure, "water pressure").by()), Help: "Readings on the water side.", Example: "water flow 75 degC return 55 degC rate 4.3 m3/h"},
	{In: in("commissioned"), Keyword: "damper", Times: AtMostOnce, Stage: 15, Slots: slots(choice("proved", "what was seen", "closes-when-stopped", "sticks", "not-proved").need()), Help: "Proof of the damper.", Example: "damper closes-when-stopped"},
	{In: in("commissioned"), Keyword: "safety-chain", Times: AtMostOnce, Stage: 15, Slots: slots(choice("proved", "what was tested", "limiter", "low-water", "high-pressure", "flow-proof", "gas-valve", "relief").many().need()), Help: "Safety devices that were tested.", Example: "safety-chain limiter, low-water, gas-valve"},
	{In: in("record"), Keyword: "not-commissioned", Name: RefersMany, Refers: []string{"unit"}, Stage: 15, Slots: slots(text("because", "why").by().need()), Help: "Units that wait.", Example: `not-commissioned U4..U8 because "flue header waits for a bend"`},
	{In: in("record"), Keyword: "simultaneous", Times: AtMostOnce, Block: MustBlock, Stage: 15, Slots: slots(choice("case", "firing", "all-full").need(), date("date", "day").need(), part("by", "engineer", "person").need()), Help: "Gas pressures with all units firing.", Example: "simultaneous all-full 2025-10-22 by E1 {\n}"},
	{In: in("simultaneous"), Keyword: "inlet", Name: Refers, Refers: []string{"unit"}, Stage: 15, Slots: slots(qty("pressure", Pressure, "working pressure").need()), Help: "Working pressure at a unit.", Example: "inlet U1 18.6 mbar"},
	single("simultaneous", "meter", 15, "Rate at the meter.", "meter 84.1 m3/h", qty("rate", VolumeFlow, "rate").need()),
	{In: in("record"), Keyword: "settings", Times: AtMostOnce, Block: MustBlock, Stage: 15, Help: "Settings of the plant as they were left.", Example: "settings {\n}"},
	{In: in("settings"), Keyword: "fill", Stage: 15, Slots: slots(qty("pressure", Pressure, "cold").need(), choice("side", "which circuit", "primary", "secondary")), Help: "Cold fill pressure of a circuit.", Example: "fill 1.6 bar primary"},
	{In: in("settings"), Keyword: "precharge", Name: Refers, Refers: []string{"vessel"}, Stage: 15, Slots: slots(qty("pressure", Pressure, "measured without water").need()), Help: "Gas pressure of a vessel.", Example: "precharge Ves-P 1.3 bar"},
	single("settings", "set-point", 15, "Flow set point.", "set-point 75 degC", qty("temperature", Temperature, "flow").need()),
	single("settings", "high-pressure", 15, "High-pressure cut-out.", "high-pressure 2.7 bar", qty("pressure", Pressure, "setting").need()),
	single("settings", "low-pressure", 15, "Low-pressure cut-out.", "low-pressure 1.2 bar", qty("pressure", Pressure, "setting").need()),
	single("settings", "room-co", 15, "Carbon monoxide in the room.", "room-co 0 ppm", qty("co", Ratio, "in the air").need()),
	single("settings", "system-volume", 15, "Water metered at filling.", "system-volume 430 l", qty("volume", Volume, "water").need()),
	{In: in("record"), Keyword: "water-sample", Stage: 15, Slots: slots(date("date", "day").need(), part("by", "person", "person").need(), qty("acidity", Acidity, "pH").by(), qty("conductivity", ElectricConductivity, "conductivity").by(), qty("hardness", Hardness, "hardness").by(), qty("iron", Concentration, "iron").by(), choice("side", "which circuit", "primary", "secondary")), Help: "A water sample.", Example: "water-sample 2025-10-20 by E1 acidity 8.6 pH conductivity 60 uS/cm"},
	{In: in("record"), Keyword: "handed-over", Times: AtMostOnce, Block: MustBlock, Stage: 15, Help: "What was handed over and signed.", Example: "handed-over {\n}"},
	{In: in("handed-over"), Keyword: "document", Stage: 15, Slots: slots(word("documents", "which").many().need()), Help: "Documents that were handed over.", Example: "document operating-manual, log-book"},
	{In: in("handed-over"), Keyword: "signed", Name: Refers, Refers: []string{"person"}, Stage: 15, Slots: slots(date("date", "day").need()), Help: "Who signed, and when.", Example: "signed E1 2025-10-24"},
	{In: in("record"), Keyword: "log", Block: MustBlock, Stage: 15, Slots: slots(date("date", "day").need(), part("by", "engineer", "person").need(), part("with", "analyzer", "instrument")), Help: "Yearly readings.", Example: "log 2026-10-19 by E1 with An-1 {\n}"},
	{In: in("log"), Keyword: "reading", Name: Refers, Refers: []string{"unit"}, Stage: 15, Slots: append(slots(choice("fire", "firing rate", "high-fire", "low-fire").need()), readingSlots()...), Help: "Readings of one unit.", Example: "reading U1 high-fire co2 9.3 % co 95 ppm flue 68 degC inlet 19.1 mbar"},
	{In: in("log"), Keyword: "top-up", Stage: 15, Slots: slots(qty("volume", Volume, "since the last log").need()), Help: "Water topped up.", Example: "top-up 120 l"},
	{In: in("log"), Keyword: "pressure", Stage: 15, Slots: slots(qty("pressure", Pressure, "cold").need(), choice("side", "which circuit", "primary", "secondary")), Help: "Cold pressure found.", Example: "pressure 1.5 bar primary"},
	{In: in("log"), Keyword: "checked", Stage: 15, Slots: slots(word("checks", "which").many().need()), Help: "What was checked.", Example: "checked dampers, traps, strainers, combustion"},
}

func testedRow(keyword, example string) Row {
	return Row{
		In: in("tested"), Keyword: keyword, Name: RefersMany, Stage: 14,
		Slots: slots(choice("medium", "tested with", "water", "air", "nitrogen", "natural-gas"), qty("pressure", Pressure, "test pressure").need(), qty("time", Time, "held for").need(), qty("fell", Pressure, "pressure lost").by(), part("with", "gauge", "instrument"), part("by", "person", "person").need(), date("date", "day").need(), choice("result", "outcome", "passed", "failed").need(), flag("relief-isolated", "safety valves were isolated")),
		Help:  "The " + keyword + " test as it was done.", Example: example,
	}
}

var projectRows = []Row{
	single("project", "gate", 0, "The least severity that fails a run.", "gate warning", choice("gate", "severity", "error", "warning", "note", "unknown").need()),
	single("project", "units", 0, "The language of units in texts.", "units metric", choice("units", "which", "metric", "us").need()),
	{In: in("project"), Keyword: "limit", Slots: slots(word("limit", "id of the limit").need(), qty("value", NoDimension, "the project's own value").need(), text("because", "why").by().need()), Help: "A limit that the project replaces, with the reason.", Example: `limit gas-drop-natural-uk 1.2 mbar because "agreed with the gas network"`},
}
