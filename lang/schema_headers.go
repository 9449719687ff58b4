package lang

var headerRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "headers", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "Flow and return headers with the units' branches. Orders are along the flow.", Example: "headers reverse-return {\n}",
		Slots: []*Slot{
			{Name: "order", Type: ChoiceType, Required: true, Choices: []string{"direct-return", "reverse-return"}, Help: "how the return runs"},
		},
	},
	{
		In: []string{"headers"}, Keyword: "header", Name: Defines, Stage: 5,
		Help: "A flow or return header.", Example: "header Flow-H steel DN125 5.2 m upper from U1..U8 to Exch",
		Slots: []*Slot{
			&runMaterial,
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "length", Dim: Length, Low: 0.1, High: 60, Help: "from the first take-off to the last"},
			{Name: "level", Type: ChoiceType, Choices: []string{"upper", "lower"}, Help: "which lies above"},
			{Name: "from", Label: "from", Type: PartsType, List: true, Help: "where the water comes from"},
			{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where the water goes"},
			{Name: "pitch", Label: "pitch", Dim: Length, Help: "distance from take-off to take-off"},
			{Name: "loss-coefficient", Label: "loss-coefficient", Dim: Ratio, High: 10, Help: "of each tee passed straight through"},
			{Name: "support", Label: "support", Dim: Length, Help: "distance from support to support"},
		},
	},
	{
		In: []string{"headers"}, Keyword: "take-off", Name: Refers, Refers: []string{"header"}, Stage: 5,
		Help: "The order of the units along a header, as the water flows.", Example: "take-off Flow-H U1, U5, U2, U6",
		Slots: []*Slot{
			{Name: "units", Type: PartsType, List: true, Required: true, Refers: []string{"unit"}, OrderCounts: true, Help: "units in order along the flow"},
		},
	},
	{
		In: []string{"headers"}, Keyword: "branch", Name: DefinesMany, Stage: 5, Slots: runSlots,
		Help: "The pipe between a unit and a header.", Example: "branch FB1..FB8 steel DN32 1.4 m from U1..U8 to Flow-H bends 3 off",
	},
	{
		In: []string{"headers", "secondary"}, Keyword: "vent", Stage: 5,
		Help: "An air vent.", Example: "vent DN15 high-end of Flow-H",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
			{Name: "automatic", Type: FlagType, Help: "it vents by itself"},
			{Name: "on", Label: "on", Type: PartType, Help: "the part it stands on"},
		},
	},
	{
		In: []string{"headers", "secondary", "separation"}, Keyword: "drain-cock", Stage: 5,
		Help: "A drain cock.", Example: "drain-cock DN25 low-end of Return-H",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			&placeEnd, &placeOf,
			{Name: "on", Label: "on", Type: PartType, Help: "the part it stands on"},
			{Name: "hose", Type: FlagType, Help: "with a hose union"},
		},
	},
	{
		In: []string{"headers", "secondary"}, Keyword: "water-valve", Name: MayDefine, Stage: 5,
		Help: "Isolating or balancing valves in the water pipes.", Example: "water-valve DN125 isolating on PF",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "kind", Type: ChoiceType, Choices: []string{"isolating", "balancing"}, Help: "what it is for"},
			{Name: "on", Label: "on", Type: PartsType, List: true, Required: true, Help: "pipes it stands in"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
			{Name: "coefficient", Label: "coefficient", Dim: FlowCoefficient, Help: "flow coefficient"},
		},
	},
	{
		In: []string{"headers", "secondary", "separation"}, Keyword: "thermometer", Stage: 5,
		Help: "Thermometers.", Example: "thermometer on Flow-H, Return-H",
		Slots: []*Slot{
			{Name: "on", Label: "on", Type: PartsType, List: true, Required: true, Help: "parts that have one"},
			{Name: "span", Dim: Temperature, Forms: []NumberForm{Range}, Help: "what it shows"},
		},
	},
	{
		In: []string{"headers", "secondary", "safety"}, Keyword: "pressure-gauge", Stage: 6,
		Help: "Pressure gauges.", Example: "pressure-gauge on Flow-H 0..6 bar test-cock",
		Slots: []*Slot{
			{Name: "on", Label: "on", Type: PartsType, List: true, Required: true, Help: "parts that have one"},
			{Name: "span", Dim: Pressure, Forms: []NumberForm{Range}, Help: "what it shows"},
			{Name: "test-cock", Type: FlagType, Help: "with a test cock"},
		},
	},
	{
		In: []string{"headers", "secondary"}, Keyword: "strainer", Name: MayDefine, Stage: 5,
		Help: "A strainer in the common pipes.", Example: "strainer DN125 on PR",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "on", Label: "on", Type: PartType, Help: "the pipe it stands in"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
		},
	},
	{
		In: []string{"headers", "secondary"}, Keyword: "air-separator", Name: MayDefine, Stage: 5,
		Help: "An air separator.", Example: "air-separator DN125 on PF",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "on", Label: "on", Type: PartType, Help: "the pipe it stands in"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
		},
	},
	{
		In: []string{"headers", "secondary", "safety"}, Keyword: "cap", Stage: 6,
		Help: "Capped spare connections.", Example: "cap DN20 2 off spare on Flow-H",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "count", Dim: Count, Help: "how many"},
			{Name: "spare", Type: FlagType, Help: "for later use"},
			{Name: "on", Label: "on", Type: PartType, Help: "the part they are on"},
			{Name: "gasket", Type: FlagType, Help: "with gasket"},
		},
	},
	{
		In: []string{"headers"}, Keyword: "spare", Stage: 6,
		Help: "Spare connections that a part has, to be capped.", Example: "spare DN20 2 off on Flow-H",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "count", Dim: Count, Required: true, Help: "how many"},
			{Name: "on", Label: "on", Type: PartType, Required: true, Help: "the part they are on"},
			{Name: "open", Type: FlagType, Help: "they are not closed"},
		},
	},
}

var separationRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "separation", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "What stands between the unit circuit and the building's circuits.", Example: "separation {\n}",
	},
	{
		In: []string{"separation"}, Keyword: "exchanger", Name: Defines, Stage: 5,
		Help: "A plate heat exchanger.", Example: "exchanger Exch type Plate-44",
		Slots: []*Slot{
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"exchanger-type"}, Help: "the catalogue type it follows"},
			{Name: "area", Label: "area", Dim: Area, Help: "heat transfer area"},
			{Name: "conductance", Label: "conductance", Dim: Transmittance, Help: "clean"},
			{Name: "primary", Label: "primary", Dim: Temperature, Forms: []NumberForm{Pair}, Help: "flow over return"},
			{Name: "secondary", Label: "secondary", Dim: Temperature, Forms: []NumberForm{Pair}, Help: "flow over return"},
			{Name: "insulated", Type: FlagType, Help: "with insulation"},
		},
	},
	{
		In: []string{"separation"}, Keyword: "separator", Name: Defines, Stage: 5,
		Help: "A hydraulic separator.", Example: "separator Sep DN250 ports DN100 vented drained",
		Slots: []*Slot{
			{Name: "body", Type: SizeType, Required: true, Help: "nominal size of the body"},
			{Name: "ports", Label: "ports", Type: SizeType, Help: "nominal size of the four ports"},
			{Name: "height", Label: "height", Dim: Length, Help: "height of the body"},
			{Name: "vented", Type: FlagType, Help: "with an air vent on top"},
			{Name: "drained", Type: FlagType, Help: "with a drain at the foot"},
			{Name: "insulated", Type: FlagType, Help: "with insulation"},
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"separator-type"}, Help: "the catalogue type it follows"},
		},
	},
	{
		In: []string{"separation", "headers", "secondary"}, Keyword: "filter", Name: Defines, Stage: 5,
		Help: "A filter or dirt separator in the water.", Example: "filter Mag magnetic DN125 on PR",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Choices: []string{"magnetic", "dirt", "side-stream"}, Help: "how it filters"},
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "on", Label: "on", Type: PartType, Help: "the pipe it stands in"},
			{Name: "loss", Label: "loss", Dim: Pressure, Help: "loss at full flow"},
		},
	},
	{
		In: []string{"separation"}, Keyword: "old-circuits", Times: AtMostOnce, Stage: 5,
		Help: "Circuits that stay from an older plant.", Example: "old-circuits since 1974-01 contaminated open-vented-once",
		Slots: []*Slot{
			{Name: "since", Label: "since", Type: DateType, Help: "when they were built"},
			{Name: "state", Type: ChoiceType, Choices: []string{"contaminated", "cleaned", "unchecked"}, Help: "what is known of their water"},
			{Name: "open-vented-once", Type: FlagType, Help: "they were open to the air"},
			{Name: "open-vented", Type: FlagType, Help: "they are open to the air"},
			{Name: "permeable-pipe", Type: FlagType, Help: "plastic pipe that lets oxygen in"},
		},
	},
	{
		In: []string{"separation"}, Keyword: "glycol", Times: AtMostOnce, Stage: 5,
		Help: "Antifreeze in the water.", Example: "glycol propylene 30 %",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"propylene", "ethylene"}, Help: "which"},
			{Name: "share", Dim: Ratio, Required: true, High: 0.7, Help: "share by volume"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary", "both"}, Help: "where"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "secondary", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "The circuits behind the separation.", Example: "secondary {\n}",
	},
	{
		In: []string{"secondary"}, Keyword: "circuit", Name: Defines, Stage: 5,
		Help: "A heating circuit.", Example: "circuit Rad 24.0 m3/h 62 kPa 70/50 degC mixed weather-led",
		Slots: []*Slot{
			{Name: "flow", Dim: VolumeFlow, Required: true, Help: "design flow"},
			{Name: "loss", Dim: Pressure, Help: "loss at design flow"},
			{Name: "temperatures", Dim: Temperature, Forms: []NumberForm{Pair}, Help: "flow over return"},
			{Name: "control", Type: ChoiceType, Choices: []string{"mixed", "constant", "throttled"}, Help: "how it is controlled"},
			{Name: "weather-led", Type: FlagType, Help: "its flow temperature follows the weather"},
			{Name: "closing-valves", Type: FlagType, Help: "its valves may all close"},
			{Name: "bypass", Type: FlagType, Help: "a bypass keeps a least flow"},
			{Name: "load", Label: "load", Type: PartType, Refers: []string{"load"}, Help: "the load it serves"},
		},
	},
	{
		In: []string{"secondary", "headers"}, Keyword: "pump", Name: Defines, Kind: "plant-pump", Stage: 5,
		Help: "A pump that is not a unit's own.", Example: "pump Sec-P type Ring-65 on SF variable",
		Slots: []*Slot{
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"pump-type"}, Help: "the catalogue type it follows"},
			{Name: "on", Label: "on", Type: PartType, Help: "the pipe or circuit it stands in"},
			{Name: "speed", Type: ChoiceType, Choices: []string{"variable", "constant"}, Help: "how it runs"},
			{Name: "setting", Label: "setting", Dim: Ratio, Help: "share of full speed"},
			{Name: "flow", Label: "flow", Dim: VolumeFlow, Help: "duty flow"},
			{Name: "head", Label: "head", Dim: Pressure, Help: "duty head"},
			{Name: "count", Dim: Count, Help: "pumps side by side"},
			{Name: "standby", Type: FlagType, Help: "one of them waits"},
		},
	},
	{
		In: []string{"secondary"}, Keyword: "content", Times: AtMostOnce, Stage: 6,
		Help: "Water content of the building's circuits.", Example: "content 6400 l",
		Slots: []*Slot{
			{Name: "content", Dim: Volume, Required: true, Low: 0.001, High: 1000, Help: "water"},
		},
	},
	{
		In: []string{"secondary"}, Keyword: "emitters", Stage: 6,
		Help: "Heat emitters, for an estimate of the water content.", Example: "emitters panel-radiators 300 kW",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"panel-radiators", "low-content", "fan-coils", "cast-iron", "floor-heating"}, Help: "what gives the heat"},
			{Name: "power", Dim: Power, Required: true, Help: "design output"},
		},
	},
}

var safetyRows = []Entry{
	{
		In: []string{"plant"}, Keyword: "safety", Times: AtMostOnce, Block: MustBlock, Stage: 6,
		Help: "Safety valves, vessels, pressures and discharge of the water side.", Example: "safety {\n}",
	},
	{
		In: []string{"safety"}, Keyword: "vessel", Name: Defines, Stage: 6,
		Help: "An expansion vessel.", Example: "vessel Ves-P 50 l precharge 1.3 bar on Return-H primary lockable-valve drain",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Low: 0.001, High: 100, Help: "nominal volume"},
			{Name: "precharge", Label: "precharge", Dim: Pressure, High: 1e6, Help: "gas pressure when empty of water"},
			{Name: "on", Label: "on", Type: PartType, Help: "where it joins"},
			{Name: "side", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
			{Name: "valve", Type: ChoiceType, Choices: []string{"lockable-valve", "plain-valve", "cap-valve", "no-valve"}, Help: "what can shut it off"},
			{Name: "drain", Type: FlagType, Help: "it can be drained"},
			{Name: "rating", Label: "rating", Dim: Pressure, Help: "highest working pressure"},
			{Name: "type", Label: "type", Type: PartType, Refers: []string{"vessel-type"}, Help: "the catalogue type it follows"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "static", Stage: 6,
		Help: "Static pressure at the vessel.", Example: "static 1.0 bar primary",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, High: 2e6, Help: "of the water column above the vessel"},
			{Name: "side", Type: ChoiceType, Required: true, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "fill", Stage: 6,
		Help: "Cold fill pressure.", Example: "fill 1.6 bar primary",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, High: 2e6, Help: "cold"},
			{Name: "side", Type: ChoiceType, Required: true, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "content", Stage: 6,
		Help: "Water content of a circuit as the designer states it.", Example: "content 420 l primary",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Low: 0.001, High: 1000, Help: "water"},
			{Name: "side", Type: ChoiceType, Required: true, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "weakest", Stage: 6,
		Help: "Rating of the weakest part of a circuit.", Example: "weakest 6 bar secondary",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "lowest rated part"},
			{Name: "side", Type: ChoiceType, Required: true, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "relief", Name: Defines, Stage: 6,
		Help: "A safety valve that is not a unit's own.", Example: "relief Rel-S DN32 3 bar on SF discharges-to Tun-A",
		Slots: []*Slot{
			&reliefSize, &reliefSetPressure, &reliefPlace, &reliefOn, &reliefDischargesTo, &reliefRated, &reliefSeat, &reliefCoefficient, &reliefInlet, &reliefNoStrainer,
			{Name: "circuit", Type: ChoiceType, Choices: []string{"primary", "secondary"}, Help: "which circuit"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "discharge", Name: MayDefine, Stage: 6,
		Help: "The discharge pipe of safety valves.", Example: "discharge copper 35 mm 4.2 m from U1..U8 to Tun-A elbows 3 off",
		Slots: []*Slot{
			&runMaterial,
			{Name: "size", Type: SizeType, Help: "nominal size"},
			{Name: "length", Dim: Length, Help: "measured length"},
			{Name: "from", Label: "from", Type: PartsType, List: true, Required: true, Help: "valves it serves"},
			{Name: "to", Label: "to", Type: PartType, Required: true, Help: "where it ends"},
			{Name: "elbows", Label: "elbows", Dim: Count, Help: "elbows"},
			{Name: "falls", Label: "falls", Dim: Slope, Help: "continuous fall"},
			{Name: "ends", Type: ChoiceType, Choices: []string{"visible", "hidden"}, Help: "how it ends"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "tundish", Name: Defines, Stage: 6,
		Help: "The open funnel in a discharge pipe, where a discharge is seen.", Example: "tundish Tun-A visible drains-to Gully air-break",
		Slots: []*Slot{
			{Name: "visible", Type: FlagType, Help: "it can be seen"},
			{Name: "drains-to", Label: "drains-to", Type: PartType, Help: "where it drains"},
			{Name: "air-break", Type: FlagType, Help: "an air break before the drain"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "pressurisation", Times: AtMostOnce, Stage: 6,
		Help: "The pressurisation unit and its cut-outs.", Example: "pressurisation low 1.2 bar high 2.7 bar stops-firing",
		Slots: []*Slot{
			{Name: "low", Label: "low", Dim: Pressure, Help: "low-pressure cut-out"},
			{Name: "high", Label: "high", Dim: Pressure, Help: "high-pressure cut-out"},
			{Name: "fills-to", Label: "fills-to", Dim: Pressure, Help: "cold fill"},
			{Name: "stops-firing", Type: FlagType, Help: "the cut-outs stop the burners"},
			{Name: "leak-counter", Type: FlagType, Help: "it counts what it fills"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "mains-link", Times: AtMostOnce, Stage: 6,
		Help: "How the circuit is filled from the mains.", Example: "mains-link temporary break-tank",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"temporary", "permanent"}, Help: "how long it stays"},
			{Name: "protection", Type: ChoiceType, Choices: []string{"break-tank", "air-gap", "backflow-preventer", "check-valve"}, Help: "what guards the mains"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "low-water", Times: AtMostOnce, Stage: 6,
		Help: "Low-water or low-pressure cut-out of the plant.", Example: "low-water 0.8 bar manual-reset",
		Slots: []*Slot{
			{Name: "setting", Dim: Pressure, Help: "pressure below which firing stops"},
			{Name: "manual-reset", Type: FlagType, Help: "a person resets it"},
		},
	},
	{
		In: []string{"safety"}, Keyword: "hot-water-storage", Times: AtMostOnce, Stage: 6,
		Help: "Unvented hot-water storage.", Example: "hot-water-storage unvented 500 l",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"unvented", "vented"}, Help: "vented or not"},
			{Name: "volume", Dim: Volume, Help: "water"},
			{Name: "temperature", Label: "temperature", Dim: Temperature, Help: "stored at"},
		},
	},
}
