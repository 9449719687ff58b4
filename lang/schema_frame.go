package lang

var frameRows = []Row{
	{
		In: in("plant"), Keyword: "frame", Name: Defines, Block: MustBlock, Stage: 3,
		Slots: slots(choice("layout", "how the units stand", "in-line", "back-to-back", "l-shaped").need()),
		Help:  "The floor frame that carries units and headers.", Example: "frame Frame-A back-to-back {\n}",
	},
	{
		In: in("frame"), Keyword: "row", Name: Defines, Stage: 3, Slots: slots(Slot{Name: "units", Type: PartsType, List: true, Refers: []string{"unit"}, OrderCounts: true, Required: true, Help: "units from left to right"}),
		Help: "One side of the frame with its units.", Example: "row Left U1..U4",
	},
	{
		In: in("frame"), Keyword: "section", Name: DefinesMany, Stage: 3,
		Slots: slots(qty("length", Length, "length of each").need().likely(0.2, 6), choice("shape", "straight or corner", "straight", "corner"), choice("material", "what it is made of", "steel", "aluminium"), qty("mass", Mass, "mass of each").by()),
		Help:  "Sections of the frame.", Example: "section S1..S4 1.30 m steel mass 28 kg",
	},
	single("frame", "feet", 3, "The feet of the frame.", "feet 10 off adjustable anchored", qty("count", Count, "how many").need().likely(2, 60), flag("adjustable", "height can be set"), flag("anchored", "bolted to the floor"), flag("locked", "locked after leveling"), flag("pads", "on vibration pads")),
	single("frame", "depth", 3, "Depth of the frame over its feet.", "depth 1.64 m", qty("depth", Length, "over the feet").need().likely(0.2, 4)),
	single("frame", "height", 3, "Height of the frame.", "height 1.9 m", qty("height", Length, "top of the frame").need().likely(0.5, 4)),
	single("frame", "mass", 3, "Mass of the empty frame with its headers.", "mass 140 kg at 450 mm", qty("mass", Mass, "without units").need(), qty("at", Length, "height of its center of gravity").by()),
	single("frame", "standing", 3, "How the frame stands.", "standing free", choice("standing", "what holds it", "free", "wall-tied", "floor-anchored").need(), choice("from", "when it is held", "before-hanging", "after-piping").label("held")),
	single("frame", "hang-order", 13, "The order in which units are hung.", "hang-order U1, U5, U2, U6", Slot{Name: "units", Type: PartsType, List: true, Refers: []string{"unit"}, OrderCounts: true, Required: true, Help: "units in order of hanging"}),
	single("frame", "hang-height", 13, "Height of the units' center when hung.", "hang-height 1.5 m", qty("hang-height", Length, "of the center of gravity").need().likely(0.3, 3)),
	single("frame", "offset", 3, "Distance of the units' center of gravity from the line of feet; negative is outside.", "offset 250 mm", qty("offset", Length, "inside the feet").need().likely(-1, 2)),
	single("frame", "lifting", 13, "How units are lifted.", "lifting hoist 250 kg people 2 off", choice("means", "what lifts", "hoist", "lifting-table", "crane", "team").need(), qty("capacity", Mass, "safe working load"), qty("people", Count, "how many lift").by(), flag("planned", "a lift plan exists")),
	single("frame", "link", 3, "The link between the two arms of the frame.", "link corner 0.9 m", choice("kind", "which link", "corner", "back-to-back").need(), qty("length", Length, "length of the link")),
	single("frame", "pitch", 3, "Distance from unit to unit along a row.", "pitch 0.65 m", qty("pitch", Length, "center to center").need().likely(0.3, 3)),
	single("frame", "bracket", 3, "Spacing of the pipe brackets on the frame.", "bracket 1.3 m", qty("spacing", Length, "from bracket to bracket").need()),
	{In: in("plant"), Keyword: "room", Times: AtMostOnce, Block: MustBlock, Stage: 3, Help: "The room in which the plant stands.", Example: "room {\n}"},
	single("room", "size", 3, "Size of the room.", "size 7.8 m long 5.2 m wide 3.4 m high", qty("long", Length, "length").suffix("long").need(), qty("wide", Length, "width").suffix("wide").need(), qty("high", Length, "height").suffix("high")),
	single("room", "kind", 3, "What sort of room it is.", "kind plant-room basement", choice("kind", "sort of room", "plant-room", "enclosure", "compartment").need(), choice("level", "where it lies", "basement", "ground", "upper-floor", "roof")),
	single("room", "floor", 3, "The floor and what it allows.", "floor concrete allows 7.5 kN/m2", choice("material", "what it is made of", "concrete", "steel", "timber"), qty("allows", Pressure, "load by area").by().likely(500, 100e3), qty("point-load", Force, "load of one foot").by()),
	{In: in("room"), Keyword: "front", Name: Refers, Refers: []string{"row"}, Stage: 3, Slots: slots(qty("clearance", Length, "free depth").need().likely(0, 20)), Help: "Free depth in front of a row of units.", Example: "front Left 1.15 m"},
	single("room", "side", 3, "Free width beside the frame.", "side 0.6 m", qty("side", Length, "free width").need().likely(0, 20)),
	single("room", "above", 3, "Free height above the units.", "above 0.6 m", qty("above", Length, "free height").need().likely(0, 20)),
	{
		In: in("room"), Keyword: "door", Name: Defines, Stage: 3, Slots: slots(qty("wide", Length, "clear width").suffix("wide"), choice("opens", "which way", "outward", "inward").by(), flag("exit", "it is an exit")),
		Help: "A door of the room.", Example: "door Main-door 1.2 m wide opens outward exit",
	},
	single("room", "escape", 3, "Clear width of the way out.", "escape 0.8 m", qty("escape", Length, "clear width").need().likely(0, 10)),
	single("room", "floor-drain", 8, "A drain in the floor.", "floor-drain DN50", sizeSlot("nominal size")),
}
