package lang

var unitRows = []Row{
	{
		In: in("plant"), Keyword: "units", Name: DefinesMany, Kind: "unit", Block: MustBlock, Stage: 2,
		Help: "Heat generators of one kind, with what each of them has of its own.", Example: "units U1..U8 {\n}",
	},
	single("units", "type", 2, "The catalogue type of the units.", "type Wall-100", Slot{Name: "type", Type: PartType, Refers: []string{"unit-type"}, Required: true, Help: "type of a catalogue"}),
	single("units", "pump", 5, "The pump of each unit.", "pump Ring-32-80 non-return isolating flow-proving",
		Slot{Name: "type", Type: PartType, Refers: []string{"pump-type"}, Help: "type of a catalogue"}, choice("speed", "how it runs", "variable", "constant"),
		qty("setting", Ratio, "share of full speed").by().likely(0.1, 1), flag("non-return", "a non-return valve stands in the unit's circuit"),
		flag("shut-off", "a motorized valve shuts when the unit is off"), flag("isolating", "valves on both sides of the pump"), flag("flow-proving", "firing waits for proven flow"), qty("over-run", Time, "runs on after firing").by()),
	single("units", "gas-valve", 4, "The isolating valve of each unit.", "gas-valve DN25 lever union test-point",
		sizeSlot("nominal size"), choice("handle", "how it is worked", "lever", "key", "wheel"), flag("union", "a union behind it"), flag("test-point", "a test point at the unit's inlet"), flag("flexible", "a flexible connector behind it"), flag("drip-leg", "a sediment trap before the unit")),
	single("units", "water-valve", 5, "Isolating valves on the water side of each unit.", "water-valve DN32 flow, return",
		sizeSlot("nominal size"), choice("sides", "where they stand", "flow", "return").many().need(), flag("lockable", "they can be locked")),
	single("units", "strainer", 5, "Strainer of each unit.", "strainer DN32 return", sizeSlot("nominal size"), choice("side", "where it stands", "flow", "return")),
	single("units", "drain-cock", 5, "Drain cock between the isolating valves of each unit.", "drain-cock DN15", sizeSlot("nominal size")),
	single("units", "vent", 5, "Air vent of each unit.", "vent DN15", sizeSlot("nominal size"), flag("automatic", "it vents by itself")),
	single("units", "thermometer", 6, "Thermometers of each unit.", "thermometer flow, return", choice("sides", "where they stand", "flow", "return").many().need()),
	single("units", "pressure-gauge", 6, "Pressure gauge of each unit.", "pressure-gauge 0..6 bar", qty("span", Pressure, "what it shows").ranged()),
	single("units", "relief", 6, "Safety valve of each unit.", "relief DN20 3 bar unit-side discharges-to Tun-A", reliefSlots()...),
	single("units", "low-water", 6, "Low-water or low-pressure cut-out of each unit.", "low-water 0.8 bar manual-reset", qty("setting", Pressure, "pressure below which it stops firing"), choice("senses", "what it senses", "level", "pressure", "flow"), flag("manual-reset", "it stays out until a person resets it")),
	single("units", "high-pressure", 6, "High-pressure cut-out of each unit.", "high-pressure 2.7 bar manual-reset", qty("setting", Pressure, "pressure above which it stops firing").need(), flag("manual-reset", "it stays out until a person resets it")),
	single("units", "limiter", 6, "Temperature limiter of each unit.", "limiter 95 degC manual-reset", qty("setting", Temperature, "water temperature at which it locks out").need().likely(40, 130), flag("manual-reset", "it stays out until a person resets it")),
	single("units", "trap", 8, "Condensate trap of each unit.", "trap seal 120 mm drains-to Cond-main", qty("seal", Length, "height of the water seal").by().likely(0.01, 1), part("drains-to", "where it drains"), flag("primed", "it is filled before the first firing")),
	single("units", "damper", 7, "Non-return damper in the flue outlet of each unit.", "damper non-return DN110 spring",
		choice("kind", "what it does", "non-return", "motorized"), sizeSlot("nominal size"), choice("closes-by", "what closes it", "spring", "gravity", "drive"), qty("leakage", VolumeFlow, "leakage when closed").by()),
	single("units", "cap", 6, "Spare connections of each unit between its isolating valves.", "cap DN20 1 off spare", sizeSlot("nominal size"), qty("count", Count, "how many"), flag("spare", "for a later vessel or gauge"), flag("gasket", "with gasket")),
	single("units", "isolator", 10, "Electrical isolator of each unit.", "isolator lockable", flag("lockable", "it can be locked off")),
}

func reliefSlots() []Slot {
	return slots(
		sizeSlot("nominal size of the inlet"), qty("set-pressure", Pressure, "pressure at which it opens").need().likely(20e3, 2.5e6),
		choice("place", "which side of the isolating valve it stands", "unit-side", "system-side"), parts("on", "the part it protects"), part("discharges-to", "where its pipe ends"),
		qty("rated", Power, "heat it is rated to relieve").by(), qty("seat", Area, "flow area of the seat").by(), qty("coefficient", Ratio, "certified discharge coefficient").by().likely(0.05, 1),
		qty("inlet", Length, "length of pipe before it").by(), flag("no-strainer", "nothing stands before it"),
	)
}
