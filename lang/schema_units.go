package lang

// Slots of every safety valve.
var (
	reliefSize         = Slot{Name: "size", Type: SizeType, Help: "nominal size of the inlet"}
	reliefSetPressure  = Slot{Name: "set-pressure", Dim: Pressure, Required: true, Low: 20e3, High: 2.5e6, Help: "pressure at which it opens"}
	reliefPlace        = Slot{Name: "place", Type: ChoiceType, Choices: []string{"unit-side", "system-side"}, Help: "which side of the isolating valve it stands"}
	reliefOn           = Slot{Name: "on", Label: "on", Type: PartsType, List: true, Help: "the part it protects"}
	reliefDischargesTo = Slot{Name: "discharges-to", Label: "discharges-to", Type: PartType, Help: "where its pipe ends"}
	reliefRated        = Slot{Name: "rated", Label: "rated", Dim: Power, Help: "heat it is rated to relieve"}
	reliefSeat         = Slot{Name: "seat", Label: "seat", Dim: Area, Help: "flow area of the seat"}
	reliefCoefficient  = Slot{Name: "coefficient", Label: "coefficient", Dim: Ratio, Low: 0.05, High: 1, Help: "certified discharge coefficient"}
	reliefInlet        = Slot{Name: "inlet", Label: "inlet", Dim: Length, Help: "length of pipe before it"}
	reliefNoStrainer   = Slot{Name: "no-strainer", Type: FlagType, Help: "nothing stands before it"}
)

// reliefSlots are what every safety valve states.
var reliefSlots = []*Slot{
	&reliefSize, &reliefSetPressure, &reliefPlace, &reliefOn, &reliefDischargesTo, &reliefRated, &reliefSeat,
	&reliefCoefficient, &reliefInlet, &reliefNoStrainer,
}

var unitRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "units", Name: DefinesMany, Kind: "unit", Block: MustBlock, Stage: 2,
		Help: "Heat generators of one kind, with what each of them has of its own.", Example: "units U1..U8 {\n}",
	},
	{
		In: []string{"units"}, Keyword: "type", Times: AtMostOnce, Stage: 2,
		Help: "The catalogue type of the units.", Example: "type Wall-100",
		Slots: []*Slot{
			{Name: "type", Type: PartType, Required: true, Refers: []string{"unit-type"}, Help: "type of a catalogue"},
		},
	},
	{
		In: []string{"units"}, Keyword: "pump", Times: AtMostOnce, Stage: 5,
		Help: "The pump of each unit.", Example: "pump Ring-32-80 non-return isolating flow-proving",
		Slots: []*Slot{
			{Name: "type", Type: PartType, Refers: []string{"pump-type"}, Help: "type of a catalogue"},
			{Name: "speed", Type: ChoiceType, Choices: []string{"variable", "constant"}, Help: "how it runs"},
			{Name: "setting", Label: "setting", Dim: Ratio, Low: 0.1, High: 1, Help: "share of full speed"},
			{Name: "non-return", Type: FlagType, Help: "a non-return valve stands in the unit's circuit"},
			{Name: "shut-off", Type: FlagType, Help: "a motorized valve shuts when the unit is off"},
			{Name: "isolating", Type: FlagType, Help: "valves on both sides of the pump"},
			{Name: "flow-proving", Type: FlagType, Help: "firing waits for proven flow"},
			{Name: "over-run", Label: "over-run", Dim: Time, Help: "runs on after firing"},
		},
	},
	{
		In: []string{"units"}, Keyword: "gas-valve", Times: AtMostOnce, Stage: 4,
		Help: "The isolating valve of each unit.", Example: "gas-valve DN25 lever union test-point",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "handle", Type: ChoiceType, Choices: []string{"lever", "key", "wheel"}, Help: "how it is worked"},
			{Name: "union", Type: FlagType, Help: "a union behind it"},
			{Name: "test-point", Type: FlagType, Help: "a test point at the unit's inlet"},
			{Name: "flexible", Type: FlagType, Help: "a flexible connector behind it"},
			{Name: "drip-leg", Type: FlagType, Help: "a sediment trap before the unit"},
		},
	},
	{
		In: []string{"units"}, Keyword: "water-valve", Times: AtMostOnce, Stage: 5,
		Help: "Isolating valves on the water side of each unit.", Example: "water-valve DN32 flow, return",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "sides", Type: ChoiceType, List: true, Required: true, Choices: []string{"flow", "return"}, Help: "where they stand"},
			{Name: "lockable", Type: FlagType, Help: "they can be locked"},
		},
	},
	{
		In: []string{"units"}, Keyword: "strainer", Times: AtMostOnce, Stage: 5,
		Help: "Strainer of each unit.", Example: "strainer DN32 return",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "side", Type: ChoiceType, Choices: []string{"flow", "return"}, Help: "where it stands"},
		},
	},
	{
		In: []string{"units"}, Keyword: "drain-cock", Times: AtMostOnce, Stage: 5,
		Help: "Drain cock between the isolating valves of each unit.", Example: "drain-cock DN15",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
		},
	},
	{
		In: []string{"units"}, Keyword: "vent", Times: AtMostOnce, Stage: 5,
		Help: "Air vent of each unit.", Example: "vent DN15",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "automatic", Type: FlagType, Help: "it vents by itself"},
		},
	},
	{
		In: []string{"units"}, Keyword: "thermometer", Times: AtMostOnce, Stage: 6,
		Help: "Thermometers of each unit.", Example: "thermometer flow, return",
		Slots: []*Slot{
			{Name: "sides", Type: ChoiceType, List: true, Required: true, Choices: []string{"flow", "return"}, Help: "where they stand"},
		},
	},
	{
		In: []string{"units"}, Keyword: "pressure-gauge", Times: AtMostOnce, Stage: 6,
		Help: "Pressure gauge of each unit.", Example: "pressure-gauge 0..6 bar",
		Slots: []*Slot{
			{Name: "span", Dim: Pressure, Forms: []NumberForm{Range}, Help: "what it shows"},
		},
	},
	{
		In: []string{"units"}, Keyword: "relief", Times: AtMostOnce, Stage: 6, Slots: reliefSlots,
		Help: "Safety valve of each unit.", Example: "relief DN20 3 bar unit-side discharges-to Tun-A",
	},
	{
		In: []string{"units"}, Keyword: "low-water", Times: AtMostOnce, Stage: 6,
		Help: "Low-water or low-pressure cut-out of each unit.", Example: "low-water 0.8 bar manual-reset",
		Slots: []*Slot{
			{Name: "setting", Dim: Pressure, Help: "pressure below which it stops firing"},
			{Name: "senses", Type: ChoiceType, Choices: []string{"level", "pressure", "flow"}, Help: "what it senses"},
			{Name: "manual-reset", Type: FlagType, Help: "it stays out until a person resets it"},
		},
	},
	{
		In: []string{"units"}, Keyword: "high-pressure", Times: AtMostOnce, Stage: 6,
		Help: "High-pressure cut-out of each unit.", Example: "high-pressure 2.7 bar manual-reset",
		Slots: []*Slot{
			{Name: "setting", Dim: Pressure, Required: true, Help: "pressure above which it stops firing"},
			{Name: "manual-reset", Type: FlagType, Help: "it stays out until a person resets it"},
		},
	},
	{
		In: []string{"units"}, Keyword: "limiter", Times: AtMostOnce, Stage: 6,
		Help: "Temperature limiter of each unit.", Example: "limiter 95 degC manual-reset",
		Slots: []*Slot{
			{Name: "setting", Dim: Temperature, Required: true, Low: 40, High: 130, Help: "water temperature at which it locks out"},
			{Name: "manual-reset", Type: FlagType, Help: "it stays out until a person resets it"},
		},
	},
	{
		In: []string{"units"}, Keyword: "trap", Times: AtMostOnce, Stage: 8,
		Help: "Condensate trap of each unit.", Example: "trap seal 120 mm drains-to Cond-main",
		Slots: []*Slot{
			{Name: "seal", Label: "seal", Dim: Length, Low: 0.01, High: 1, Help: "height of the water seal"},
			{Name: "drains-to", Label: "drains-to", Type: PartType, Help: "where it drains"},
			{Name: "primed", Type: FlagType, Help: "it is filled before the first firing"},
		},
	},
	{
		In: []string{"units"}, Keyword: "damper", Times: AtMostOnce, Stage: 7,
		Help: "Non-return damper in the flue outlet of each unit.", Example: "damper non-return DN110 spring",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Choices: []string{"non-return", "motorized"}, Help: "what it does"},
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "closes-by", Type: ChoiceType, Choices: []string{"spring", "gravity", "drive"}, Help: "what closes it"},
			{Name: "leakage", Label: "leakage", Dim: VolumeFlow, Help: "leakage when closed"},
		},
	},
	{
		In: []string{"units"}, Keyword: "cap", Times: AtMostOnce, Stage: 6,
		Help: "Spare connections of each unit between its isolating valves.", Example: "cap DN20 1 off spare",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "count", Dim: Count, Help: "how many"},
			{Name: "spare", Type: FlagType, Help: "for a later vessel or gauge"},
			{Name: "gasket", Type: FlagType, Help: "with gasket"},
		},
	},
	{
		In: []string{"units"}, Keyword: "isolator", Times: AtMostOnce, Stage: 10,
		Help: "Electrical isolator of each unit.", Example: "isolator lockable",
		Slots: []*Slot{
			{Name: "lockable", Type: FlagType, Help: "it can be locked off"},
		},
	},
}
