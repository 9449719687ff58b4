package lang

var electricalRows = []Row{
	{In: in("plant"), Keyword: "electrical", Times: AtMostOnce, Block: MustBlock, Stage: 10, Help: "Panel, wires, bus and sensors.", Example: "electrical {\n}"},
	{In: in("electrical"), Keyword: "panel", Name: Defines, Stage: 10, Slots: slots(qty("voltage", Voltage, "supply").need(), qty("phases", Count, "phases"), qty("current", Current, "supply fuse")), Help: "The control panel.", Example: "panel Pan 400 V 3 phase 63 A"},
	{In: in("electrical"), Keyword: "wire", Name: RefersMany, Stage: 10, Slots: slots(parts("to", "where the wire ends").need(), code("terminal", "terminal it ends at").by()), Help: "A wire from a part to its own unit or the panel.", Example: "wire U1..U8.damper to U1..U8 terminal X4"},
	{In: in("electrical"), Keyword: "bus", Name: RefersMany, Stage: 10, Slots: slots(choice("kind", "cable", "two-core", "four-core", "screened"), flag("addressed-in-order", "addresses follow the order of names")), Help: "The bus between units.", Example: "bus U1..U8 two-core addressed-in-order"},
	{
		In: in("electrical"), Keyword: "sensor", Name: Defines, Stage: 10,
		Slots: slots(choice("measures", "what it measures", "flow-temperature", "return-temperature", "outside-temperature", "pressure", "room-temperature").need(), part("on", "the part it sits on"), choice("place", "where it hangs", "north-wall", "room"), part("to", "where its wire ends"), code("terminal", "terminal it ends at").by()),
		Help:  "A sensor.", Example: "sensor Sen-P flow-temperature on Flow-H to Pan terminal X20",
	},
	single("electrical", "bonding", 10, "Protective bonding of gas and water pipes.", "bonding gas, water", choice("what", "which pipes", "gas", "water", "flue").many().need()),
	single("electrical", "residual-current", 10, "Residual current protection.", "residual-current 30 mA", qty("current", Current, "it trips at").need()),
	{In: in("plant"), Keyword: "controls", Times: AtMostOnce, Block: MustBlock, Stage: 10, Help: "Sequence, set points and interlocks.", Example: "controls {\n}"},
	single("controls", "set-point", 10, "Flow set point and its sensor.", "set-point 75 degC by Sen-P", qty("temperature", Temperature, "flow").need().likely(20, 110), part("by", "the sensor", "sensor"), flag("weather-led", "it follows the weather")),
	single("controls", "lead", 10, "How the lead among the units changes.", "lead rotate 168 h", choice("lead", "how", "rotate", "by-hours", "fixed").need(), qty("after", Time, "how often")),
	single("controls", "bring-on", 10, "When the next unit is brought on.", "bring-on next 80 % for 6 min", qty("at", Ratio, "share of firing").label("next").need().likely(0, 1), qty("time", Time, "how long").label("for")),
	single("controls", "release", 10, "When the last unit is released.", "release last 35 % for 4 min", qty("at", Ratio, "share of firing").label("last").need().likely(0, 1), qty("time", Time, "how long").label("for")),
	single("controls", "strategy", 10, "How many units share a load.", "strategy most-units", choice("strategy", "how", "most-units", "fewest-units").need()),
	{In: in("controls"), Keyword: "interlock", Name: RefersMany, Stage: 10, Slots: slots(parts("stops", "units it stops"), flag("stops-own-unit", "each stops its own unit")), Help: "What stops firing when it fails or acts.", Example: "interlock Shut-1 stops U1..U8"},
	single("controls", "frost", 10, "Frost protection.", "frost 5 degC", qty("setting", Temperature, "it acts below").need()),
	{In: in("controls"), Keyword: "signal", Name: Refers, Stage: 10, Slots: slots(qty("current", Current, "range").ranged(), qty("voltage", Voltage, "range").ranged()), Help: "The signal of a sensor.", Example: "signal Sen-P 4..20 mA"},
	{In: in("controls"), Keyword: "buffer", Name: Defines, Stage: 10, Slots: slots(qty("volume", Volume, "water").need(), part("on", "where it stands"), qty("swing", TempDiff, "temperature swing it may have").by()), Help: "A buffer vessel.", Example: "buffer Buf 500 l on PF swing 10 K"},
	single("controls", "cycling", 10, "Limits of cycling.", "cycling swing 10 K", qty("swing", TempDiff, "switching difference").by().likely(1, 40), qty("most", Frequency, "starts").by()),
	single("controls", "off-units", 10, "Whether a valve shuts the circuit of a unit that is off.", "off-units shut", choice("off-units", "what happens", "shut", "open").need()),
}

var insulationRows = []Row{
	{In: in("plant"), Keyword: "insulation", Times: AtMostOnce, Block: MustBlock, Stage: 11, Help: "Insulation of pipes and parts.", Example: "insulation {\n}"},
	{
		In: in("insulation"), Keyword: "cover", Name: RefersMany, Stage: 11,
		Slots: slots(choice("material", "what it is", "mineral-wool", "phenolic", "elastomeric", "polyurethane"), qty("thickness", Length, "thickness").need().likely(0.002, 0.3), qty("conductivity", Conductivity, "at the pipe's temperature").likely(0.01, 0.2), flag("removable", "it can be taken off")),
		Help:  "Insulation on parts.", Example: "cover Flow-H, Return-H mineral-wool 40 mm 0.035 W/mK",
	},
	{In: in("insulation"), Keyword: "bare", Name: RefersMany, Stage: 11, Slots: slots(text("because", "why it is bare").by()), Help: "Parts that stay bare on purpose.", Example: `bare Rel-S because "the bonnet must stay free"`},
	{In: in("plant"), Keyword: "water-quality", Times: AtMostOnce, Block: MustBlock, Stage: 11, Help: "Fill water, treatment and flushing.", Example: "water-quality {\n}"},
	single("water-quality", "fill-water", 11, "The water that the plant is filled with.", "fill-water demineralised 10 uS/cm hardness 0.05 mmol/l", choice("kind", "how it is treated", "demineralised", "softened", "mains", "part-demineralised").need(), qty("conductivity", ElectricConductivity, "of the fill"), qty("hardness", Hardness, "of the fill").by().likely(0, 20), qty("chloride", Concentration, "of the fill").by()),
	single("water-quality", "acidity", 11, "Range in which the water is to be kept.", "acidity 8.2..9.0 pH", qty("acidity", Acidity, "range").need().ranged().likely(0, 14)),
	single("water-quality", "conductivity", 11, "Range in which the water is to be kept.", "conductivity 10..100 uS/cm", qty("conductivity", ElectricConductivity, "range").need().ranged()),
	single("water-quality", "inhibitor", 11, "Inhibitor in the water, or the word none.", "inhibitor none", text("inhibitor", "which")),
	single("water-quality", "flush", 11, "What is flushed before filling.", "flush before-fill Exch.primary, Exch.secondary", choice("when", "when", "before-fill", "before-joining"), Slot{Name: "parts", Type: PartsType, List: true, Help: "what is flushed"}),
	single("water-quality", "top-up", 11, "Water topped up in a year.", "top-up 200 l", qty("volume", Volume, "by year").need()),
}

var testRows = []Row{
	{In: in("plant"), Keyword: "tests", Times: AtMostOnce, Block: MustBlock, Stage: 14, Help: "The tests that the specification asks for.", Example: "tests {\n}"},
	{
		In: in("tests"), Keyword: "strength", Name: RefersMany, Stage: 14,
		Slots: slots(choice("medium", "tested with", "water", "air", "nitrogen").need(), qty("pressure", Pressure, "test pressure").need(), qty("time", Time, "held for").need(), flag("relief-isolated", "safety valves are isolated"), flag("units-isolated", "units are isolated"), flag("vessels-isolated", "vessels are isolated"), flag("risk-assessed", "the stored energy was assessed")),
		Help:  "Strength test.", Example: "strength Flow-H, Return-H water 6 bar 2 h relief-isolated",
	},
	{
		In: in("tests"), Keyword: "tightness", Name: RefersMany, Stage: 14,
		Slots: slots(choice("medium", "tested with", "natural-gas", "air", "nitrogen"), qty("pressure", Pressure, "test pressure").need(), qty("time", Time, "held for").need(), choice("gauge", "read with", "water-gauge", "electronic"), qty("settle", Time, "left to settle").by(), text("by-standard", "standard of the test").label("standard")),
		Help:  "Tightness test of the gas pipes.", Example: "tightness gas-run air 20 mbar 10 min water-gauge",
	},
	{In: in("tests"), Keyword: "purge", Name: RefersMany, Stage: 14, Slots: slots(qty("volume", Volume, "gas let through").need(), part("through", "purge point"), qty("rate", VolumeFlow, "purge rate").by()), Help: "Purge of the gas pipes.", Example: "purge gas-run 2.0 m3 through Man-A.purge-point"},
	{In: in("tests"), Keyword: "flushing", Name: MayDefine, Stage: 14, Slots: slots(qty("volume", Volume, "water"), choice("side", "which circuit", "primary", "secondary"), qty("velocity", Velocity, "flushing velocity").by()), Help: "Flushing of the water pipes.", Example: "flushing 6400 l secondary"},
	{In: in("plant"), Keyword: "handover", Times: AtMostOnce, Block: MustBlock, Stage: 15, Help: "What is handed over, and what is done each year.", Example: "handover {\n}"},
	{In: in("handover"), Keyword: "document", Stage: 15, Slots: slots(word("documents", "which").many().need()), Help: "Documents to be handed over.", Example: "document operating-manual, log-book, gas-line-diagram, flue-calculation"},
	{In: in("handover"), Keyword: "yearly", Stage: 15, Slots: slots(word("checks", "which").many().need()), Help: "What is checked each year.", Example: "yearly dampers, traps, strainers, combustion"},
	{In: in("handover"), Keyword: "instructed", Name: Refers, Refers: []string{"person"}, Stage: 15, Slots: slots(part("by", "who instructs", "person").need(), date("date", "day")), Help: "Who is instructed, and by whom.", Example: "instructed K1 by E1"},
}
