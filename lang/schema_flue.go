package lang

// Slots of every piece of a flue.
var (
	flueMaterial        = Slot{Name: "material", Type: ChoiceType, Choices: []string{"polypropylene", "stainless", "aluminium", "plastic"}, Help: "what the flue is made of"}
	flueSize            = Slot{Name: "size", Type: SizeType, Help: "nominal bore"}
	flueLength          = Slot{Name: "length", Dim: Length, Required: true, Low: 0.05, High: 200, Help: "measured length"}
	flueFrom            = Slot{Name: "from", Label: "from", Type: PartsType, List: true, Help: "where the products come from"}
	flueTo              = Slot{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where they go"}
	flueRise            = Slot{Name: "rise", Label: "rise", Dim: Length, Low: -20, High: 200, Help: "height gained"}
	flueClass           = Slot{Name: "class", Label: "class", Type: CodeType, Help: "class of temperature, pressure and wetness"}
	flueBends           = Slot{Name: "bends", Label: "bends", Dim: Count, Help: "bends of 90 degrees"}
	flueHalfBends       = Slot{Name: "half-bends", Label: "half-bends", Dim: Count, Help: "bends of 45 degrees"}
	flueLossCoefficient = Slot{Name: "loss-coefficient", Label: "loss-coefficient", Dim: Ratio, High: 50, Help: "sum of further loss coefficients"}
	flueRoughness       = Slot{Name: "roughness", Label: "roughness", Dim: Length, High: 0.02, Help: "of the inner wall"}
	flueFalls           = Slot{Name: "falls", Label: "falls", Dim: Slope, Low: -0.5, High: 1, Help: "fall of the run"}
	flueTowards         = Slot{Name: "towards", Label: "towards", Type: PartsType, List: true, Help: "what it falls towards"}
	flueResistance      = Slot{Name: "resistance", Label: "heat-loss", Dim: Transmittance, Low: 0.05, High: 20, Help: "heat lost by area and kelvin"}
	flueInsulated       = Slot{Name: "insulated", Type: FlagType, Help: "with insulation"}
	flueOutdoors        = Slot{Name: "outdoors", Type: FlagType, Help: "it runs outdoors"}
	flueConcealed       = Slot{Name: "concealed", Type: FlagType, Help: "it cannot be seen"}
	flueFireStopped     = Slot{Name: "fire-stopped", Type: FlagType, Help: "sealed where it crosses a floor or wall"}
	flueSleeve          = Slot{Name: "sleeve", Type: FlagType, Help: "in a sleeve where it crosses"}
	flueSupport         = Slot{Name: "support", Label: "support", Dim: Length, Help: "distance from support to support"}
)

// flueSlots are what every piece of a flue states.
var flueSlots = []*Slot{
	&flueMaterial, &flueSize, &flueLength, &flueFrom, &flueTo, &flueRise, &flueClass, &flueBends, &flueHalfBends,
	&flueLossCoefficient, &flueRoughness, &flueFalls, &flueTowards, &flueResistance, &flueInsulated,
	&flueOutdoors, &flueConcealed, &flueFireStopped, &flueSleeve, &flueSupport,
}

var flueRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "flue", Name: Defines, Block: MustBlock, Stage: 7,
		Help: "A flue: connectors, common header, riser and terminal.", Example: "flue Flue-A {\n}",
	},
	{
		In: []string{"flue"}, Keyword: "connector", Name: DefinesMany, Stage: 7, Slots: flueSlots,
		Help: "The flue piece from a unit to the header.", Example: "connector C1..C8 polypropylene DN110 0.6 m from U1..U8 to Head-F bends 1 off falls 3 deg towards U1..U8",
	},
	{
		In: []string{"flue"}, Keyword: "header", Name: Defines, Kind: "flue-header", Stage: 7,
		Help: "The common horizontal flue that the connectors enter.", Example: "header Head-F polypropylene DN300 5.6 m from C1..C8 to Riser class T120-P1-W falls 3 deg towards Trap-F",
		Slots: []*Slot{
			&flueMaterial, &flueSize, &flueLength, &flueFrom, &flueTo, &flueRise, &flueClass, &flueBends, &flueHalfBends,
			&flueLossCoefficient, &flueRoughness, &flueFalls, &flueTowards, &flueResistance, &flueInsulated,
			&flueOutdoors, &flueConcealed, &flueFireStopped, &flueSleeve, &flueSupport,
			{Name: "pitch", Label: "pitch", Dim: Length, Help: "distance from entry to entry"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "run", Name: Defines, Stage: 7, Slots: flueSlots,
		Help: "A further piece of flue, such as an offset.", Example: "run Off-1 polypropylene DN300 2.0 m from Head-F to Riser rise 1.4 m",
	},
	{
		In: []string{"flue"}, Keyword: "riser", Name: Defines, Stage: 7, Slots: flueSlots,
		Help: "The vertical flue. Its length is its height.", Example: "riser Riser polypropylene DN300 14 m from Head-F to Term class T120-P1-W",
	},
	{
		In: []string{"flue"}, Keyword: "bend", Stage: 7,
		Help: "Bends with their inspection openings.", Example: "bend DN300 90 deg 1 off on Riser inspection",
		Slots: []*Slot{
			&flueSize,
			{Name: "angle", Dim: Angle, Required: true, Low: 0.1, High: 1.6, Help: "angle of the bend"},
			{Name: "count", Dim: Count, Help: "how many"},
			{Name: "on", Label: "on", Type: PartType, Required: true, Help: "the piece it is in"},
			{Name: "inspection", Type: FlagType, Help: "with an inspection opening"},
			&flueConcealed,
		},
	},
	{
		In: []string{"flue"}, Keyword: "terminal", Name: Defines, Stage: 7,
		Help: "Where the flue ends, and its distances.", Example: "terminal Term roof 1.5 m above open-cone from-window 6.5 m from-intake 9 m from-boundary 4.2 m",
		Slots: []*Slot{
			{Name: "place", Type: ChoiceType, Required: true, Choices: []string{"roof", "wall"}, Help: "where it ends"},
			{Name: "above", Suffix: "above", Dim: Length, Help: "height above the roof"},
			{Name: "cap", Type: ChoiceType, Choices: []string{"open-cone", "cowl", "rain-cap", "bare"}, Help: "what is on it"},
			{Name: "from-window", Label: "from-window", Dim: Length, Help: "distance to an opening"},
			{Name: "from-intake", Label: "from-intake", Dim: Length, Help: "distance to an air intake"},
			{Name: "from-boundary", Label: "from-boundary", Dim: Length, Help: "distance to the boundary"},
			{Name: "from-terminal", Label: "from-terminal", Dim: Length, Help: "distance to the next terminal"},
			{Name: "from-facing", Label: "from-facing", Dim: Length, Help: "distance to a facing wall"},
			{Name: "above-ground", Label: "above-ground", Dim: Length, Help: "height above ground"},
			{Name: "above-walkway", Label: "above-walkway", Dim: Length, Help: "height above a walkway"},
			{Name: "from-meter", Label: "from-meter", Dim: Length, Help: "distance to a gas meter or regulator"},
			{Name: "guard", Type: FlagType, Help: "with a guard"},
			{Name: "loss-coefficient", Label: "loss-coefficient", Dim: Ratio, High: 10, Help: "of the terminal"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "nearby-building", Stage: 7,
		Help: "A building near the terminal.", Example: "nearby-building 12 m high 18 m wide 9 m away",
		Slots: []*Slot{
			{Name: "high", Suffix: "high", Dim: Length, Required: true, Help: "height"},
			{Name: "wide", Suffix: "wide", Dim: Length, Help: "width"},
			{Name: "away", Suffix: "away", Dim: Length, Required: true, Help: "distance"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "entry-order", Times: AtMostOnce, Stage: 7,
		Help: "The order in which connectors enter the header, as the products flow.", Example: "entry-order U4, U8, U3, U7",
		Slots: []*Slot{
			{Name: "units", Type: PartsType, List: true, Required: true, Refers: []string{"unit"}, OrderCounts: true, Help: "units along the flow"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "support", Times: AtMostOnce, Stage: 7,
		Help: "Supports of the flue.", Example: "support 1.0 m at-bends",
		Slots: []*Slot{
			{Name: "spacing", Dim: Length, Required: true, Low: 0.1, High: 10, Help: "from support to support"},
			{Name: "at-bends", Type: FlagType, Help: "one at each bend"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "lubricant", Times: AtMostOnce, Stage: 7,
		Help: "What the seals are put together with.", Example: "lubricant water-based",
		Slots: []*Slot{
			{Name: "lubricant", Type: ChoiceType, Required: true, Choices: []string{"water-based", "silicone-free", "silicone", "grease", "oil", "soap"}, Help: "which"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "chimney-approval", Times: AtMostOnce, Stage: 7,
		Help: "Approval of the chimney height by the authority.", Example: `chimney-approval "ref CH/25/118" 2025-08-04`,
		Slots: []*Slot{
			{Name: "reference", Type: TextType, Required: true, Help: "reference of the approval"},
			{Name: "date", Type: DateType, Help: "day of the approval"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "health-approval", Times: AtMostOnce, Stage: 7,
		Help: "Agreement of the health officer to a horizontal terminal.", Example: `health-approval "ref EH/25/7" 2025-08-04`,
		Slots: []*Slot{
			{Name: "reference", Type: TextType, Required: true, Help: "reference of the agreement"},
			{Name: "date", Type: DateType, Help: "day of the agreement"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "firing-cases", Times: AtMostOnce, Stage: 7,
		Help: "The cases for which the designer had the flue checked.", Example: "firing-cases all-full, one-low, one-alone",
		Slots: []*Slot{
			{Name: "cases", Type: ChoiceType, List: true, Required: true, Choices: []string{"all-full", "one-low", "one-alone"}, Help: "which"},
		},
	},
	{
		In: []string{"flue"}, Keyword: "length-limit", Times: AtMostOnce, Stage: 7,
		Help: "The greatest equivalent length that the units allow.", Example: "length-limit 30 m bend 1.5 m",
		Slots: []*Slot{
			{Name: "limit", Dim: Length, Required: true, Help: "greatest equivalent length"},
			{Name: "bend", Label: "bend", Dim: Length, Help: "what a bend counts"},
		},
	},
}

var condensateRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "condensate", Times: AtMostOnce, Block: MustBlock, Stage: 8,
		Help: "Traps, pipes and neutralizer for the condensate.", Example: "condensate {\n}",
	},
	{
		In: []string{"condensate"}, Keyword: "pipe", Name: Defines, Kind: "condensate-pipe", Stage: 8,
		Help: "A condensate pipe.", Example: "pipe Cond-main polypropylene 40 mm 6.5 m falls 44 mm/m from U1..U8 to Neut",
		Slots: []*Slot{
			{Name: "material", Type: ChoiceType, Choices: []string{"polypropylene", "plastic", "stainless", "stoneware", "copper", "steel", "concrete"}, Help: "what it is made of"},
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "length", Dim: Length, Help: "measured length"},
			{Name: "falls", Label: "falls", Dim: Slope, Low: -0.5, High: 1, Help: "fall"},
			{Name: "from", Label: "from", Type: PartsType, List: true, Help: "what drains into it"},
			{Name: "to", Label: "to", Type: PartType, Help: "where it ends"},
			{Name: "route", Label: "route", Type: ChoiceType, Choices: []string{"inside", "outside"}, Help: "where it runs"},
			{Name: "bore", Label: "bore", Dim: Length, Low: 0.005, High: 0.3, Help: "inner diameter"},
			&flueInsulated,
			{Name: "air-break", Type: FlagType, Help: "an air break at its end"},
		},
	},
	{
		In: []string{"condensate"}, Keyword: "trap", Name: Defines, Kind: "flue-trap", Stage: 8,
		Help: "The condensate trap of a flue.", Example: "trap Trap-F seal 200 mm from Head-F to Neut",
		Slots: []*Slot{
			{Name: "seal", Label: "seal", Dim: Length, Required: true, Low: 0.01, High: 1, Help: "height of the water seal"},
			{Name: "from", Label: "from", Type: PartsType, List: true, Help: "what drains into it"},
			{Name: "to", Label: "to", Type: PartType, Help: "where it drains"},
			{Name: "primed", Type: FlagType, Help: "filled before the first firing"},
		},
	},
	{
		In: []string{"condensate"}, Keyword: "neutraliser", Name: Defines, Stage: 8,
		Help: "Neutralizes the condensate.", Example: "neutraliser Neut 110 l/h to Gully",
		Slots: []*Slot{
			{Name: "capacity", Dim: VolumeFlow, Help: "condensate it treats"},
			{Name: "to", Label: "to", Type: PartType, Help: "where it drains"},
		},
	},
	{
		In: []string{"condensate"}, Keyword: "gully", Name: Defines, Stage: 8,
		Help: "The drain that takes the condensate.", Example: "gully Gully foul-drain indoor",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"foul-drain", "combined-drain", "rain-drain"}, Help: "which drain"},
			{Name: "place", Type: ChoiceType, Choices: []string{"indoor", "outdoor"}, Help: "where"},
			{Name: "material", Type: ChoiceType, Choices: []string{"plastic", "stoneware", "concrete", "cast-iron"}, Help: "what it is made of"},
		},
	},
	{
		In: []string{"condensate"}, Keyword: "pump", Name: Defines, Kind: "condensate-pump", Stage: 8,
		Help: "A condensate pump.", Example: "pump Cond-P 120 l/h to Gully overflow-stops-firing",
		Slots: []*Slot{
			{Name: "capacity", Dim: VolumeFlow, Help: "what it lifts"},
			{Name: "to", Label: "to", Type: PartType, Help: "where it lifts to"},
			{Name: "overflow-stops-firing", Type: FlagType, Help: "its overflow switch stops firing"},
		},
	},
}

var airRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "air", Times: AtMostOnce, Block: MustBlock, Stage: 9,
		Help: "Combustion air, ventilation, detection and emergency stops.", Example: "air {\n}",
	},
	{
		In: []string{"air"}, Keyword: "opening", Name: Defines, Stage: 9,
		Help: "A ventilation opening.", Example: "opening High high-level louvre 1900 cm2 free non-closable leads outside",
		Slots: []*Slot{
			{Name: "level", Type: ChoiceType, Required: true, Choices: []string{"high-level", "low-level", "floor-level"}, Help: "where in the height of the room"},
			{Name: "kind", Type: ChoiceType, Choices: []string{"louvre", "grille", "mesh", "duct", "vertical-duct"}, Help: "what covers it"},
			{Name: "free", Suffix: "free", Dim: Area, Help: "free area"},
			{Name: "gross", Suffix: "gross", Dim: Area, Help: "area of the frame"},
			{Name: "leads", Label: "leads", Type: ChoiceType, Choices: []string{"outside", "inside"}, Help: "where it leads"},
			{Name: "non-closable", Type: FlagType, Help: "nothing can close it"},
			{Name: "closable", Type: FlagType, Help: "it can be closed"},
			{Name: "up", Suffix: "up", Dim: Length, Help: "height of its center above the floor"},
			{Name: "made-of", Label: "made-of", Type: ChoiceType, Choices: []string{"metal", "wood"}, Help: "what the louvre is made of"},
		},
	},
	{
		In: []string{"air"}, Keyword: "fan", Name: Defines, Stage: 9,
		Help: "A ventilation fan.", Example: "fan Fan-S supply 1040 m3/h proved stops-firing",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"supply", "extract"}, Help: "which way it moves air"},
			{Name: "flow", Dim: VolumeFlow, Required: true, Help: "air flow"},
			{Name: "proved", Type: FlagType, Help: "its flow is proved"},
			{Name: "stops-firing", Type: FlagType, Help: "its failure stops the burners"},
		},
	},
	{
		In: []string{"air"}, Keyword: "detector", Name: Defines, Stage: 9,
		Help: "A gas detector.", Example: "detector Det-G natural-gas ceiling alarm 10 %LEL trip 20 %LEL closes Shut-1",
		Slots: []*Slot{
			{Name: "gas", Type: ChoiceType, Required: true, Choices: []string{"natural-gas", "propane", "carbon-monoxide"}, Help: "what it detects"},
			{Name: "place", Type: ChoiceType, Choices: []string{"ceiling", "floor"}, Help: "where it hangs"},
			{Name: "height", Suffix: "above-floor", Dim: Length, Help: "height above the floor"},
			{Name: "alarm-gas", Label: "alarm", Dim: ExplosiveLimit, Help: "alarm level"},
			{Name: "alarm-co", Label: "alarm", Dim: Ratio, Help: "alarm level"},
			{Name: "trip-gas", Label: "trip", Dim: ExplosiveLimit, Help: "shut-off level"},
			{Name: "trip-co", Label: "trip", Dim: Ratio, Help: "shut-off level"},
			{Name: "closes", Label: "closes", Type: PartsType, List: true, Help: "valves it shuts"},
			{Name: "sounds", Type: FlagType, Help: "an alarm sounds outside the doors"},
		},
	},
	{
		In: []string{"air"}, Keyword: "stop", Name: Defines, Stage: 9,
		Help: "An emergency stop.", Example: "stop Stop-1 exit Main-door closes Shut-1 latching",
		Slots: []*Slot{
			{Name: "exit", Label: "exit", Type: PartType, Required: true, Refers: []string{"door"}, Help: "the door it is beside"},
			{Name: "closes", Label: "closes", Type: PartsType, List: true, Help: "valves it shuts"},
			{Name: "latching", Type: FlagType, Help: "it stays until a person resets it"},
			{Name: "cuts-power", Type: FlagType, Help: "it cuts the units' power"},
		},
	},
	{
		In: []string{"air"}, Keyword: "fire-alarm", Times: AtMostOnce, Stage: 9,
		Help: "The link with the fire alarm.", Example: "fire-alarm closes Shut-1 cuts-power",
		Slots: []*Slot{
			{Name: "closes", Label: "closes", Type: PartsType, List: true, Help: "valves it shuts"},
			{Name: "cuts-power", Type: FlagType, Help: "it cuts the units' power"},
		},
	},
	{
		In: []string{"air"}, Keyword: "heat-detector", Stage: 9,
		Help: "Heat detectors or thermal links over the units.", Example: "heat-detector over U1..U8 72 degC closes Shut-1",
		Slots: []*Slot{
			{Name: "over", Label: "over", Type: PartsType, List: true, Required: true, Refers: []string{"unit"}, Help: "units it hangs over"},
			{Name: "setting", Dim: Temperature, Help: "temperature at which it acts"},
			{Name: "closes", Label: "closes", Type: PartsType, List: true, Help: "valves it shuts"},
		},
	},
	{
		In: []string{"air"}, Keyword: "intake", Times: AtMostOnce, Stage: 9,
		Help: "Where the units take their combustion air.", Example: "intake from-room",
		Slots: []*Slot{
			{Name: "intake", Type: ChoiceType, Required: true, Choices: []string{"from-room", "ducted"}, Help: "where from"},
		},
	},
	{
		In: []string{"air"}, Keyword: "summer-use", Times: AtMostOnce, Stage: 9,
		Help: "Share of the plant that runs in summer.", Example: "summer-use 60 %",
		Slots: []*Slot{
			{Name: "share", Dim: Ratio, Required: true, High: 1, Help: "of the heat input"},
		},
	},
	{
		In: []string{"air"}, Keyword: "air-changes", Times: AtMostOnce, Stage: 9,
		Help: "Air changes of the room without openings.", Example: "air-changes 0.4 ratio",
		Slots: []*Slot{
			{Name: "changes", Dim: Ratio, Required: true, High: 20, Help: "by hour"},
		},
	},
	{
		In: []string{"air"}, Keyword: "cooling", Times: AtMostOnce, Stage: 9,
		Help: "Kelvin by which the room is to be cooler than the ventilation gives.", Example: "cooling 4 K",
		Slots: []*Slot{
			{Name: "cooling", Dim: TempDiff, Required: true, High: 30, Help: "cooler"},
		},
	},
}
