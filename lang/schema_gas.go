package lang

// Slots of pipes, and of small parts that stand at an end of a run: "dead-end of
// Man-A".
var (
	runMaterial = Slot{Name: "material", Type: ChoiceType, Choices: []string{"steel", "steel-heavy", "steel-40", "copper", "stainless", "polyethylene", "polypropylene", "plastic"}, Help: "what the pipe is made of: steel is EN 10255 medium, steel-40 is schedule 40"}
	placeEnd    = Slot{Name: "end", Type: ChoiceType, Choices: []string{"dead-end", "live-end", "high-end", "low-end"}, Help: "which end of the run"}
	placeOf     = Slot{Name: "of", Label: "of", Type: PartType, Help: "the run it belongs to"}
)

// runSlots are what every pipe of a run states.
var runSlots = []*Slot{
	&runMaterial,
	{Name: "size", Type: SizeType, Help: "nominal size"},
	{Name: "length", Dim: Length, Low: 0.01, High: 1000, Help: "measured length"},
	{Name: "rise", Label: "rise", Dim: Length, Low: -100, High: 200, Help: "height gained along the run; negative for a fall"},
	{Name: "from", Label: "from", Type: PartType, Help: "where the flow comes from"},
	{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where the flow goes"},
	{Name: "bends", Label: "bends", Dim: Count, Help: "bends or elbows of 90 degrees"},
	{Name: "half-bends", Label: "half-bends", Dim: Count, Help: "bends of 45 degrees"},
	{Name: "tees", Label: "tees", Dim: Count, Help: "tees passed straight through"},
	{Name: "branch-tees", Label: "branch-tees", Dim: Count, Help: "tees turned through"},
	{Name: "valves", Label: "valves", Dim: Count, Help: "full-bore valves in the run"},
	{Name: "reducers", Label: "reducers", Dim: Count, Help: "changes of size"},
	{Name: "unions", Label: "unions", Dim: Count, Help: "unions"},
	{Name: "loss", Label: "loss", Dim: Pressure, Help: "further loss at full flow"},
	{Name: "loss-coefficient", Label: "loss-coefficient", Dim: Ratio, High: 100, Help: "sum of further loss coefficients"},
	{Name: "sleeves", Label: "sleeves", Dim: Count, Help: "sleeves where it crosses walls or floors"},
	{Name: "crossings", Label: "crossings", Dim: Count, Help: "walls and floors that it crosses"},
	{Name: "support", Label: "support", Dim: Length, Low: 0.1, High: 12, Help: "distance from support to support"},
	{Name: "route", Label: "route", Type: ChoiceType, Choices: []string{"open", "in-duct", "buried", "outside", "in-void"}, Help: "where it runs"},
}

var gasRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "gas-run", Times: AtMostOnce, Block: MustBlock, Stage: 4,
		Help: "The gas pipes from the supply to every unit.", Example: "gas-run {\n}",
	},
	{
		In: []string{"gas-run"}, Keyword: "regulator", Name: Defines, Stage: 4,
		Help: "A pressure regulator.", Example: "regulator Reg 75 mbar inlet 21 mbar outlet vents-to outside slam-shut",
		Slots: []*Slot{
			{Name: "inlet", Suffix: "inlet", Dim: Pressure, Help: "pressure before it"},
			{Name: "outlet", Suffix: "outlet", Dim: Pressure, Required: true, Help: "pressure it holds behind it"},
			{Name: "vents-to", Label: "vents-to", Type: ChoiceType, Choices: []string{"outside", "inside", "no-vent"}, Help: "where its vent ends"},
			{Name: "slam-shut", Type: FlagType, Help: "a second device shuts on over-pressure"},
			{Name: "relief-valve", Type: FlagType, Help: "a relief valve guards the outlet"},
			{Name: "lock-up", Label: "lock-up", Dim: Pressure, Help: "pressure behind it without flow"},
			{Name: "most", Label: "most", Dim: VolumeFlow, Help: "greatest flow it passes"},
			{Name: "least", Label: "least", Dim: VolumeFlow, Help: "least flow it controls"},
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"regulator-type"}, Help: "the catalogue type it follows"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "meter", Name: Defines, Stage: 4,
		Help: "A gas meter.", Example: "meter Meter 100 m3/h least 0.65 m3/h loss 1.2 mbar diaphragm",
		Slots: []*Slot{
			{Name: "rating", Dim: VolumeFlow, Help: "greatest flow it measures"},
			{Name: "least", Label: "least", Dim: VolumeFlow, Help: "least flow it measures"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at its rating"},
			{Name: "kind", Type: ChoiceType, Choices: []string{"diaphragm", "rotary", "turbine", "ultrasonic"}, Help: "how it measures"},
			{Name: "volume", Label: "volume", Dim: Volume, Help: "gas volume of the meter"},
			{Name: "cyclic-volume", Label: "cyclic-volume", Dim: Volume, Help: "volume of one cycle"},
			{Name: "line-diagram", Type: FlagType, Help: "a line diagram hangs beside it"},
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"meter-type"}, Help: "the catalogue type it follows"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "booster", Name: MayDefine, Stage: 4,
		Help: "A gas booster, or the word none.", Example: "booster none",
		Slots: []*Slot{
			{Name: "gain", Dim: Pressure, Help: "pressure it adds"},
			{Name: "inlet-switch", Type: FlagType, Help: "it stops when its inlet pressure is low"},
			{Name: "non-return", Type: FlagType, Help: "a non-return valve"},
			{Name: "bypass", Type: FlagType, Help: "a bypass or relief"},
			{Name: "network-told", Type: FlagType, Help: "the gas network was told"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "filter", Name: Defines, Stage: 4,
		Help: "A gas filter.", Example: "filter Fil DN100 mesh 0.05 mm loss 0.4 mbar",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "mesh", Label: "mesh", Dim: Length, Help: "width of the mesh"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
		},
	},
	{
		In: []string{"gas-run", "headers", "secondary"}, Keyword: "pipe", Name: Defines, Stage: 4, Slots: runSlots,
		Help: "A length of pipe of one size, from one part to the next as the flow goes.", Example: "pipe G1 steel DN100 22 m rise 2.4 m from Meter to Shut-1 bends 5 off",
	},
	{
		In: []string{"gas-run"}, Keyword: "valve", Name: Defines, Stage: 4,
		Help: "A valve in the gas run.", Example: "valve Shut-1 emergency DN100 fail-closed manual-reset loss 0.15 mbar",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Choices: []string{"emergency", "isolating", "entry"}, Help: "what it is for"},
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "fail-closed", Type: FlagType, Help: "it shuts when power fails"},
			{Name: "manual-reset", Type: FlagType, Help: "a person opens it again"},
			{Name: "proving", Type: FlagType, Help: "tightness is proved before it opens again"},
			{Name: "automatic", Type: FlagType, Help: "it is driven"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
			{Name: "on", Label: "on", Type: PartType, Help: "the pipe it stands in"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "manifold", Name: Defines, Stage: 4,
		Help: "The gas manifold with its take-offs.", Example: "manifold Man-A steel DN100 5.2 m feeds U1, U5, U2, U6",
		Slots: []*Slot{
			&runMaterial,
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "length", Dim: Length, Low: 0.1, High: 50, Help: "from the first take-off to the last"},
			{Name: "feeds", Label: "feeds", Type: PartsType, List: true, Required: true, OrderCounts: true, Help: "units in the order of their take-offs along the flow"},
			{Name: "pitch", Label: "pitch", Dim: Length, Help: "distance from take-off to take-off"},
			{Name: "support", Label: "support", Dim: Length, Help: "distance from support to support"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "drop", Name: DefinesMany, Stage: 4, Slots: runSlots,
		Help: "The pipe from the manifold to a unit.", Example: "drop GD1..GD8 steel DN25 0.9 m from Man-A to U1..U8 bends 2 off",
	},
	{
		In: []string{"gas-run", "headers", "secondary", "flue"}, Keyword: "blank", Stage: 4,
		Help: "Closes an open end.", Example: "blank DN100 dead-end of Man-A gasket",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
			{Name: "gasket", Type: FlagType, Help: "with gasket"},
			{Name: "seal", Type: FlagType, Help: "with seal"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "purge-point", Stage: 4,
		Help: "Where air leaves when gas is let in.", Example: "purge-point DN20 dead-end of Man-A plugged",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
			{Name: "plugged", Type: FlagType, Help: "closed with a plug"},
			{Name: "valved", Type: FlagType, Help: "with a valve"},
		},
	},
	{
		In: []string{"gas-run", "flue"}, Keyword: "test-point", Stage: 4,
		Help: "Where a gauge or probe is put on.", Example: "test-point DN8 live-end of Man-A",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
			{Name: "on", Label: "on", Type: PartsType, List: true, Help: "parts that have one"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "drip-leg", Stage: 4,
		Help: "A sediment trap at the low end of a run.", Example: "drip-leg DN25 low-end of Man-A",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "sleeve", Stage: 4,
		Help: "A sleeve where a gas pipe crosses a wall or floor.", Example: "sleeve on G1 sealed vented",
		Slots: []*Slot{
			{Name: "on", Label: "on", Type: PartType, Required: true, Help: "the pipe"},
			{Name: "sealed", Type: FlagType, Help: "sealed to the pipe at one end"},
			{Name: "vented", Type: FlagType, Help: "open to outside air at the other"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "duct", Name: MayDefine, Stage: 4,
		Help: "A duct or void that a gas pipe runs in.", Example: "duct 0.04 m2 opening 0.04 m2 around G1",
		Slots: []*Slot{
			{Name: "area", Dim: Area, Help: "cross-section of the duct"},
			{Name: "opening", Label: "opening", Dim: Area, Help: "free area of each vent, high and low"},
			{Name: "around", Label: "around", Type: PartsType, List: true, Required: true, Help: "pipes in it"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "fitting-allowance", Times: AtMostOnce, Stage: 4,
		Help: "Share added to the measured length for fittings not listed.", Example: "fitting-allowance 10 %",
		Slots: []*Slot{
			{Name: "share", Dim: Ratio, Required: true, High: 2, Help: "added to the length"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "diversity", Times: AtMostOnce, Stage: 4,
		Help: "Share of the units taken to fire at once.", Example: "diversity 1 ratio",
		Slots: []*Slot{
			{Name: "share", Dim: Ratio, Required: true, High: 1, Help: "units firing over units installed"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "section", Stage: 4,
		Help: "The rate that a pipe was sized for, as the designer states it.", Example: "section of G1 85 m3/h",
		Slots: []*Slot{
			{Name: "of", Label: "of", Type: PartType, Required: true, Help: "the pipe"},
			{Name: "rate", Dim: VolumeFlow, Required: true, Computed: "rate", Help: "gas rate the designer sized it for"},
		},
	},
	{
		In: []string{"gas-run"}, Keyword: "volume", Times: AtMostOnce, Stage: 4,
		Help: "Installation volume as the designer states it.", Example: "volume 0.42 m3",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Computed: "installation-volume", Help: "meter, pipes and fittings"},
		},
	},
}
