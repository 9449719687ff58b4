package lang

var flueMaterials = []string{"polypropylene", "stainless", "aluminium", "plastic"}

// flueSlots are what every piece of a flue states.
func flueSlots(rest ...any) []Slot {
	return slots(append([]any{
		choice("material", "what the flue is made of", flueMaterials...), sizeSlot("nominal bore"), qty("length", Length, "measured length").need().likely(0.05, 200),
		Slot{Name: "from", Label: "from", Type: PartsType, List: true, Help: "where the products come from"},
		Slot{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where they go"},
		qty("rise", Length, "height gained").by().likely(-20, 200), code("class", "class of temperature, pressure and wetness").by(),
		qty("bends", Count, "bends of 90 degrees").by(), qty("half-bends", Count, "bends of 45 degrees").by(), qty("loss-coefficient", Ratio, "sum of further loss coefficients").by().likely(0, 50),
		qty("roughness", Length, "of the inner wall").by().likely(0, 0.02), qty("falls", Slope, "fall of the run").by().likely(-0.5, 1),
		Slot{Name: "towards", Label: "towards", Type: PartsType, List: true, Help: "what it falls towards"},
		qty("resistance", Transmittance, "heat lost by area and kelvin").label("heat-loss").likely(0.05, 20), flag("insulated", "with insulation"), flag("outdoors", "it runs outdoors"), flag("concealed", "it cannot be seen"), flag("fire-stopped", "sealed where it crosses a floor or wall"), flag("sleeve", "in a sleeve where it crosses"),
		qty("support", Length, "distance from support to support").by(),
	}, rest...)...)
}

var flueRows = []Row{
	{In: in("plant"), Keyword: "flue", Name: Defines, Block: MustBlock, Stage: 7, Help: "A flue: connectors, common header, riser and terminal.", Example: "flue Flue-A {\n}"},
	{In: in("flue"), Keyword: "connector", Name: DefinesMany, Stage: 7, Slots: flueSlots(), Help: "The flue piece from a unit to the header.", Example: "connector C1..C8 polypropylene DN110 0.6 m from U1..U8 to Head-F bends 1 off falls 3 deg towards U1..U8"},
	{
		In: in("flue"), Keyword: "header", Name: Defines, Kind: "flue-header", Stage: 7, Slots: flueSlots(qty("pitch", Length, "distance from entry to entry").by()),
		Help: "The common horizontal flue that the connectors enter.", Example: "header Head-F polypropylene DN300 5.6 m from C1..C8 to Riser class T120-P1-W falls 3 deg towards Trap-F",
	},
	{In: in("flue"), Keyword: "run", Name: Defines, Stage: 7, Slots: flueSlots(), Help: "A further piece of flue, such as an offset.", Example: "run Off-1 polypropylene DN300 2.0 m from Head-F to Riser rise 1.4 m"},
	{In: in("flue"), Keyword: "riser", Name: Defines, Stage: 7, Slots: flueSlots(), Help: "The vertical flue. Its length is its height.", Example: "riser Riser polypropylene DN300 14 m from Head-F to Term class T120-P1-W"},
	{
		In: in("flue"), Keyword: "bend", Stage: 7,
		Slots: slots(sizeSlot("nominal bore"), qty("angle", Angle, "angle of the bend").need().likely(0.1, 1.6), qty("count", Count, "how many"), part("on", "the piece it is in").need(), flag("inspection", "with an inspection opening"), flag("concealed", "it cannot be seen")),
		Help:  "Bends with their inspection openings.", Example: "bend DN300 90 deg 1 off on Riser inspection",
	},
	{
		In: in("flue"), Keyword: "terminal", Name: Defines, Stage: 7,
		Slots: slots(choice("place", "where it ends", "roof", "wall").need(), qty("above", Length, "height above the roof").suffix("above"), choice("cap", "what is on it", "open-cone", "cowl", "rain-cap", "bare"), qty("from-window", Length, "distance to an opening").by(), qty("from-intake", Length, "distance to an air intake").by(), qty("from-boundary", Length, "distance to the boundary").by(),
			qty("from-terminal", Length, "distance to the next terminal").by(), qty("from-facing", Length, "distance to a facing wall").by(), qty("above-ground", Length, "height above ground").by(), qty("above-walkway", Length, "height above a walkway").by(), qty("from-meter", Length, "distance to a gas meter or regulator").by(), flag("guard", "with a guard"), qty("loss-coefficient", Ratio, "of the terminal").by().likely(0, 10)),
		Help: "Where the flue ends, and its distances.", Example: "terminal Term roof 1.5 m above open-cone from-window 6.5 m from-intake 9 m from-boundary 4.2 m",
	},
	{In: in("flue"), Keyword: "nearby-building", Stage: 7, Slots: slots(qty("high", Length, "height").suffix("high").need(), qty("wide", Length, "width").suffix("wide"), qty("away", Length, "distance").suffix("away").need()), Help: "A building near the terminal.", Example: "nearby-building 12 m high 18 m wide 9 m away"},
	single("flue", "entry-order", 7, "The order in which connectors enter the header, as the products flow.", "entry-order U4, U8, U3, U7", Slot{Name: "units", Type: PartsType, List: true, Refers: []string{"unit"}, OrderCounts: true, Required: true, Help: "units along the flow"}),
	single("flue", "support", 7, "Supports of the flue.", "support 1.0 m at-bends", qty("spacing", Length, "from support to support").need().likely(0.1, 10), flag("at-bends", "one at each bend")),
	single("flue", "lubricant", 7, "What the seals are put together with.", "lubricant water-based", choice("lubricant", "which", "water-based", "silicone-free", "silicone", "grease", "oil", "soap").need()),
	single("flue", "chimney-approval", 7, "Approval of the chimney height by the authority.", `chimney-approval "ref CH/25/118" 2025-08-04`, text("reference", "reference of the approval").need(), date("date", "day of the approval")),
	single("flue", "health-approval", 7, "Agreement of the health officer to a horizontal terminal.", `health-approval "ref EH/25/7" 2025-08-04`, text("reference", "reference of the agreement").need(), date("date", "day of the agreement")),
	single("flue", "firing-cases", 7, "The cases for which the designer had the flue checked.", "firing-cases all-full, one-low, one-alone", choice("cases", "which", "all-full", "one-low", "one-alone").many().need()),
	single("flue", "length-limit", 7, "The greatest equivalent length that the units allow.", "length-limit 30 m bend 1.5 m", qty("limit", Length, "greatest equivalent length").need(), qty("bend", Length, "what a bend counts").by()),
}

var condensateRows = []Row{
	{In: in("plant"), Keyword: "condensate", Times: AtMostOnce, Block: MustBlock, Stage: 8, Help: "Traps, pipes and neutralizer for the condensate.", Example: "condensate {\n}"},
	{
		In: in("condensate"), Keyword: "pipe", Name: Defines, Kind: "condensate-pipe", Stage: 8,
		Slots: slots(choice("material", "what it is made of", "polypropylene", "plastic", "stainless", "stoneware", "copper", "steel", "concrete"), sizeSlot("nominal size"), qty("length", Length, "measured length"), qty("falls", Slope, "fall").by().likely(-0.5, 1),
			parts("from", "what drains into it"), part("to", "where it ends"), choice("route", "where it runs", "inside", "outside").by(), qty("bore", Length, "inner diameter").by().likely(0.005, 0.3), flag("insulated", "with insulation"), flag("air-break", "an air break at its end")),
		Help: "A condensate pipe.", Example: "pipe Cond-main polypropylene 40 mm 6.5 m falls 44 mm/m from U1..U8 to Neut",
	},
	{In: in("condensate"), Keyword: "trap", Name: Defines, Kind: "flue-trap", Stage: 8, Slots: slots(qty("seal", Length, "height of the water seal").by().need().likely(0.01, 1), parts("from", "what drains into it"), part("to", "where it drains"), flag("primed", "filled before the first firing")), Help: "The condensate trap of a flue.", Example: "trap Trap-F seal 200 mm from Head-F to Neut"},
	{In: in("condensate"), Keyword: "neutraliser", Name: Defines, Stage: 8, Slots: slots(qty("capacity", VolumeFlow, "condensate it treats"), part("to", "where it drains")), Help: "Neutralizes the condensate.", Example: "neutraliser Neut 110 l/h to Gully"},
	{In: in("condensate"), Keyword: "gully", Name: Defines, Stage: 8, Slots: slots(choice("kind", "which drain", "foul-drain", "combined-drain", "rain-drain").need(), choice("place", "where", "indoor", "outdoor"), choice("material", "what it is made of", "plastic", "stoneware", "concrete", "cast-iron")), Help: "The drain that takes the condensate.", Example: "gully Gully foul-drain indoor"},
	{In: in("condensate"), Keyword: "pump", Name: Defines, Kind: "condensate-pump", Stage: 8, Slots: slots(qty("capacity", VolumeFlow, "what it lifts"), part("to", "where it lifts to"), flag("overflow-stops-firing", "its overflow switch stops firing")), Help: "A condensate pump.", Example: "pump Cond-P 120 l/h to Gully overflow-stops-firing"},
}

var airRows = []Row{
	{In: in("plant"), Keyword: "air", Times: AtMostOnce, Block: MustBlock, Stage: 9, Help: "Combustion air, ventilation, detection and emergency stops.", Example: "air {\n}"},
	{
		In: in("air"), Keyword: "opening", Name: Defines, Stage: 9,
		Slots: slots(choice("level", "where in the height of the room", "high-level", "low-level", "floor-level").need(), choice("kind", "what covers it", "louvre", "grille", "mesh", "duct", "vertical-duct"), qty("free", Area, "free area").suffix("free"), qty("gross", Area, "area of the frame").suffix("gross"),
			choice("leads", "where it leads", "outside", "inside").by(), flag("non-closable", "nothing can close it"), flag("closable", "it can be closed"), qty("up", Length, "height of its center above the floor").suffix("up"), choice("made-of", "what the louvre is made of", "metal", "wood").by()),
		Help: "A ventilation opening.", Example: "opening High high-level louvre 1900 cm2 free non-closable leads outside",
	},
	{In: in("air"), Keyword: "fan", Name: Defines, Stage: 9, Slots: slots(choice("kind", "which way it moves air", "supply", "extract").need(), qty("flow", VolumeFlow, "air flow").need(), flag("proved", "its flow is proved"), flag("stops-firing", "its failure stops the burners")), Help: "A ventilation fan.", Example: "fan Fan-S supply 1040 m3/h proved stops-firing"},
	{
		In: in("air"), Keyword: "detector", Name: Defines, Stage: 9,
		Slots: slots(choice("gas", "what it detects", "natural-gas", "propane", "carbon-monoxide").need(), choice("place", "where it hangs", "ceiling", "floor"), qty("height", Length, "height above the floor").suffix("above-floor"),
			qty("alarm-gas", ExplosiveLimit, "alarm level").label("alarm"), qty("alarm-co", Ratio, "alarm level").label("alarm"), qty("trip-gas", ExplosiveLimit, "shut-off level").label("trip"), qty("trip-co", Ratio, "shut-off level").label("trip"), parts("closes", "valves it shuts"), flag("sounds", "an alarm sounds outside the doors")),
		Help: "A gas detector.", Example: "detector Det-G natural-gas ceiling alarm 10 %LEL trip 20 %LEL closes Shut-1",
	},
	{In: in("air"), Keyword: "stop", Name: Defines, Stage: 9, Slots: slots(part("exit", "the door it is beside", "door").need(), parts("closes", "valves it shuts"), flag("latching", "it stays until a person resets it"), flag("cuts-power", "it cuts the units' power")), Help: "An emergency stop.", Example: "stop Stop-1 exit Main-door closes Shut-1 latching"},
	single("air", "fire-alarm", 9, "The link with the fire alarm.", "fire-alarm closes Shut-1 cuts-power", parts("closes", "valves it shuts"), flag("cuts-power", "it cuts the units' power")),
	{In: in("air"), Keyword: "heat-detector", Stage: 9, Slots: slots(parts("over", "units it hangs over", "unit").need(), qty("setting", Temperature, "temperature at which it acts"), parts("closes", "valves it shuts")), Help: "Heat detectors or thermal links over the units.", Example: "heat-detector over U1..U8 72 degC closes Shut-1"},
	single("air", "intake", 9, "Where the units take their combustion air.", "intake from-room", choice("intake", "where from", "from-room", "ducted").need()),
	single("air", "summer-use", 9, "Share of the plant that runs in summer.", "summer-use 60 %", qty("share", Ratio, "of the heat input").need().likely(0, 1)),
	single("air", "air-changes", 9, "Air changes of the room without openings.", "air-changes 0.4 ratio", qty("changes", Ratio, "by hour").need().likely(0, 20)),
	single("air", "cooling", 9, "Kelvin by which the room is to be cooler than the ventilation gives.", "cooling 4 K", qty("cooling", TempDiff, "cooler").need().likely(0, 30)),
}
