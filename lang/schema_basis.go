package lang

var basisRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "basis", Times: Once, Block: MustBlock, Stage: 1,
		Help: "What the design stands on: jurisdiction, altitude, gas, temperatures, loads.", Example: "basis {\n  jurisdiction UK\n}",
	},
	{
		In: []string{"basis"}, Keyword: "jurisdiction", Times: AtMostOnce, Stage: 1,
		Help: "Whose rules and units count. It chooses the limits of gas, air and flue.", Example: "jurisdiction UK",
		Slots: []*Slot{
			{Name: "jurisdiction", Type: CodeType, Required: true, Choices: []string{"UK", "EU", "US"}, Help: "whose rules count"},
			{Name: "sizing", Label: "sizing", Type: ChoiceType, Choices: []string{"longest-length", "branch-length"}, Help: "US method of sizing gas pipes"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "standard", Times: AtMostOnce, Stage: 1,
		Help: "The standards that the design cites.", Example: `standard "BS 6644", "IGEM/UP/2"`,
		Slots: []*Slot{
			{Name: "standard", Type: TextType, List: true, Required: true, Help: "number of the standard"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "altitude", Times: AtMostOnce, Stage: 1,
		Help: "Height of the site above sea level.", Example: "altitude 42 m",
		Slots: []*Slot{
			{Name: "altitude", Dim: Length, Required: true, Low: -400, High: 4000, Help: "above sea level"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "outside", Times: AtMostOnce, Stage: 1,
		Help: "Design temperature outdoors.", Example: "outside -3 degC",
		Slots: []*Slot{
			{Name: "outside", Dim: Temperature, Required: true, Low: -50, High: 25, Help: "winter design temperature"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "exposure", Times: AtMostOnce, Stage: 1,
		Help: "How the wind meets the flue terminal.", Example: "exposure inland",
		Slots: []*Slot{
			{Name: "exposure", Type: ChoiceType, Required: true, Choices: []string{"sheltered", "inland", "coast"}, Help: "situation of the terminal"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "building", Times: AtMostOnce, Stage: 1,
		Help: "The building that the plant serves.", Example: "building school built 1968-01 occupied-above",
		Slots: []*Slot{
			{Name: "occupancy", Type: ChoiceType, Choices: []string{"school", "hospital", "care-home", "dwellings", "office", "hotel", "sports-hall", "swimming-hall", "workshop", "other"}, Help: "what it is used for"},
			{Name: "built", Label: "built", Type: DateType, Help: "when it was built"},
			{Name: "occupied-above", Type: FlagType, Help: "people sleep or work above or beside the plant room"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "gas", Times: AtMostOnce, Stage: 1,
		Help: "The gas and its calorific value, gross or net.", Example: "gas natural 38.9 MJ/m3 gross",
		Slots: []*Slot{
			{Name: "fuel", Type: ChoiceType, Required: true, Choices: []string{"natural", "propane"}, Help: "kind of gas"},
			{Name: "heat-value", Dim: HeatValue, Required: true, Low: 20e6, High: 130e6, Help: "calorific value at 15 degC and 1013.25 mbar"},
			{Name: "heat-basis", Type: ChoiceType, Required: true, Choices: []string{"gross", "net"}, Help: "whether the calorific value is gross or net"},
			{Name: "relative-density", Label: "relative-density", Dim: Ratio, Low: 0.3, High: 2.2, Help: "density over that of air"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "supply", Times: AtMostOnce, Stage: 1,
		Help: "Gas pressure at the start of the run, and where that is.", Example: "supply 21 mbar at Meter",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Low: 500, High: 700e3, Help: "working pressure there with everything firing"},
			{Name: "at", Label: "at", Type: PartType, Required: true, Help: "where it is measured"},
			{Name: "band", Label: "band", Dim: Pressure, Forms: []NumberForm{Range}, Help: "range in which it may lie"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "primary", Times: AtMostOnce, Stage: 1,
		Help: "Flow and return temperature of the unit circuit.", Example: "primary 75/55 degC",
		Slots: []*Slot{
			{Name: "primary", Dim: Temperature, Forms: []NumberForm{Pair}, Required: true, Low: 5, High: 130, Help: "flow over return"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "secondary", Times: AtMostOnce, Stage: 1,
		Help: "Flow and return temperature behind the separation.", Example: "secondary 70/50 degC",
		Slots: []*Slot{
			{Name: "secondary", Dim: Temperature, Forms: []NumberForm{Pair}, Required: true, Low: 5, High: 130, Help: "flow over return"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "load", Name: Defines, Stage: 1,
		Help: "One part of the design load.", Example: "load Heating 510 kW heating",
		Slots: []*Slot{
			{Name: "load", Dim: Power, Required: true, Low: 100, High: 50e6, Help: "design load"},
			{Name: "use", Type: ChoiceType, Choices: []string{"heating", "hot-water", "ventilation", "process", "mains-loss"}, Help: "what it serves"},
			{Name: "includes-margin", Type: FlagType, Help: "a margin is already in it"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "load-least", Times: AtMostOnce, Stage: 1,
		Help: "The least load that lasts, in summer for example.", Example: "load-least 35 kW summer",
		Slots: []*Slot{
			{Name: "load-least", Dim: Power, Required: true, Help: "least lasting load"},
			{Name: "season", Type: ChoiceType, Choices: []string{"summer", "night", "all-year"}, Help: "when"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "margin", Times: AtMostOnce, Stage: 1,
		Help: "Margins on emitters and units.", Example: "margin emitters 10 %",
		Slots: []*Slot{
			{Name: "emitters", Label: "emitters", Dim: Ratio, High: 1, Help: "on the emitters"},
			{Name: "units", Label: "units", Dim: Ratio, High: 1, Help: "on the units"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "standby", Times: AtMostOnce, Stage: 1,
		Help: "How many units may be off with the load still met.", Example: "standby 1 unit",
		Slots: []*Slot{
			{Name: "standby", Dim: Count, Required: true, High: 7, Help: "units in reserve"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "firing", Times: AtMostOnce, Stage: 1,
		Help: "Whether all units may fire at once.", Example: "firing all-together",
		Slots: []*Slot{
			{Name: "firing", Type: ChoiceType, Required: true, Choices: []string{"all-together", "locked-in-turn"}, Help: "how units fire"},
		},
	},
	{
		In: []string{"basis"}, Keyword: "load-curve", Times: AtMostOnce, Block: MayBlock, Stage: 1,
		Help: "How the load is spread over the hours of a year: straight from the design load to its base, or through the points in its block.", Example: "load-curve 5200 h base 8 %",
		Slots: []*Slot{
			{Name: "hours", Dim: Time, Required: true, Low: 3600, High: 8784 * 3600, Help: "hours in a year with load"},
			{Name: "base", Label: "base", Dim: Ratio, High: 1, Help: "share of the design load that never goes away"},
		},
	},
	{
		In: []string{"load-curve"}, Keyword: "point", Stage: 1,
		Help: "A point of the load curve; hours rise and loads fall from point to point.", Example: "point 900 h 55 %",
		Slots: []*Slot{
			{Name: "time", Dim: Time, Required: true, High: 8784 * 3600, Help: "hours of the year with at least this load"},
			{Name: "share", Dim: Ratio, Required: true, High: 1, Help: "share of the design load"},
		},
	},
}
