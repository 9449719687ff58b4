package lang

// BuildSteps are the words by which a record marks the steps of the building, in
// their usual order. Which of them a plant has follows from what it contains.
var BuildSteps = []string{
	"survey", "old-circuits", "site", "delivery", "frame", "supports", "gas-manifold", "return-header", "flow-header",
	"units", "unit-pipework", "gas-drops", "gas-supply", "separation", "main-pipes", "safety-devices", "dampers", "flue",
	"condensate", "air", "wiring", "strength-test", "flushing", "insulation", "fill", "gas-strength-test",
	"gas-tightness-test", "electrical-test", "purge", "first-fire", "commissioning", "handover",
}

// Slots of every set of readings.
var (
	readingCo2     = Slot{Name: "co2", Label: "co2", Dim: Ratio, Help: "carbon dioxide"}
	readingO2      = Slot{Name: "o2", Label: "o2", Dim: Ratio, Help: "oxygen"}
	readingCo      = Slot{Name: "co", Label: "co", Dim: Ratio, Help: "carbon monoxide"}
	readingFlue    = Slot{Name: "flue", Label: "flue", Dim: Temperature, Help: "flue temperature"}
	readingGasRate = Slot{Name: "gas-rate", Label: "gas-rate", Dim: VolumeFlow, Help: "metered"}
	readingInlet   = Slot{Name: "inlet", Label: "inlet", Dim: Pressure, Help: "working pressure at the inlet"}
	readingStatic  = Slot{Name: "static", Label: "static", Dim: Pressure, Help: "pressure at the inlet without flow"}
	readingAir     = Slot{Name: "air", Label: "air", Dim: Temperature, Help: "temperature of the air"}
	readingAirO2   = Slot{Name: "air-o2", Label: "air-o2", Dim: Ratio, Help: "oxygen in the intake"}
)

// pressureTestSlots are what is recorded of a strength or a tightness test.
var pressureTestSlots = []*Slot{
	{Name: "medium", Type: ChoiceType, Choices: []string{"water", "air", "nitrogen", "natural-gas"}, Help: "tested with"},
	{Name: "pressure", Dim: Pressure, Required: true, Help: "test pressure"},
	{Name: "time", Dim: Time, Required: true, Help: "held for"},
	{Name: "fell", Label: "fell", Dim: Pressure, Help: "pressure lost"},
	{Name: "with", Label: "with", Type: PartType, Refers: []string{"instrument"}, Help: "gauge"},
	{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "person"},
	{Name: "date", Type: DateType, Required: true, Help: "day"},
	{Name: "result", Type: ChoiceType, Required: true, Choices: []string{"passed", "failed"}, Help: "outcome"},
	{Name: "relief-isolated", Type: FlagType, Help: "safety valves were isolated"},
}

// readingSlots are what an analyzer and gauges show at one firing rate.
var readingSlots = []*Slot{
	&readingCo2, &readingO2, &readingCo, &readingFlue, &readingGasRate, &readingInlet, &readingStatic,
	&readingAir, &readingAirO2,
}

var recordRows = []Entry{
	{
		In: []string{"record"}, Keyword: "instrument", Name: Defines, Stage: 15,
		Help: "An instrument with its calibration.", Example: `instrument An-1 analyser serial "AN 3391" calibrated 2025-06-17`,
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"analyser", "gas-gauge", "water-gauge", "thermometer", "flow-meter", "multimeter"}, Help: "what it measures"},
			{Name: "serial", Label: "serial", Type: TextType, Help: "serial number"},
			{Name: "calibrated", Label: "calibrated", Type: DateType, Help: "day of the calibration"},
		},
	},
	{
		In: []string{"record"}, Keyword: "delivery", Times: AtMostOnce, Block: MustBlock, Stage: 12,
		Help: "What arrived, by package.", Example: "delivery {\n}",
	},
	{
		In: []string{"delivery"}, Keyword: "package", Name: Defines, Stage: 12,
		Help: "A package.", Example: "package P1 pallet 2025-09-22 arrived",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Choices: []string{"pallet", "crate", "carton", "loose"}, Help: "what it came on"},
			{Name: "date", Type: DateType, Help: "day"},
			{Name: "state", Type: ChoiceType, Choices: []string{"arrived", "awaited", "damaged"}, Help: "what became of it"},
		},
	},
	{
		In: []string{"delivery"}, Keyword: "part", Kind: "delivered-part", Stage: 12,
		Help: "Parts in a package.", Example: "part gasket DN125 11 off on P2",
		Slots: []*Slot{
			{Name: "part", Type: WordType, Required: true, Help: "kind of part"},
			{Name: "size", Type: SizeType, Help: "size"},
			{Name: "count", Dim: Count, Required: true, Help: "how many"},
			{Name: "type", Label: "type", Type: CodeType, Help: "type"},
			{Name: "on", Label: "on", Type: PartType, Refers: []string{"package"}, Help: "package"},
			{Name: "state", Type: ChoiceType, Choices: []string{"sound", "damaged"}, Help: "how it is"},
		},
	},
	{
		In: []string{"record"}, Keyword: "assembly", Times: AtMostOnce, Block: MustBlock, Stage: 13,
		Help: "Progress of the assembly.", Example: "assembly {\n}",
	},
	{
		In: []string{"assembly"}, Keyword: "step", Stage: 13,
		Help: "A step of the building and how far it is. A step that no line marks as done is not done.", Example: "step frame done 2025-09-29 by F1",
		Slots: []*Slot{
			{Name: "step", Type: ChoiceType, Required: true, Choices: BuildSteps, Help: "which step"},
			{Name: "state", Type: ChoiceType, Required: true, Choices: []string{"done", "part-done", "not-started"}, Help: "how far"},
			{Name: "date", Type: DateType, Help: "day"},
			{Name: "units", Type: PartsType, List: true, Help: "for which units"},
			{Name: "by", Label: "by", Type: PartType, Refers: []string{"person"}, Help: "person"},
		},
	},
	{
		In: []string{"record"}, Keyword: "as-built", Times: AtMostOnce, Block: MustBlock, Stage: 13,
		Help: "What was built otherwise than drawn.", Example: "as-built {\n}",
	},
	{
		In: []string{"as-built"}, Keyword: "changed", Name: Refers, Stage: 13,
		Help: "A part that was built otherwise.", Example: `changed G1 length 23.5 m because "moved round a beam"`,
		Slots: []*Slot{
			{Name: "length", Label: "length", Dim: Length, Help: "now"},
			{Name: "falls", Label: "falls", Dim: Slope, Help: "now"},
			{Name: "size", Label: "size", Type: SizeType, Help: "now"},
			{Name: "bends", Label: "bends", Dim: Count, Help: "now"},
			{Name: "because", Label: "because", Type: TextType, Required: true, Help: "why"},
		},
	},
	{
		In: []string{"as-built"}, Keyword: "arrived", Stage: 12,
		Help: "A part that came later.", Example: "arrived gasket DN125 1 off 2025-10-06",
		Slots: []*Slot{
			{Name: "part", Type: WordType, Required: true, Help: "kind of part"},
			{Name: "size", Type: SizeType, Help: "size"},
			{Name: "count", Dim: Count, Required: true, Help: "how many"},
			{Name: "date", Type: DateType, Help: "day"},
		},
	},
	{
		In: []string{"record"}, Keyword: "tested", Times: AtMostOnce, Block: MustBlock, Stage: 14,
		Help: "Tests as they were done.", Example: "tested {\n}",
	},
	{
		In: []string{"tested"}, Keyword: "strength", Name: RefersMany, Stage: 14,
		Help: "The strength test as it was done.", Example: "strength Flow-H, Return-H water 6 bar 2 h fell 0 bar by E1 2025-10-15 passed",
		Slots: pressureTestSlots,
	},
	{
		In: []string{"tested"}, Keyword: "tightness", Name: RefersMany, Stage: 14,
		Help: "The tightness test as it was done.", Example: "tightness gas-run air 20 mbar 10 min fell 0 mbar with Ga-1 by E1 2025-10-16 passed",
		Slots: pressureTestSlots,
	},
	{
		In: []string{"tested"}, Keyword: "purge", Name: RefersMany, Stage: 14,
		Help: "The purge as it was done.", Example: "purge gas-run 2.1 m3 by E1 2025-10-16 passed",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "gas let through"},
			{Name: "rate", Label: "rate", Dim: VolumeFlow, Help: "purge rate"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "person"},
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "result", Type: ChoiceType, Required: true, Choices: []string{"passed", "failed"}, Help: "outcome"},
		},
	},
	{
		In: []string{"tested"}, Keyword: "flushing", Stage: 14,
		Help: "The flushing as it was done.", Example: "flushing 6400 l secondary by E1 2025-10-12 passed",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Help: "water"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
			{Name: "velocity", Label: "velocity", Dim: Velocity, Help: "flushing velocity"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "person"},
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "result", Type: ChoiceType, Choices: []string{"passed", "failed"}, Help: "outcome"},
		},
	},
	{
		In: []string{"record"}, Keyword: "commissioned", Name: Refers, Block: MustBlock, Stage: 15,
		Help: "Readings of one unit.", Example: "commissioned U1 serial \"W100-25-00811\" 2025-10-20 by E1 with An-1 {\n}",
		Slots: []*Slot{
			{Name: "serial", Label: "serial", Type: TextType, Required: true, Help: "serial number of the unit"},
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "engineer"},
			{Name: "with", Label: "with", Type: PartType, Refers: []string{"instrument"}, Help: "analyzer"},
		},
	},
	{
		In: []string{"commissioned"}, Keyword: "high-fire", Times: AtMostOnce, Stage: 15, Slots: readingSlots,
		Help: "Readings at maximum rate.", Example: "high-fire co2 9.1 % co 62 ppm flue 66 degC gas-rate 10.6 m3/h inlet 19.4 mbar",
	},
	{
		In: []string{"commissioned"}, Keyword: "low-fire", Times: AtMostOnce, Stage: 15, Slots: readingSlots,
		Help: "Readings at minimum rate.", Example: "low-fire co2 8.7 % co 18 ppm flue 44 degC gas-rate 2.1 m3/h inlet 20.6 mbar",
	},
	{
		In: []string{"commissioned"}, Keyword: "water", Times: AtMostOnce, Stage: 15,
		Help: "Readings on the water side.", Example: "water flow 75 degC return 55 degC rate 4.3 m3/h",
		Slots: []*Slot{
			{Name: "flow", Label: "flow", Dim: Temperature, Help: "flow temperature"},
			{Name: "return", Label: "return", Dim: Temperature, Help: "return temperature"},
			{Name: "rate", Label: "rate", Dim: VolumeFlow, Help: "water flow"},
			{Name: "pressure", Label: "pressure", Dim: Pressure, Help: "water pressure"},
		},
	},
	{
		In: []string{"commissioned"}, Keyword: "damper", Times: AtMostOnce, Stage: 15,
		Help: "Proof of the damper.", Example: "damper closes-when-stopped",
		Slots: []*Slot{
			{Name: "proved", Type: ChoiceType, Required: true, Choices: []string{"closes-when-stopped", "sticks", "not-proved"}, Help: "what was seen"},
		},
	},
	{
		In: []string{"commissioned"}, Keyword: "safety-chain", Times: AtMostOnce, Stage: 15,
		Help: "Safety devices that were tested.", Example: "safety-chain limiter, low-water, gas-valve",
		Slots: []*Slot{
			{Name: "proved", Type: ChoiceType, List: true, Required: true, Choices: []string{"limiter", "low-water", "high-pressure", "flow-proof", "gas-valve", "relief"}, Help: "what was tested"},
		},
	},
	{
		In: []string{"record"}, Keyword: "not-commissioned", Name: RefersMany, Refers: []string{"unit"}, Stage: 15,
		Help: "Units that wait.", Example: `not-commissioned U4..U8 because "flue header waits for a bend"`,
		Slots: []*Slot{
			{Name: "because", Label: "because", Type: TextType, Required: true, Help: "why"},
		},
	},
	{
		In: []string{"record"}, Keyword: "simultaneous", Times: AtMostOnce, Block: MustBlock, Stage: 15,
		Help: "Gas pressures with all units firing.", Example: "simultaneous all-full 2025-10-22 by E1 {\n}",
		Slots: []*Slot{
			{Name: "case", Type: ChoiceType, Required: true, Choices: []string{"all-full"}, Help: "firing"},
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "engineer"},
		},
	},
	{
		In: []string{"simultaneous"}, Keyword: "inlet", Name: Refers, Refers: []string{"unit"}, Stage: 15,
		Help: "Working pressure at a unit.", Example: "inlet U1 18.6 mbar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "working pressure"},
		},
	},
	{
		In: []string{"simultaneous"}, Keyword: "meter", Times: AtMostOnce, Stage: 15,
		Help: "Rate at the meter.", Example: "meter 84.1 m3/h",
		Slots: []*Slot{
			{Name: "rate", Dim: VolumeFlow, Required: true, Help: "rate"},
		},
	},
	{
		In: []string{"record"}, Keyword: "settings", Times: AtMostOnce, Block: MustBlock, Stage: 15,
		Help: "Settings of the plant as they were left.", Example: "settings {\n}",
	},
	{
		In: []string{"settings"}, Keyword: "fill", Stage: 15,
		Help: "Cold fill pressure of a circuit.", Example: "fill 1.6 bar primary",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "cold"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "precharge", Name: Refers, Refers: []string{"vessel"}, Stage: 15,
		Help: "Gas pressure of a vessel.", Example: "precharge Ves-P 1.3 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "measured without water"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "set-point", Times: AtMostOnce, Stage: 15,
		Help: "Flow set point.", Example: "set-point 75 degC",
		Slots: []*Slot{
			{Name: "temperature", Dim: Temperature, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "high-pressure", Times: AtMostOnce, Stage: 15,
		Help: "High-pressure cut-out.", Example: "high-pressure 2.7 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "setting"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "low-pressure", Times: AtMostOnce, Stage: 15,
		Help: "Low-pressure cut-out.", Example: "low-pressure 1.2 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "setting"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "room-co", Times: AtMostOnce, Stage: 15,
		Help: "Carbon monoxide in the room.", Example: "room-co 0 ppm",
		Slots: []*Slot{
			{Name: "co", Dim: Ratio, Required: true, Help: "in the air"},
		},
	},
	{
		In: []string{"settings"}, Keyword: "system-volume", Times: AtMostOnce, Stage: 15,
		Help: "Water metered at filling.", Example: "system-volume 430 l",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "water"},
		},
	},
	{
		In: []string{"record"}, Keyword: "water-sample", Stage: 15,
		Help: "A water sample.", Example: "water-sample 2025-10-20 by E1 acidity 8.6 pH conductivity 60 uS/cm",
		Slots: []*Slot{
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "person"},
			{Name: "acidity", Label: "acidity", Dim: Acidity, Help: "pH"},
			{Name: "conductivity", Label: "conductivity", Dim: ElectricConductivity, Help: "conductivity"},
			{Name: "hardness", Label: "hardness", Dim: Hardness, Help: "hardness"},
			{Name: "iron", Label: "iron", Dim: Concentration, Help: "iron"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"record"}, Keyword: "handed-over", Times: AtMostOnce, Block: MustBlock, Stage: 15,
		Help: "What was handed over and signed.", Example: "handed-over {\n}",
	},
	{
		In: []string{"handed-over"}, Keyword: "document", Stage: 15,
		Help: "Documents that were handed over.", Example: "document operating-manual, log-book",
		Slots: []*Slot{
			{Name: "documents", Type: WordType, List: true, Required: true, Help: "which"},
		},
	},
	{
		In: []string{"handed-over"}, Keyword: "signed", Name: Refers, Refers: []string{"person"}, Stage: 15,
		Help: "Who signed, and when.", Example: "signed E1 2025-10-24",
		Slots: []*Slot{
			{Name: "date", Type: DateType, Required: true, Help: "day"},
		},
	},
	{
		In: []string{"record"}, Keyword: "log", Block: MustBlock, Stage: 15,
		Help: "Yearly readings.", Example: "log 2026-10-19 by E1 with An-1 {\n}",
		Slots: []*Slot{
			{Name: "date", Type: DateType, Required: true, Help: "day"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "engineer"},
			{Name: "with", Label: "with", Type: PartType, Refers: []string{"instrument"}, Help: "analyzer"},
		},
	},
	{
		In: []string{"log"}, Keyword: "reading", Name: Refers, Refers: []string{"unit"}, Stage: 15,
		Help: "Readings of one unit.", Example: "reading U1 high-fire co2 9.3 % co 95 ppm flue 68 degC inlet 19.1 mbar",
		Slots: []*Slot{
			{Name: "fire", Type: ChoiceType, Required: true, Choices: []string{"high-fire", "low-fire"}, Help: "firing rate"},
			&readingCo2, &readingO2, &readingCo, &readingFlue, &readingGasRate, &readingInlet, &readingStatic,
			&readingAir, &readingAirO2,
		},
	},
	{
		In: []string{"log"}, Keyword: "top-up", Stage: 15,
		Help: "Water topped up.", Example: "top-up 120 l",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "since the last log"},
		},
	},
	{
		In: []string{"log"}, Keyword: "pressure", Stage: 15,
		Help: "Cold pressure found.", Example: "pressure 1.5 bar primary",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "cold"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"log"}, Keyword: "checked", Stage: 15,
		Help: "What was checked.", Example: "checked dampers, traps, strainers, combustion",
		Slots: []*Slot{
			{Name: "checks", Type: WordType, List: true, Required: true, Help: "which"},
		},
	},
}

var projectRows = []Entry{
	{
		In: []string{"project"}, Keyword: "gate", Times: AtMostOnce,
		Help: "The least severity that fails a run.", Example: "gate warning",
		Slots: []*Slot{
			{Name: "gate", Type: ChoiceType, Required: true, Choices: []string{"error", "warning", "note", "unknown"}, Help: "severity"},
		},
	},
	{
		In: []string{"project"}, Keyword: "units", Times: AtMostOnce,
		Help: "The language of units in texts.", Example: "units metric",
		Slots: []*Slot{
			{Name: "units", Type: ChoiceType, Required: true, Choices: []string{"metric", "us"}, Help: "which"},
		},
	},
	{
		In: []string{"project"}, Keyword: "limit",
		Help: "A limit that the project replaces, with the reason.", Example: `limit gas-drop-natural-uk 1.2 mbar because "agreed with the gas network"`,
		Slots: []*Slot{
			{Name: "limit", Type: WordType, Required: true, Help: "id of the limit"},
			{Name: "value", Type: QuantityType, Required: true, Help: "the project's own value"},
			{Name: "because", Label: "because", Type: TextType, Required: true, Help: "why"},
		},
	},
}
