package lang

var headerRows = []Row{
	{
		In: in("plant"), Keyword: "headers", Times: AtMostOnce, Block: MustBlock, Stage: 5, Slots: slots(choice("order", "how the return runs", "direct-return", "reverse-return").need()),
		Help: "Flow and return headers with the units' branches. Orders are along the flow.", Example: "headers reverse-return {\n}",
	},
	{
		In: in("headers"), Keyword: "header", Name: Defines, Stage: 5,
		Slots: slots(material(), sizeSlot("nominal size"), qty("length", Length, "from the first take-off to the last").likely(0.1, 60), choice("level", "which lies above", "upper", "lower"),
			Slot{Name: "from", Label: "from", Type: PartsType, List: true, Help: "where the water comes from"}, Slot{Name: "to", Label: "to", Type: PartsType, List: true, Help: "where the water goes"}, qty("pitch", Length, "distance from take-off to take-off").by(), qty("loss-coefficient", Ratio, "of each tee passed straight through").by().likely(0, 10), qty("support", Length, "distance from support to support").by()),
		Help: "A flow or return header.", Example: "header Flow-H steel DN125 5.2 m upper from U1..U8 to Exch",
	},
	{
		In: in("headers"), Keyword: "take-off", Name: Refers, Refers: []string{"header"}, Stage: 5,
		Slots: slots(Slot{Name: "units", Type: PartsType, List: true, OrderCounts: true, Required: true, Refers: []string{"unit"}, Help: "units in order along the flow"}),
		Help:  "The order of the units along a header, as the water flows.", Example: "take-off Flow-H U1, U5, U2, U6",
	},
	{
		In: in("headers"), Keyword: "branch", Name: DefinesMany, Stage: 5, Slots: runSlots(),
		Help: "The pipe between a unit and a header.", Example: "branch FB1..FB8 steel DN32 1.4 m from U1..U8 to Flow-H bends 3 off",
	},
	{
		In: in("headers", "secondary"), Keyword: "vent", Stage: 5, Slots: slots(sizeSlot("nominal size"), endSlots(), flag("automatic", "it vents by itself"), part("on", "the part it stands on")),
		Help: "An air vent.", Example: "vent DN15 high-end of Flow-H",
	},
	{
		In: in("headers", "secondary", "separation"), Keyword: "drain-cock", Stage: 5, Slots: slots(sizeSlot("nominal size"), endSlots(), part("on", "the part it stands on"), flag("hose", "with a hose union")),
		Help: "A drain cock.", Example: "drain-cock DN25 low-end of Return-H",
	},
	{
		In: in("headers", "secondary"), Keyword: "water-valve", Name: MayDefine, Stage: 5, Slots: slots(sizeSlot("nominal size"), choice("kind", "what it is for", "isolating", "balancing"), parts("on", "pipes it stands in").need(), qty("loss", Pressure, "loss at full flow").by(), qty("coefficient", FlowCoefficient, "flow coefficient").by()),
		Help: "Isolating or balancing valves in the water pipes.", Example: "water-valve DN125 isolating on PF",
	},
	{
		In: in("headers", "secondary", "separation"), Keyword: "thermometer", Stage: 5, Slots: slots(parts("on", "parts that have one").need(), qty("span", Temperature, "what it shows").ranged()),
		Help: "Thermometers.", Example: "thermometer on Flow-H, Return-H",
	},
	{
		In: in("headers", "secondary", "safety"), Keyword: "pressure-gauge", Stage: 6, Slots: slots(parts("on", "parts that have one").need(), qty("span", Pressure, "what it shows").ranged(), flag("test-cock", "with a test cock")),
		Help: "Pressure gauges.", Example: "pressure-gauge on Flow-H 0..6 bar test-cock",
	},
	{
		In: in("headers", "secondary"), Keyword: "strainer", Name: MayDefine, Stage: 5, Slots: slots(sizeSlot("nominal size"), part("on", "the pipe it stands in"), qty("loss", Pressure, "loss at full flow").by()),
		Help: "A strainer in the common pipes.", Example: "strainer DN125 on PR",
	},
	{
		In: in("headers", "secondary"), Keyword: "air-separator", Name: MayDefine, Stage: 5, Slots: slots(sizeSlot("nominal size"), part("on", "the pipe it stands in"), qty("loss", Pressure, "loss at full flow").by()),
		Help: "An air separator.", Example: "air-separator DN125 on PF",
	},
	{
		In: in("headers", "secondary", "safety"), Keyword: "cap", Stage: 6, Slots: slots(sizeSlot("nominal size"), qty("count", Count, "how many"), flag("spare", "for later use"), part("on", "the part they are on"), flag("gasket", "with gasket")),
		Help: "Capped spare connections.", Example: "cap DN20 2 off spare on Flow-H",
	},
	{
		In: in("headers"), Keyword: "spare", Stage: 6, Slots: slots(sizeSlot("nominal size"), qty("count", Count, "how many").need(), Slot{Name: "on", Label: "on", Type: PartType, Required: true, Help: "the part they are on"}, flag("open", "they are not closed")),
		Help: "Spare connections that a part has, to be capped.", Example: "spare DN20 2 off on Flow-H",
	},
}

var separationRows = []Row{
	{In: in("plant"), Keyword: "separation", Times: AtMostOnce, Block: MustBlock, Stage: 5, Help: "What stands between the unit circuit and the building's circuits.", Example: "separation {\n}"},
	{
		In: in("separation"), Keyword: "exchanger", Name: Defines, Stage: 5,
		Slots: slots(typeOf("exchanger-type"), qty("area", Area, "heat transfer area").by(), qty("conductance", Transmittance, "clean").by(), qty("primary", Temperature, "flow over return").by().paired(), qty("secondary", Temperature, "flow over return").by().paired(), flag("insulated", "with insulation")),
		Help:  "A plate heat exchanger.", Example: "exchanger Exch type Plate-44",
	},
	{
		In: in("separation"), Keyword: "separator", Name: Defines, Stage: 5,
		Slots: slots(Slot{Name: "body", Type: SizeType, Required: true, Help: "nominal size of the body"}, Slot{Name: "ports", Label: "ports", Type: SizeType, Help: "nominal size of the four ports"}, qty("height", Length, "height of the body").by(), flag("vented", "with an air vent on top"), flag("drained", "with a drain at the foot"), flag("insulated", "with insulation"), typeOf("separator-type")),
		Help:  "A hydraulic separator.", Example: "separator Sep DN250 ports DN100 vented drained",
	},
	{
		In: in("separation", "headers", "secondary"), Keyword: "filter", Name: Defines, Stage: 5, Slots: slots(choice("kind", "how it filters", "magnetic", "dirt", "side-stream"), sizeSlot("nominal size"), part("on", "the pipe it stands in"), qty("loss", Pressure, "loss at full flow").by()),
		Help: "A filter or dirt separator in the water.", Example: "filter Mag magnetic DN125 on PR",
	},
	single("separation", "old-circuits", 5, "Circuits that stay from an older plant.", "old-circuits since 1974-01 contaminated open-vented-once",
		date("since", "when they were built").by(), choice("state", "what is known of their water", "contaminated", "cleaned", "unchecked"), flag("open-vented-once", "they were open to the air"), flag("open-vented", "they are open to the air"), flag("permeable-pipe", "plastic pipe that lets oxygen in")),
	single("separation", "glycol", 5, "Antifreeze in the water.", "glycol propylene 30 %", choice("kind", "which", "propylene", "ethylene").need(), qty("share", Ratio, "share by volume").need().likely(0, 0.7), choice("side", "where", "primary", "secondary", "both")),
	{In: in("plant"), Keyword: "secondary", Times: AtMostOnce, Block: MustBlock, Stage: 5, Help: "The circuits behind the separation.", Example: "secondary {\n}"},
	{
		In: in("secondary"), Keyword: "circuit", Name: Defines, Stage: 5,
		Slots: slots(qty("flow", VolumeFlow, "design flow").need(), qty("loss", Pressure, "loss at design flow"), qty("temperatures", Temperature, "flow over return").paired(), choice("control", "how it is controlled", "mixed", "constant", "throttled"), flag("weather-led", "its flow temperature follows the weather"),
			flag("closing-valves", "its valves may all close"), flag("bypass", "a bypass keeps a least flow"), part("load", "the load it serves", "load")),
		Help: "A heating circuit.", Example: "circuit Rad 24.0 m3/h 62 kPa 70/50 degC mixed weather-led",
	},
	{
		In: in("secondary", "headers"), Keyword: "pump", Name: Defines, Kind: "plant-pump", Stage: 5,
		Slots: slots(typeOf("pump-type"), part("on", "the pipe or circuit it stands in"), choice("speed", "how it runs", "variable", "constant"), qty("setting", Ratio, "share of full speed").by(), qty("flow", VolumeFlow, "duty flow").by(), qty("head", Pressure, "duty head").by(), qty("count", Count, "pumps side by side"), flag("standby", "one of them waits")),
		Help:  "A pump that is not a unit's own.", Example: "pump Sec-P type Ring-65 on SF variable",
	},
	single("secondary", "content", 6, "Water content of the building's circuits.", "content 6400 l", qty("content", Volume, "water").need().likely(0.001, 1000)),
	{
		In: in("secondary"), Keyword: "emitters", Stage: 6, Slots: slots(choice("kind", "what gives the heat", "panel-radiators", "low-content", "fan-coils", "cast-iron", "floor-heating").need(), qty("power", Power, "design output").need()),
		Help: "Heat emitters, for an estimate of the water content.", Example: "emitters panel-radiators 300 kW",
	},
}

var safetyRows = []Row{
	{In: in("plant"), Keyword: "safety", Times: AtMostOnce, Block: MustBlock, Stage: 6, Help: "Safety valves, vessels, pressures and discharge of the water side.", Example: "safety {\n}"},
	{
		In: in("safety"), Keyword: "vessel", Name: Defines, Stage: 6,
		Slots: slots(qty("volume", Volume, "nominal volume").likely(0.001, 100), qty("precharge", Pressure, "gas pressure when empty of water").by().likely(0, 1e6), part("on", "where it joins"), choice("side", "which circuit", "primary", "secondary"), choice("valve", "what can shut it off", "lockable-valve", "plain-valve", "cap-valve", "no-valve"), flag("drain", "it can be drained"), qty("rating", Pressure, "highest working pressure").by(), typeOf("vessel-type")),
		Help:  "An expansion vessel.", Example: "vessel Ves-P 50 l precharge 1.3 bar on Return-H primary lockable-valve drain",
	},
	{In: in("safety"), Keyword: "static", Stage: 6, Slots: slots(qty("pressure", Pressure, "of the water column above the vessel").need().likely(0, 2e6), choice("side", "which circuit", "primary", "secondary").need()), Help: "Static pressure at the vessel.", Example: "static 1.0 bar primary"},
	{In: in("safety"), Keyword: "fill", Stage: 6, Slots: slots(qty("pressure", Pressure, "cold").need().likely(0, 2e6), choice("side", "which circuit", "primary", "secondary").need()), Help: "Cold fill pressure.", Example: "fill 1.6 bar primary"},
	{In: in("safety"), Keyword: "content", Stage: 6, Slots: slots(qty("volume", Volume, "water").need().likely(0.001, 1000), choice("side", "which circuit", "primary", "secondary").need()), Help: "Water content of a circuit as the designer states it.", Example: "content 420 l primary"},
	{In: in("safety"), Keyword: "weakest", Stage: 6, Slots: slots(qty("pressure", Pressure, "lowest rated part").need(), choice("side", "which circuit", "primary", "secondary").need()), Help: "Rating of the weakest part of a circuit.", Example: "weakest 6 bar secondary"},
	{In: in("safety"), Keyword: "relief", Name: Defines, Stage: 6, Slots: append(reliefSlots(), choice("circuit", "which circuit", "primary", "secondary")), Help: "A safety valve that is not a unit's own.", Example: "relief Rel-S DN32 3 bar on SF discharges-to Tun-A"},
	{
		In: in("safety"), Keyword: "discharge", Name: MayDefine, Stage: 6,
		Slots: slots(material(), sizeSlot("nominal size"), qty("length", Length, "measured length"), parts("from", "valves it serves").need(), part("to", "where it ends").need(), qty("elbows", Count, "elbows").by(), qty("falls", Slope, "continuous fall").by(), choice("ends", "how it ends", "visible", "hidden")),
		Help:  "The discharge pipe of safety valves.", Example: "discharge copper 35 mm 4.2 m from U1..U8 to Tun-A elbows 3 off",
	},
	{In: in("safety"), Keyword: "tundish", Name: Defines, Stage: 6, Slots: slots(flag("visible", "it can be seen"), part("drains-to", "where it drains"), flag("air-break", "an air break before the drain")), Help: "The open funnel in a discharge pipe, where a discharge is seen.", Example: "tundish Tun-A visible drains-to Gully air-break"},
	single("safety", "pressurisation", 6, "The pressurisation unit and its cut-outs.", "pressurisation low 1.2 bar high 2.7 bar stops-firing", qty("low", Pressure, "low-pressure cut-out").by(), qty("high", Pressure, "high-pressure cut-out").by(), qty("fills-to", Pressure, "cold fill").by(), flag("stops-firing", "the cut-outs stop the burners"), flag("leak-counter", "it counts what it fills")),
	single("safety", "mains-link", 6, "How the circuit is filled from the mains.", "mains-link temporary break-tank", choice("kind", "how long it stays", "temporary", "permanent").need(), choice("protection", "what guards the mains", "break-tank", "air-gap", "backflow-preventer", "check-valve")),
	single("safety", "low-water", 6, "Low-water or low-pressure cut-out of the plant.", "low-water 0.8 bar manual-reset", qty("setting", Pressure, "pressure below which firing stops"), flag("manual-reset", "a person resets it")),
	single("safety", "hot-water-storage", 6, "Unvented hot-water storage.", "hot-water-storage unvented 500 l", choice("kind", "vented or not", "unvented", "vented").need(), qty("volume", Volume, "water"), qty("temperature", Temperature, "stored at").by()),
}
