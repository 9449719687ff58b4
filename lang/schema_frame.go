package lang

var frameRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "frame", Name: Defines, Block: MustBlock, Stage: 3,
		Help: "The floor frame that carries units and headers.", Example: "frame Frame-A back-to-back {\n}",
		Slots: []*Slot{
			{Name: "layout", Type: ChoiceType, Required: true, Choices: []string{"in-line", "back-to-back", "l-shaped"}, Help: "how the units stand"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "row", Name: Defines, Stage: 3,
		Help: "One side of the frame with its units.", Example: "row Left U1..U4",
		Slots: []*Slot{
			{Name: "units", Type: PartsType, List: true, Required: true, Refers: []string{"unit"}, OrderCounts: true, Help: "units from left to right"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "section", Name: DefinesMany, Stage: 3,
		Help: "Sections of the frame.", Example: "section S1..S4 1.30 m steel mass 28 kg",
		Slots: []*Slot{
			{Name: "length", Dim: Length, Required: true, Low: 0.2, High: 6, Help: "length of each"},
			{Name: "shape", Type: ChoiceType, Choices: []string{"straight", "corner"}, Help: "straight or corner"},
			{Name: "material", Type: ChoiceType, Choices: []string{"steel", "aluminium"}, Help: "what it is made of"},
			{Name: "mass", Label: "mass", Dim: Mass, Help: "mass of each"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "feet", Times: AtMostOnce, Stage: 3,
		Help: "The feet of the frame.", Example: "feet 10 off adjustable anchored",
		Slots: []*Slot{
			{Name: "count", Dim: Count, Required: true, Low: 2, High: 60, Help: "how many"},
			{Name: "adjustable", Type: FlagType, Help: "height can be set"},
			{Name: "anchored", Type: FlagType, Help: "bolted to the floor"},
			{Name: "locked", Type: FlagType, Help: "locked after leveling"},
			{Name: "pads", Type: FlagType, Help: "on vibration pads"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "depth", Times: AtMostOnce, Stage: 3,
		Help: "Depth of the frame over its feet.", Example: "depth 1.64 m",
		Slots: []*Slot{
			{Name: "depth", Dim: Length, Required: true, Low: 0.2, High: 4, Help: "over the feet"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "height", Times: AtMostOnce, Stage: 3,
		Help: "Height of the frame.", Example: "height 1.9 m",
		Slots: []*Slot{
			{Name: "height", Dim: Length, Required: true, Low: 0.5, High: 4, Help: "top of the frame"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "mass", Times: AtMostOnce, Stage: 3,
		Help: "Mass of the empty frame with its headers.", Example: "mass 140 kg at 450 mm",
		Slots: []*Slot{
			{Name: "mass", Dim: Mass, Required: true, Help: "without units"},
			{Name: "at", Label: "at", Dim: Length, Help: "height of its center of gravity"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "standing", Times: AtMostOnce, Stage: 3,
		Help: "How the frame stands.", Example: "standing free",
		Slots: []*Slot{
			{Name: "standing", Type: ChoiceType, Required: true, Choices: []string{"free", "wall-tied", "floor-anchored"}, Help: "what holds it"},
			{Name: "from", Label: "held", Type: ChoiceType, Choices: []string{"before-hanging", "after-piping"}, Help: "when it is held"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "hang-order", Times: AtMostOnce, Stage: 13,
		Help: "The order in which units are hung.", Example: "hang-order U1, U5, U2, U6",
		Slots: []*Slot{
			{Name: "units", Type: PartsType, List: true, Required: true, Refers: []string{"unit"}, OrderCounts: true, Help: "units in order of hanging"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "hang-height", Times: AtMostOnce, Stage: 13,
		Help: "Height of the units' center when hung.", Example: "hang-height 1.5 m",
		Slots: []*Slot{
			{Name: "hang-height", Dim: Length, Required: true, Low: 0.3, High: 3, Help: "of the center of gravity"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "offset", Times: AtMostOnce, Stage: 3,
		Help: "Distance of the units' center of gravity from the line of feet; negative is outside.", Example: "offset 250 mm",
		Slots: []*Slot{
			{Name: "offset", Dim: Length, Required: true, Low: -1, High: 2, Help: "inside the feet"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "lifting", Times: AtMostOnce, Stage: 13,
		Help: "How units are lifted.", Example: "lifting hoist 250 kg people 2 off",
		Slots: []*Slot{
			{Name: "means", Type: ChoiceType, Required: true, Choices: []string{"hoist", "lifting-table", "crane", "team"}, Help: "what lifts"},
			{Name: "capacity", Dim: Mass, Help: "safe working load"},
			{Name: "people", Label: "people", Dim: Count, Help: "how many lift"},
			{Name: "planned", Type: FlagType, Help: "a lift plan exists"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "link", Times: AtMostOnce, Stage: 3,
		Help: "The link between the two arms of the frame.", Example: "link corner 0.9 m",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"corner", "back-to-back"}, Help: "which link"},
			{Name: "length", Dim: Length, Help: "length of the link"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "pitch", Times: AtMostOnce, Stage: 3,
		Help: "Distance from unit to unit along a row.", Example: "pitch 0.65 m",
		Slots: []*Slot{
			{Name: "pitch", Dim: Length, Required: true, Low: 0.3, High: 3, Help: "center to center"},
		},
	},
	{
		In: []string{"frame"}, Keyword: "bracket", Times: AtMostOnce, Stage: 3,
		Help: "Spacing of the pipe brackets on the frame.", Example: "bracket 1.3 m",
		Slots: []*Slot{
			{Name: "spacing", Dim: Length, Required: true, Help: "from bracket to bracket"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "room", Times: AtMostOnce, Block: MustBlock, Stage: 3,
		Help: "The room in which the plant stands.", Example: "room {\n}",
	},
	{
		In: []string{"room"}, Keyword: "size", Times: AtMostOnce, Stage: 3,
		Help: "Size of the room.", Example: "size 7.8 m long 5.2 m wide 3.4 m high",
		Slots: []*Slot{
			{Name: "long", Suffix: "long", Dim: Length, Required: true, Help: "length"},
			{Name: "wide", Suffix: "wide", Dim: Length, Required: true, Help: "width"},
			{Name: "high", Suffix: "high", Dim: Length, Help: "height"},
		},
	},
	{
		In: []string{"room"}, Keyword: "kind", Times: AtMostOnce, Stage: 3,
		Help: "What sort of room it is.", Example: "kind plant-room basement",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"plant-room", "enclosure", "compartment"}, Help: "sort of room"},
			{Name: "level", Type: ChoiceType, Choices: []string{"basement", "ground", "upper-floor", "roof"}, Help: "where it lies"},
		},
	},
	{
		In: []string{"room"}, Keyword: "floor", Times: AtMostOnce, Stage: 3,
		Help: "The floor and what it allows.", Example: "floor concrete allows 7.5 kN/m2",
		Slots: []*Slot{
			{Name: "material", Type: ChoiceType, Choices: []string{"concrete", "steel", "timber"}, Help: "what it is made of"},
			{Name: "allows", Label: "allows", Dim: Pressure, Low: 500, High: 100e3, Help: "load by area"},
			{Name: "point-load", Label: "point-load", Dim: Force, Help: "load of one foot"},
		},
	},
	{
		In: []string{"room"}, Keyword: "front", Name: Refers, Refers: []string{"row"}, Stage: 3,
		Help: "Free depth in front of a row of units.", Example: "front Left 1.15 m",
		Slots: []*Slot{
			{Name: "clearance", Dim: Length, Required: true, High: 20, Help: "free depth"},
		},
	},
	{
		In: []string{"room"}, Keyword: "side", Times: AtMostOnce, Stage: 3,
		Help: "Free width beside the frame.", Example: "side 0.6 m",
		Slots: []*Slot{
			{Name: "side", Dim: Length, Required: true, High: 20, Help: "free width"},
		},
	},
	{
		In: []string{"room"}, Keyword: "above", Times: AtMostOnce, Stage: 3,
		Help: "Free height above the units.", Example: "above 0.6 m",
		Slots: []*Slot{
			{Name: "above", Dim: Length, Required: true, High: 20, Help: "free height"},
		},
	},
	{
		In: []string{"room"}, Keyword: "door", Name: Defines, Stage: 3,
		Help: "A door of the room.", Example: "door Main-door 1.2 m wide opens outward exit",
		Slots: []*Slot{
			{Name: "wide", Suffix: "wide", Dim: Length, Help: "clear width"},
			{Name: "opens", Label: "opens", Type: ChoiceType, Choices: []string{"outward", "inward"}, Help: "which way"},
			{Name: "exit", Type: FlagType, Help: "it is an exit"},
		},
	},
	{
		In: []string{"room"}, Keyword: "escape", Times: AtMostOnce, Stage: 3,
		Help: "Clear width of the way out.", Example: "escape 0.8 m",
		Slots: []*Slot{
			{Name: "escape", Dim: Length, Required: true, High: 10, Help: "clear width"},
		},
	},
	{
		In: []string{"room"}, Keyword: "floor-drain", Times: AtMostOnce, Stage: 8,
		Help: "A drain in the floor.", Example: "floor-drain DN50",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
		},
	},
}
