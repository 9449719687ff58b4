package lang

var basisRows = []Row{
	{In: in("plant"), Keyword: "basis", Times: Once, Block: MustBlock, Stage: 1, Help: "What the design stands on: jurisdiction, altitude, gas, temperatures, loads.", Example: "basis {\n  jurisdiction UK\n}"},
	{
		In: in("basis"), Keyword: "jurisdiction", Times: AtMostOnce, Stage: 1,
		Slots: slots(Slot{Name: "jurisdiction", Type: CodeType, Choices: []string{"UK", "EU", "US"}, Required: true, Help: "whose rules count"}, choice("sizing", "US method of sizing gas pipes", "longest-length", "branch-length").by()),
		Help:  "Whose rules and units count. It chooses the limits of gas, air and flue.", Example: "jurisdiction UK",
	},
	single("basis", "standard", 1, "The standards that the design cites.", `standard "BS 6644", "IGEM/UP/2"`, text("standard", "number of the standard").many().need()),
	single("basis", "altitude", 1, "Height of the site above sea level.", "altitude 42 m", qty("altitude", Length, "above sea level").need().likely(-400, 4000)),
	single("basis", "outside", 1, "Design temperature outdoors.", "outside -3 degC", qty("outside", Temperature, "winter design temperature").need().likely(-50, 25)),
	single("basis", "exposure", 1, "How the wind meets the flue terminal.", "exposure inland", choice("exposure", "situation of the terminal", "sheltered", "inland", "coast").need()),
	single("basis", "building", 1, "The building that the plant serves.", "building school built 1968-01 occupied-above",
		choice("occupancy", "what it is used for", "school", "hospital", "care-home", "dwellings", "office", "hotel", "sports-hall", "swimming-hall", "workshop", "other"), date("built", "when it was built").by(), flag("occupied-above", "people sleep or work above or beside the plant room")),
	single("basis", "gas", 1, "The gas and its calorific value, gross or net.", "gas natural 38.9 MJ/m3 gross",
		choice("fuel", "kind of gas", "natural", "propane").need(), qty("heat-value", HeatValue, "calorific value at 15 degC and 1013.25 mbar").need().likely(20e6, 130e6),
		choice("heat-basis", "whether the calorific value is gross or net", "gross", "net").need(), qty("relative-density", Ratio, "density over that of air").by().likely(0.3, 2.2)),
	single("basis", "supply", 1, "Gas pressure at the start of the run, and where that is.", "supply 21 mbar at Meter",
		qty("pressure", Pressure, "working pressure there with everything firing").need().likely(500, 700e3), part("at", "where it is measured").need(), qty("band", Pressure, "range in which it may lie").by().ranged()),
	single("basis", "primary", 1, "Flow and return temperature of the unit circuit.", "primary 75/55 degC", qty("primary", Temperature, "flow over return").need().paired().likely(5, 130)),
	single("basis", "secondary", 1, "Flow and return temperature behind the separation.", "secondary 70/50 degC", qty("secondary", Temperature, "flow over return").need().paired().likely(5, 130)),
	{
		In: in("basis"), Keyword: "load", Name: Defines, Stage: 1,
		Slots: slots(qty("load", Power, "design load").need().likely(100, 50e6), choice("use", "what it serves", "heating", "hot-water", "ventilation", "process", "mains-loss"), flag("includes-margin", "a margin is already in it")),
		Help:  "One part of the design load.", Example: "load Heating 510 kW heating",
	},
	single("basis", "load-least", 1, "The least load that lasts, in summer for example.", "load-least 35 kW summer", qty("load-least", Power, "least lasting load").need(), choice("season", "when", "summer", "night", "all-year")),
	single("basis", "margin", 1, "Margins on emitters and units.", "margin emitters 10 %", qty("emitters", Ratio, "on the emitters").by().likely(0, 1), qty("units", Ratio, "on the units").by().likely(0, 1)),
	single("basis", "standby", 1, "How many units may be off with the load still met.", "standby 1 unit", qty("standby", Count, "units in reserve").need().likely(0, 7)),
	single("basis", "firing", 1, "Whether all units may fire at once.", "firing all-together", choice("firing", "how units fire", "all-together", "locked-in-turn").need()),
	{
		In: in("basis"), Keyword: "load-curve", Times: AtMostOnce, Block: MayBlock, Stage: 1,
		Slots: slots(qty("hours", Time, "hours in a year with load").need().likely(3600, 8784*3600), qty("base", Ratio, "share of the design load that never goes away").by().likely(0, 1)),
		Help:  "How the load is spread over the hours of a year: straight from the design load to its base, or through the points in its block.", Example: "load-curve 5200 h base 8 %",
	},
	{
		In: in("load-curve"), Keyword: "point", Stage: 1,
		Slots: slots(qty("time", Time, "hours of the year with at least this load").need().likely(0, 8784*3600), qty("share", Ratio, "share of the design load").need().likely(0, 1)),
		Help:  "A point of the load curve; hours rise and loads fall from point to point.", Example: "point 900 h 55 %",
	},
}
