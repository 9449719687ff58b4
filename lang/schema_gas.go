package lang

// endSlots place a small part at an end of a run: "dead-end of Man-A".
func endSlots() []Slot {
	return slots(
		choice("end", "which end of the run", "dead-end", "live-end", "high-end", "low-end"),
		Slot{Name: "of", Label: "of", Type: PartType, Help: "the run it belongs to"},
	)
}

// runSlots are what every pipe of a run states.
func runSlots(rest ...any) []Slot {
	return slots(append([]any{
		material(), sizeSlot("nominal size"), qty("length", Length, "measured length").likely(0.01, 1000),
		qty("rise", Length, "height gained along the run; negative for a fall").by().likely(-100, 200),
		part("from", "where the flow comes from"),
		Slot{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where the flow goes"},
		fittingSlots(),
		qty("sleeves", Count, "sleeves where it crosses walls or floors").by(),
		qty("crossings", Count, "walls and floors that it crosses").by(),
		qty("support", Length, "distance from support to support").by().likely(0.1, 12),
		choice("route", "where it runs", "open", "in-duct", "buried", "outside", "in-void").by(),
	}, rest...)...)
}

var gasRows = []Row{
	{In: in("plant"), Keyword: "gas-run", Times: AtMostOnce, Block: MustBlock, Stage: 4, Help: "The gas pipes from the supply to every unit.", Example: "gas-run {\n}"},
	{
		In: in("gas-run"), Keyword: "regulator", Name: Defines, Stage: 4,
		Slots: slots(qty("inlet", Pressure, "pressure before it").suffix("inlet"), qty("outlet", Pressure, "pressure it holds behind it").suffix("outlet").need(),
			choice("vents-to", "where its vent ends", "outside", "inside", "no-vent").by(), flag("slam-shut", "a second device shuts on over-pressure"), flag("relief-valve", "a relief valve guards the outlet"),
			qty("lock-up", Pressure, "pressure behind it without flow").by(), qty("most", VolumeFlow, "greatest flow it passes").by(), qty("least", VolumeFlow, "least flow it controls").by(), typeOf("regulator-type")),
		Help: "A pressure regulator.", Example: "regulator Reg 75 mbar inlet 21 mbar outlet vents-to outside slam-shut",
	},
	{
		In: in("gas-run"), Keyword: "meter", Name: Defines, Stage: 4,
		Slots: slots(qty("rating", VolumeFlow, "greatest flow it measures"), qty("least", VolumeFlow, "least flow it measures").by(), qty("loss", Pressure, "loss at its rating").by(),
			choice("kind", "how it measures", "diaphragm", "rotary", "turbine", "ultrasonic"), qty("volume", Volume, "gas volume of the meter").by(), qty("cyclic-volume", Volume, "volume of one cycle").by(), flag("line-diagram", "a line diagram hangs beside it"), typeOf("meter-type")),
		Help: "A gas meter.", Example: "meter Meter 100 m3/h least 0.65 m3/h loss 1.2 mbar diaphragm",
	},
	{
		In: in("gas-run"), Keyword: "booster", Name: MayDefine, Stage: 4,
		Slots: slots(qty("gain", Pressure, "pressure it adds"), flag("inlet-switch", "it stops when its inlet pressure is low"), flag("non-return", "a non-return valve"), flag("bypass", "a bypass or relief"), flag("network-told", "the gas network was told")),
		Help:  "A gas booster, or the word none.", Example: "booster none",
	},
	{
		In: in("gas-run"), Keyword: "filter", Name: Defines, Stage: 4, Slots: slots(sizeSlot("nominal size"), qty("mesh", Length, "width of the mesh").by(), qty("loss", Pressure, "loss at full flow").by()),
		Help: "A gas filter.", Example: "filter Fil DN100 mesh 0.05 mm loss 0.4 mbar",
	},
	{
		In: in("gas-run", "headers", "secondary"), Keyword: "pipe", Name: Defines, Stage: 4, Slots: runSlots(),
		Help: "A length of pipe of one size, from one part to the next as the flow goes.", Example: "pipe G1 steel DN100 22 m rise 2.4 m from Meter to Shut-1 bends 5 off",
	},
	{
		In: in("gas-run"), Keyword: "valve", Name: Defines, Stage: 4,
		Slots: slots(choice("kind", "what it is for", "emergency", "isolating", "entry"), sizeSlot("nominal size"), flag("fail-closed", "it shuts when power fails"), flag("manual-reset", "a person opens it again"), flag("proving", "tightness is proved before it opens again"),
			flag("automatic", "it is driven"), qty("loss", Pressure, "loss at full flow").by(), part("on", "the pipe it stands in")),
		Help: "A valve in the gas run.", Example: "valve Shut-1 emergency DN100 fail-closed manual-reset loss 0.15 mbar",
	},
	{
		In: in("gas-run"), Keyword: "manifold", Name: Defines, Stage: 4,
		Slots: slots(material(), sizeSlot("nominal size"), qty("length", Length, "from the first take-off to the last").likely(0.1, 50),
			Slot{Name: "feeds", Label: "feeds", Type: PartsType, List: true, OrderCounts: true, Required: true, Help: "units in the order of their take-offs along the flow"}, qty("pitch", Length, "distance from take-off to take-off").by(), qty("support", Length, "distance from support to support").by()),
		Help: "The gas manifold with its take-offs.", Example: "manifold Man-A steel DN100 5.2 m feeds U1, U5, U2, U6",
	},
	{
		In: in("gas-run"), Keyword: "drop", Name: DefinesMany, Stage: 4, Slots: runSlots(),
		Help: "The pipe from the manifold to a unit.", Example: "drop GD1..GD8 steel DN25 0.9 m from Man-A to U1..U8 bends 2 off",
	},
	{
		In: in("gas-run", "headers", "secondary", "flue"), Keyword: "blank", Stage: 4, Slots: slots(sizeSlot("nominal size"), endSlots(), flag("gasket", "with gasket"), flag("seal", "with seal")),
		Help: "Closes an open end.", Example: "blank DN100 dead-end of Man-A gasket",
	},
	{
		In: in("gas-run"), Keyword: "purge-point", Stage: 4, Slots: slots(sizeSlot("nominal size"), endSlots(), flag("plugged", "closed with a plug"), flag("valved", "with a valve")),
		Help: "Where air leaves when gas is let in.", Example: "purge-point DN20 dead-end of Man-A plugged",
	},
	{
		In: in("gas-run", "flue"), Keyword: "test-point", Stage: 4, Slots: slots(sizeSlot("nominal size"), endSlots(), parts("on", "parts that have one")),
		Help: "Where a gauge or probe is put on.", Example: "test-point DN8 live-end of Man-A",
	},
	{
		In: in("gas-run"), Keyword: "drip-leg", Stage: 4, Slots: slots(sizeSlot("nominal size"), endSlots()),
		Help: "A sediment trap at the low end of a run.", Example: "drip-leg DN25 low-end of Man-A",
	},
	{
		In: in("gas-run"), Keyword: "sleeve", Stage: 4, Slots: slots(Slot{Name: "on", Label: "on", Type: PartType, Required: true, Help: "the pipe"}, flag("sealed", "sealed to the pipe at one end"), flag("vented", "open to outside air at the other")),
		Help: "A sleeve where a gas pipe crosses a wall or floor.", Example: "sleeve on G1 sealed vented",
	},
	{
		In: in("gas-run"), Keyword: "duct", Name: MayDefine, Stage: 4,
		Slots: slots(qty("area", Area, "cross-section of the duct"), qty("opening", Area, "free area of each vent, high and low").by(), parts("around", "pipes in it").need()),
		Help:  "A duct or void that a gas pipe runs in.", Example: "duct 0.04 m2 opening 0.04 m2 around G1",
	},
	single("gas-run", "fitting-allowance", 4, "Share added to the measured length for fittings not listed.", "fitting-allowance 10 %", qty("share", Ratio, "added to the length").need().likely(0, 2)),
	single("gas-run", "diversity", 4, "Share of the units taken to fire at once.", "diversity 1 ratio", qty("share", Ratio, "units firing over units installed").need().likely(0, 1)),
	{
		In: in("gas-run"), Keyword: "section", Stage: 4, Slots: slots(Slot{Name: "of", Label: "of", Type: PartType, Required: true, Help: "the pipe"}, qty("rate", VolumeFlow, "gas rate the designer sized it for").need().agrees("rate")),
		Help: "The rate that a pipe was sized for, as the designer states it.", Example: "section of G1 85 m3/h",
	},
	single("gas-run", "volume", 4, "Installation volume as the designer states it.", "volume 0.42 m3", qty("volume", Volume, "meter, pipes and fittings").need().agrees("installation-volume")),
}
