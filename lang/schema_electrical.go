package lang

var electricalRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "electrical", Times: AtMostOnce, Block: MustBlock, Stage: 10,
		Help: "Panel, wires, bus and sensors.", Example: "electrical {\n}",
	},
	{
		In: []string{"electrical"}, Keyword: "panel", Name: Defines, Stage: 10,
		Help: "The control panel.", Example: "panel Pan 400 V 3 phase 63 A",
		Slots: []*Slot{
			{Name: "voltage", Dim: Voltage, Required: true, Help: "supply"},
			{Name: "phases", Dim: Count, Help: "phases"},
			{Name: "current", Dim: Current, Help: "supply fuse"},
		},
	},
	{
		In: []string{"electrical"}, Keyword: "wire", Name: RefersMany, Stage: 10,
		Help: "A wire from a part to its own unit or the panel.", Example: "wire U1..U8.damper to U1..U8 terminal X4",
		Slots: []*Slot{
			{Name: "to", Label: "to", Type: PartsType, List: true, Required: true, Help: "where the wire ends"},
			{Name: "terminal", Label: "terminal", Type: CodeType, Help: "terminal it ends at"},
		},
	},
	{
		In: []string{"electrical"}, Keyword: "bus", Name: RefersMany, Stage: 10,
		Help: "The bus between units.", Example: "bus U1..U8 two-core addressed-in-order",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Choices: []string{"two-core", "four-core", "screened"}, Help: "cable"},
			{Name: "addressed-in-order", Type: FlagType, Help: "addresses follow the order of names"},
		},
	},
	{
		In: []string{"electrical"}, Keyword: "sensor", Name: Defines, Stage: 10,
		Help: "A sensor.", Example: "sensor Sen-P flow-temperature on Flow-H to Pan terminal X20",
		Slots: []*Slot{
			{Name: "measures", Type: ChoiceType, Required: true, Choices: []string{"flow-temperature", "return-temperature", "outside-temperature", "pressure", "room-temperature"}, Help: "what it measures"},
			{Name: "on", Label: "on", Type: PartType, Help: "the part it sits on"},
			{Name: "place", Type: ChoiceType, Choices: []string{"north-wall", "room"}, Help: "where it hangs"},
			{Name: "to", Label: "to", Type: PartType, Help: "where its wire ends"},
			{Name: "terminal", Label: "terminal", Type: CodeType, Help: "terminal it ends at"},
		},
	},
	{
		In: []string{"electrical"}, Keyword: "bonding", Times: AtMostOnce, Stage: 10,
		Help: "Protective bonding of gas and water pipes.", Example: "bonding gas, water",
		Slots: []*Slot{
			{Name: "what", Type: ChoiceType, List: true, Required: true, Choices: []string{"gas", "water", "flue"}, Help: "which pipes"},
		},
	},
	{
		In: []string{"electrical"}, Keyword: "residual-current", Times: AtMostOnce, Stage: 10,
		Help: "Residual current protection.", Example: "residual-current 30 mA",
		Slots: []*Slot{
			{Name: "current", Dim: Current, Required: true, Help: "it trips at"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "controls", Times: AtMostOnce, Block: MustBlock, Stage: 10,
		Help: "Sequence, set points and interlocks.", Example: "controls {\n}",
	},
	{
		In: []string{"controls"}, Keyword: "set-point", Times: AtMostOnce, Stage: 10,
		Help: "Flow set point and its sensor.", Example: "set-point 75 degC by Sen-P",
		Slots: []*Slot{
			{Name: "temperature", Dim: Temperature, Required: true, Low: 20, High: 110, Help: "flow"},
			{Name: "by", Label: "by", Type: PartType, Refers: []string{"sensor"}, Help: "the sensor"},
			{Name: "weather-led", Type: FlagType, Help: "it follows the weather"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "lead", Times: AtMostOnce, Stage: 10,
		Help: "How the lead among the units changes.", Example: "lead rotate 168 h",
		Slots: []*Slot{
			{Name: "lead", Type: ChoiceType, Required: true, Choices: []string{"rotate", "by-hours", "fixed"}, Help: "how"},
			{Name: "after", Dim: Time, Help: "how often"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "bring-on", Times: AtMostOnce, Stage: 10,
		Help: "When the next unit is brought on.", Example: "bring-on next 80 % for 6 min",
		Slots: []*Slot{
			{Name: "at", Label: "next", Dim: Ratio, Required: true, High: 1, Help: "share of firing"},
			{Name: "time", Label: "for", Dim: Time, Help: "how long"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "release", Times: AtMostOnce, Stage: 10,
		Help: "When the last unit is released.", Example: "release last 35 % for 4 min",
		Slots: []*Slot{
			{Name: "at", Label: "last", Dim: Ratio, Required: true, High: 1, Help: "share of firing"},
			{Name: "time", Label: "for", Dim: Time, Help: "how long"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "strategy", Times: AtMostOnce, Stage: 10,
		Help: "How many units share a load.", Example: "strategy most-units",
		Slots: []*Slot{
			{Name: "strategy", Type: ChoiceType, Required: true, Choices: []string{"most-units", "fewest-units"}, Help: "how"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "interlock", Name: RefersMany, Stage: 10,
		Help: "What stops firing when it fails or acts.", Example: "interlock Shut-1 stops U1..U8",
		Slots: []*Slot{
			{Name: "stops", Label: "stops", Type: PartsType, List: true, Help: "units it stops"},
			{Name: "stops-own-unit", Type: FlagType, Help: "each stops its own unit"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "frost", Times: AtMostOnce, Stage: 10,
		Help: "Frost protection.", Example: "frost 5 degC",
		Slots: []*Slot{
			{Name: "setting", Dim: Temperature, Required: true, Help: "it acts below"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "signal", Name: Refers, Stage: 10,
		Help: "The signal of a sensor.", Example: "signal Sen-P 4..20 mA",
		Slots: []*Slot{
			{Name: "current", Dim: Current, Forms: []NumberForm{Range}, Help: "range"},
			{Name: "voltage", Dim: Voltage, Forms: []NumberForm{Range}, Help: "range"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "buffer", Name: Defines, Stage: 10,
		Help: "A buffer vessel.", Example: "buffer Buf 500 l on PF swing 10 K",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "water"},
			{Name: "on", Label: "on", Type: PartType, Help: "where it stands"},
			{Name: "swing", Label: "swing", Dim: TempDiff, Help: "temperature swing it may have"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "cycling", Times: AtMostOnce, Stage: 10,
		Help: "Limits of cycling.", Example: "cycling swing 10 K",
		Slots: []*Slot{
			{Name: "swing", Label: "swing", Dim: TempDiff, Low: 1, High: 40, Help: "switching difference"},
			{Name: "most", Label: "most", Dim: Frequency, Help: "starts"},
		},
	},
	{
		In: []string{"controls"}, Keyword: "off-units", Times: AtMostOnce, Stage: 10,
		Help: "Whether a valve shuts the circuit of a unit that is off.", Example: "off-units shut",
		Slots: []*Slot{
			{Name: "off-units", Type: ChoiceType, Required: true, Choices: []string{"shut", "open"}, Help: "what happens"},
		},
	},
}

var insulationRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "insulation", Times: AtMostOnce, Block: MustBlock, Stage: 11,
		Help: "Insulation of pipes and parts.", Example: "insulation {\n}",
	},
	{
		In: []string{"insulation"}, Keyword: "cover", Name: RefersMany, Stage: 11,
		Help: "Insulation on parts.", Example: "cover Flow-H, Return-H mineral-wool 40 mm 0.035 W/mK",
		Slots: []*Slot{
			{Name: "material", Type: ChoiceType, Choices: []string{"mineral-wool", "phenolic", "elastomeric", "polyurethane"}, Help: "what it is"},
			{Name: "thickness", Dim: Length, Required: true, Low: 0.002, High: 0.3, Help: "thickness"},
			{Name: "conductivity", Dim: Conductivity, Low: 0.01, High: 0.2, Help: "at the pipe's temperature"},
			{Name: "removable", Type: FlagType, Help: "it can be taken off"},
		},
	},
	{
		In: []string{"insulation"}, Keyword: "bare", Name: RefersMany, Stage: 11,
		Help: "Parts that stay bare on purpose.", Example: `bare Rel-S because "the bonnet must stay free"`,
		Slots: []*Slot{
			{Name: "because", Label: "because", Type: TextType, Help: "why it is bare"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "water-quality", Times: AtMostOnce, Block: MustBlock, Stage: 11,
		Help: "Fill water, treatment and flushing.", Example: "water-quality {\n}",
	},
	{
		In: []string{"water-quality"}, Keyword: "fill-water", Times: AtMostOnce, Stage: 11,
		Help: "The water that the plant is filled with.", Example: "fill-water demineralised 10 uS/cm hardness 0.05 mmol/l",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"demineralised", "softened", "mains", "part-demineralised"}, Help: "how it is treated"},
			{Name: "conductivity", Dim: ElectricConductivity, Help: "of the fill"},
			{Name: "hardness", Label: "hardness", Dim: Hardness, High: 20, Help: "of the fill"},
			{Name: "chloride", Label: "chloride", Dim: Concentration, Help: "of the fill"},
		},
	},
	{
		In: []string{"water-quality"}, Keyword: "acidity", Times: AtMostOnce, Stage: 11,
		Help: "Range in which the water is to be kept.", Example: "acidity 8.2..9.0 pH",
		Slots: []*Slot{
			{Name: "acidity", Dim: Acidity, Forms: []NumberForm{Range}, Required: true, High: 14, Help: "range"},
		},
	},
	{
		In: []string{"water-quality"}, Keyword: "conductivity", Times: AtMostOnce, Stage: 11,
		Help: "Range in which the water is to be kept.", Example: "conductivity 10..100 uS/cm",
		Slots: []*Slot{
			{Name: "conductivity", Dim: ElectricConductivity, Forms: []NumberForm{Range}, Required: true, Help: "range"},
		},
	},
	{
		In: []string{"water-quality"}, Keyword: "inhibitor", Times: AtMostOnce, Stage: 11,
		Help: "Inhibitor in the water, or the word none.", Example: "inhibitor none",
		Slots: []*Slot{
			{Name: "inhibitor", Type: TextType, Help: "which"},
		},
	},
	{
		In: []string{"water-quality"}, Keyword: "flush", Times: AtMostOnce, Stage: 11,
		Help: "What is flushed before filling.", Example: "flush before-fill Exch.primary, Exch.secondary",
		Slots: []*Slot{
			{Name: "when", Type: ChoiceType, Choices: []string{"before-fill", "before-joining"}, Help: "when"},
			{Name: "parts", Type: PartsType, List: true, Help: "what is flushed"},
		},
	},
	{
		In: []string{"water-quality"}, Keyword: "top-up", Times: AtMostOnce, Stage: 11,
		Help: "Water topped up in a year.", Example: "top-up 200 l",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "by year"},
		},
	},
}

var testRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "tests", Times: AtMostOnce, Block: MustBlock, Stage: 14,
		Help: "The tests that the specification asks for.", Example: "tests {\n}",
	},
	{
		In: []string{"tests"}, Keyword: "strength", Name: RefersMany, Stage: 14,
		Help: "Strength test.", Example: "strength Flow-H, Return-H water 6 bar 2 h relief-isolated",
		Slots: []*Slot{
			{Name: "medium", Type: ChoiceType, Required: true, Choices: []string{"water", "air", "nitrogen"}, Help: "tested with"},
			{Name: "pressure", Dim: Pressure, Required: true, Help: "test pressure"},
			{Name: "time", Dim: Time, Required: true, Help: "held for"},
			{Name: "relief-isolated", Type: FlagType, Help: "safety valves are isolated"},
			{Name: "units-isolated", Type: FlagType, Help: "units are isolated"},
			{Name: "vessels-isolated", Type: FlagType, Help: "vessels are isolated"},
			{Name: "risk-assessed", Type: FlagType, Help: "the stored energy was assessed"},
		},
	},
	{
		In: []string{"tests"}, Keyword: "tightness", Name: RefersMany, Stage: 14,
		Help: "Tightness test of the gas pipes.", Example: "tightness gas-run air 20 mbar 10 min water-gauge",
		Slots: []*Slot{
			{Name: "medium", Type: ChoiceType, Choices: []string{"natural-gas", "air", "nitrogen"}, Help: "tested with"},
			{Name: "pressure", Dim: Pressure, Required: true, Help: "test pressure"},
			{Name: "time", Dim: Time, Required: true, Help: "held for"},
			{Name: "gauge", Type: ChoiceType, Choices: []string{"water-gauge", "electronic"}, Help: "read with"},
			{Name: "settle", Label: "settle", Dim: Time, Help: "left to settle"},
			{Name: "by-standard", Label: "standard", Type: TextType, Help: "standard of the test"},
		},
	},
	{
		In: []string{"tests"}, Keyword: "purge", Name: RefersMany, Stage: 14,
		Help: "Purge of the gas pipes.", Example: "purge gas-run 2.0 m3 through Man-A.purge-point",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "gas let through"},
			{Name: "through", Label: "through", Type: PartType, Help: "purge point"},
			{Name: "rate", Label: "rate", Dim: VolumeFlow, Help: "purge rate"},
		},
	},
	{
		In: []string{"tests"}, Keyword: "flushing", Name: MayDefine, Stage: 14,
		Help: "Flushing of the water pipes.", Example: "flushing 6400 l secondary",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Help: "water"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
			{Name: "velocity", Label: "velocity", Dim: Velocity, Help: "flushing velocity"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "handover", Times: AtMostOnce, Block: MustBlock, Stage: 15,
		Help: "What is handed over, and what is done each year.", Example: "handover {\n}",
	},
	{
		In: []string{"handover"}, Keyword: "document", Stage: 15,
		Help: "Documents to be handed over.", Example: "document operating-manual, log-book, gas-line-diagram, flue-calculation",
		Slots: []*Slot{
			{Name: "documents", Type: WordType, List: true, Required: true, Help: "which"},
		},
	},
	{
		In: []string{"handover"}, Keyword: "yearly", Stage: 15,
		Help: "What is checked each year.", Example: "yearly dampers, traps, strainers, combustion",
		Slots: []*Slot{
			{Name: "checks", Type: WordType, List: true, Required: true, Help: "which"},
		},
	},
	{
		In: []string{"handover"}, Keyword: "instructed", Name: Refers, Refers: []string{"person"}, Stage: 15,
		Help: "Who is instructed, and by whom.", Example: "instructed K1 by E1",
		Slots: []*Slot{
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "who instructs"},
			{Name: "date", Type: DateType, Help: "day"},
		},
	},
}
