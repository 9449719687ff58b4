package lang

// fireAt is the firing rate at which data of a unit hold.
var fireAt = Slot{Name: "at", Label: "at", Type: ChoiceType, Choices: []string{"full", "low"}, Help: "firing rate"}

var catalogueRows = []Entry{
	{
		In: []string{"catalogue"}, Keyword: "unit-type", Name: Defines, Block: MustBlock, Stage: 2,
		Help: "A type of condensing unit.", Example: "unit-type Wall-100 {\n}",
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "kind", Times: AtMostOnce, Stage: 2,
		Help: "What kind of unit it is.", Example: "kind condensing room-sealed fan-assisted",
		Slots: []*Slot{
			{Name: "condensing", Type: ChoiceType, Required: true, Choices: []string{"condensing", "non-condensing"}, Help: "condensing or not"},
			{Name: "air", Type: ChoiceType, Choices: []string{"room-sealed", "open-flued", "room-sealed-or-open"}, Help: "where it takes its air"},
			{Name: "draught", Type: ChoiceType, Choices: []string{"fan-assisted", "natural-draught"}, Help: "what drives the products"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "exchanger", Times: AtMostOnce, Stage: 2,
		Help: "Metal of the heat exchanger.", Example: "exchanger stainless",
		Slots: []*Slot{
			{Name: "exchanger", Type: ChoiceType, Required: true, Choices: []string{"stainless", "aluminium", "copper", "cast-iron"}, Help: "metal"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "output", Stage: 2,
		Help: "Heat output at a flow and return temperature.", Example: "output 100 kW at 80/60 degC",
		Slots: []*Slot{
			{Name: "output", Dim: Power, Required: true, Low: 1000, High: 2e6, Help: "heat to the water"},
			{Name: "at", Label: "at", Dim: Temperature, Forms: []NumberForm{Pair}, Help: "flow over return"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "input", Times: AtMostOnce, Stage: 2,
		Help: "Greatest heat input.", Example: "input 103 kW net",
		Slots: []*Slot{
			{Name: "input", Dim: Power, Required: true, Low: 1000, High: 2e6, Help: "heat of the gas"},
			{Name: "heat-basis", Type: ChoiceType, Required: true, Choices: []string{"net", "gross"}, Help: "net or gross"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "input-low", Times: AtMostOnce, Stage: 2,
		Help: "Least heat input.", Example: "input-low 20.6 kW net",
		Slots: []*Slot{
			{Name: "input-low", Dim: Power, Required: true, Low: 200, High: 1e6, Help: "heat of the gas"},
			{Name: "heat-basis", Type: ChoiceType, Required: true, Choices: []string{"net", "gross"}, Help: "net or gross"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "gas-inlet", Stage: 2,
		Help: "Range of gas pressure at the inlet, at full fire.", Example: "gas-inlet 17.5..25 mbar for natural",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Forms: []NumberForm{Range}, Required: true, Low: 200, High: 20e3, Help: "at full fire"},
			{Name: "for", Label: "for", Type: ChoiceType, Choices: []string{"natural", "propane"}, Help: "gas"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "gas-connection", Times: AtMostOnce, Stage: 2,
		Help: "Size of the gas connection.", Example: "gas-connection 1 in",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal size"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "water-connection", Times: AtMostOnce, Stage: 2,
		Help: "Size of the water connections.", Example: "water-connection 1 1/4 in",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal size"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "water-content", Times: AtMostOnce, Stage: 2,
		Help: "Water in the unit.", Example: "water-content 9.5 l",
		Slots: []*Slot{
			{Name: "water-content", Dim: Volume, Required: true, Low: 1e-4, High: 0.5, Help: "water"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "water-pressure", Times: AtMostOnce, Stage: 2,
		Help: "Range of water pressure.", Example: "water-pressure 0.8..4 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Forms: []NumberForm{Range}, Required: true, Help: "gauge"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "flow-temperature", Times: AtMostOnce, Stage: 2,
		Help: "Range of flow temperature.", Example: "flow-temperature 30..85 degC",
		Slots: []*Slot{
			{Name: "flow-temperature", Dim: Temperature, Forms: []NumberForm{Range}, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "rise-most", Times: AtMostOnce, Stage: 2,
		Help: "Greatest temperature rise through the unit.", Example: "rise-most 30 K",
		Slots: []*Slot{
			{Name: "rise-most", Dim: TempDiff, Required: true, Low: 2, High: 60, Help: "return to flow"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "flow-least", Times: AtMostOnce, Stage: 2,
		Help: "Least water flow.", Example: "flow-least 2.9 m3/h",
		Slots: []*Slot{
			{Name: "flow-least", Dim: VolumeFlow, Required: true, Help: "water"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "mass", Times: AtMostOnce, Stage: 2,
		Help: "Mass of the unit.", Example: "mass 94 kg dry",
		Slots: []*Slot{
			{Name: "mass", Dim: Mass, Required: true, Low: 5, High: 2000, Help: "mass"},
			{Name: "state", Type: ChoiceType, Choices: []string{"dry", "wet"}, Help: "with or without water"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "size", Times: AtMostOnce, Stage: 2,
		Help: "Outer size.", Example: "size 600 mm wide 980 mm high 570 mm deep",
		Slots: []*Slot{
			{Name: "wide", Suffix: "wide", Dim: Length, Required: true, Help: "width"},
			{Name: "high", Suffix: "high", Dim: Length, Required: true, Help: "height"},
			{Name: "deep", Suffix: "deep", Dim: Length, Required: true, Help: "depth"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "clearance", Times: AtMostOnce, Stage: 2,
		Help: "Free space that the unit needs.", Example: "clearance front 800 mm above 350 mm side 50 mm below 400 mm",
		Slots: []*Slot{
			{Name: "front", Label: "front", Dim: Length, Help: "in front"},
			{Name: "above", Label: "above", Dim: Length, Help: "above"},
			{Name: "side", Label: "side", Dim: Length, Help: "beside"},
			{Name: "below", Label: "below", Dim: Length, Help: "below"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "power", Times: AtMostOnce, Stage: 2,
		Help: "Electrical connection.", Example: "power 230 V 1 phase 165 W",
		Slots: []*Slot{
			{Name: "voltage", Dim: Voltage, Required: true, Help: "supply"},
			{Name: "phases", Dim: Count, Help: "phases"},
			{Name: "power", Dim: Power, Help: "drawn"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "terminals", Times: AtMostOnce, Stage: 2,
		Help: "Terminals for damper, pump and sensor.", Example: "terminals damper X4 pump X6",
		Slots: []*Slot{
			{Name: "damper", Label: "damper", Type: CodeType, Help: "for the damper"},
			{Name: "pump", Label: "pump", Type: CodeType, Help: "for the pump"},
			{Name: "sensor", Label: "sensor", Type: CodeType, Help: "for a sensor"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "water-loss-curve", Times: AtMostOnce, Block: MustBlock, Stage: 2,
		Help: "Pressure loss on the water side over flow.", Example: "water-loss-curve {\n}",
	},
	{
		In: []string{"water-loss-curve", "head-curve", "primary-loss-curve", "secondary-loss-curve"}, Keyword: "point", Stage: 2,
		Help: "A point of a curve; flows rise from point to point.", Example: "point 4.3 m3/h 31.5 kPa",
		Slots: []*Slot{
			{Name: "flow", Dim: VolumeFlow, Required: true, Help: "flow"},
			{Name: "pressure", Dim: Pressure, Required: true, Help: "loss or head"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "fan-pressure", Times: AtMostOnce, Block: MustBlock, Stage: 7,
		Help: "What the unit can push at its flue outlet.", Example: "fan-pressure {\n}",
	},
	{
		In: []string{"fan-pressure"}, Keyword: "full", Times: AtMostOnce, Stage: 7,
		Help: "At full fire.", Example: "full 180 Pa",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Low: -50, High: 2000, Help: "at the outlet"},
		},
	},
	{
		In: []string{"fan-pressure"}, Keyword: "low", Times: AtMostOnce, Stage: 7,
		Help: "At minimum fire.", Example: "low 28 Pa",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Low: -50, High: 2000, Help: "at the outlet"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "flue-data", Times: AtMostOnce, Block: MustBlock, Stage: 7,
		Help: "Products of combustion.", Example: "flue-data {\n}",
	},
	{
		In: []string{"flue-data"}, Keyword: "spigot", Times: AtMostOnce, Stage: 7,
		Help: "Size of the flue outlet.", Example: "spigot DN110",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal bore"},
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "gas-flow", Stage: 7,
		Help: "Mass flow of the products.", Example: "gas-flow 162 kg/h at full",
		Slots: []*Slot{
			{Name: "flow", Dim: MassFlow, Required: true, Help: "products"},
			&fireAt,
		},
	},
	{
		In: []string{"flue-data", "combustion-limits"}, Keyword: "co2", Stage: 7,
		Help: "Carbon dioxide in the dry products.", Example: "co2 9.1 % at full",
		Slots: []*Slot{
			{Name: "co2", Dim: Ratio, Forms: []NumberForm{Single, Range}, Required: true, Low: 0.01, High: 0.16, Help: "by dry volume"},
			&fireAt,
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "temperature", Stage: 7,
		Help: "Temperature of the products.", Example: "temperature 67 degC at full for 80/60 degC",
		Slots: []*Slot{
			{Name: "temperature", Dim: Temperature, Required: true, Low: 10, High: 300, Help: "of the products"},
			&fireAt,
			{Name: "for", Label: "for", Dim: Temperature, Forms: []NumberForm{Pair}, Help: "flow over return"},
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "limiter", Times: AtMostOnce, Stage: 7,
		Help: "Flue temperature limiter of the unit.", Example: "limiter 95 degC",
		Slots: []*Slot{
			{Name: "setting", Dim: Temperature, Required: true, Low: 40, High: 300, Help: "it locks out at"},
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "through-loss", Times: AtMostOnce, Stage: 7,
		Help: "What a flow of products or air loses through the unit while it is stopped.", Example: "through-loss 60 Pa 169 kg/h",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Low: 1, High: 5000, Help: "lost"},
			{Name: "flow", Dim: MassFlow, Required: true, Help: "at this flow"},
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "types", Times: AtMostOnce, Stage: 7,
		Help: "Appliance types it is approved for.", Example: "types B23P, C63",
		Slots: []*Slot{
			{Name: "types", Type: CodeType, List: true, Required: true, Help: "types"},
		},
	},
	{
		In: []string{"flue-data"}, Keyword: "length-limit", Times: AtMostOnce, Stage: 7,
		Help: "Greatest equivalent flue length.", Example: "length-limit 30 m bend 1.5 m",
		Slots: []*Slot{
			{Name: "limit", Dim: Length, Required: true, Help: "greatest equivalent length"},
			{Name: "bend", Label: "bend", Dim: Length, Help: "what a bend counts"},
		},
	},
	{
		In: []string{"unit-type", "units"}, Keyword: "combustion-limits", Times: AtMostOnce, Block: MustBlock, Stage: 15,
		Help: "Readings that are right for the unit when new.", Example: "combustion-limits {\n}",
	},
	{
		In: []string{"combustion-limits"}, Keyword: "co", Times: AtMostOnce, Stage: 15,
		Help: "Carbon monoxide.", Example: "co 0..120 ppm",
		Slots: []*Slot{
			{Name: "co", Dim: Ratio, Forms: []NumberForm{Range}, Required: true, Help: "by dry volume"},
		},
	},
	{
		In: []string{"combustion-limits"}, Keyword: "co-ratio", Times: AtMostOnce, Stage: 15,
		Help: "Ratio of CO to CO2.", Example: "co-ratio 0..0.0040 ratio",
		Slots: []*Slot{
			{Name: "co-ratio", Dim: Ratio, Forms: []NumberForm{Range}, Required: true, Help: "ratio"},
		},
	},

	{
		In: []string{"catalogue"}, Keyword: "pump-type", Name: Defines, Block: MustBlock, Stage: 5,
		Help: "A type of pump.", Example: "pump-type Ring-32-80 {\n}",
	},
	{
		In: []string{"pump-type"}, Keyword: "connection", Times: AtMostOnce, Stage: 5,
		Help: "Size of the connections.", Example: "connection DN32",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal size"},
		},
	},
	{
		In: []string{"pump-type"}, Keyword: "speed", Times: AtMostOnce, Stage: 5,
		Help: "Whether the speed can be set.", Example: "speed variable",
		Slots: []*Slot{
			{Name: "speed", Type: ChoiceType, Required: true, Choices: []string{"variable", "constant"}, Help: "how it runs"},
		},
	},
	{
		In: []string{"pump-type"}, Keyword: "flow-most", Times: AtMostOnce, Stage: 5,
		Help: "Greatest flow.", Example: "flow-most 7.0 m3/h",
		Slots: []*Slot{
			{Name: "flow-most", Dim: VolumeFlow, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"pump-type"}, Keyword: "power", Times: AtMostOnce, Stage: 10,
		Help: "Electrical connection.", Example: "power 230 V 1 phase 145 W",
		Slots: []*Slot{
			{Name: "voltage", Dim: Voltage, Required: true, Help: "supply"},
			{Name: "phases", Dim: Count, Help: "phases"},
			{Name: "power", Dim: Power, Help: "drawn"},
		},
	},
	{
		In: []string{"pump-type"}, Keyword: "head-curve", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "Head over flow at full speed.", Example: "head-curve {\n}",
	},

	{
		In: []string{"catalogue"}, Keyword: "exchanger-type", Name: Defines, Block: MustBlock, Stage: 5,
		Help: "A type of plate heat exchanger.", Example: "exchanger-type Plate-44 {\n}",
	},
	{
		In: []string{"exchanger-type"}, Keyword: "kind", Times: AtMostOnce, Stage: 5,
		Help: "How it is built.", Example: "kind gasketed-plate",
		Slots: []*Slot{
			{Name: "kind", Type: ChoiceType, Required: true, Choices: []string{"gasketed-plate", "brazed-plate", "shell-and-tube"}, Help: "build"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "area", Times: AtMostOnce, Stage: 5,
		Help: "Heat transfer area.", Example: "area 44 m2",
		Slots: []*Slot{
			{Name: "area", Dim: Area, Required: true, Help: "area"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "conductance", Times: AtMostOnce, Stage: 5,
		Help: "Heat transfer coefficient.", Example: "conductance 4200 W/m2K clean",
		Slots: []*Slot{
			{Name: "conductance", Dim: Transmittance, Required: true, Help: "by area and kelvin"},
			{Name: "state", Type: ChoiceType, Choices: []string{"clean", "fouled"}, Help: "clean or fouled"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "fouling-margin", Times: AtMostOnce, Stage: 5,
		Help: "Share of the coefficient lost to fouling.", Example: "fouling-margin 10 %",
		Slots: []*Slot{
			{Name: "share", Dim: Ratio, Required: true, High: 0.9, Help: "lost"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "mass", Times: AtMostOnce, Stage: 3,
		Help: "Mass.", Example: "mass 385 kg dry",
		Slots: []*Slot{
			{Name: "mass", Dim: Mass, Required: true, Help: "mass"},
			{Name: "state", Type: ChoiceType, Choices: []string{"dry", "wet"}, Help: "with or without water"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "content", Stage: 6,
		Help: "Water content of a side.", Example: "content 23 l primary",
		Slots: []*Slot{
			{Name: "content", Dim: Volume, Required: true, Help: "water"},
			{Name: "side", Type: ChoiceType, Required: true, Choices: []string{"primary", "secondary"}, Help: "which side"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "water-pressure", Times: AtMostOnce, Stage: 6,
		Help: "Range of water pressure.", Example: "water-pressure 0..10 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Forms: []NumberForm{Range}, Required: true, Help: "gauge"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "connection", Times: AtMostOnce, Stage: 5,
		Help: "Size of the connections.", Example: "connection DN100",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal size"},
		},
	},
	{
		In: []string{"exchanger-type"}, Keyword: "primary-loss-curve", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "Loss of the primary side over flow.", Example: "primary-loss-curve {\n}",
	},
	{
		In: []string{"exchanger-type"}, Keyword: "secondary-loss-curve", Times: AtMostOnce, Block: MustBlock, Stage: 5,
		Help: "Loss of the secondary side over flow.", Example: "secondary-loss-curve {\n}",
	},

	{
		In: []string{"catalogue"}, Keyword: "separator-type", Name: Defines, Block: MustBlock, Stage: 5,
		Help: "A type of hydraulic separator.", Example: "separator-type Body-250 {\n}",
	},
	{
		In: []string{"separator-type"}, Keyword: "body", Times: AtMostOnce, Stage: 5,
		Help: "Bore of the body.", Example: "body 260 mm",
		Slots: []*Slot{
			{Name: "bore", Dim: Length, Required: true, Help: "inner diameter"},
		},
	},
	{
		In: []string{"separator-type"}, Keyword: "connection", Times: AtMostOnce, Stage: 5,
		Help: "Size of the ports.", Example: "connection DN100",
		Slots: []*Slot{
			{Name: "size", Type: SizeType, Required: true, Help: "nominal size"},
		},
	},
	{
		In: []string{"separator-type"}, Keyword: "mass", Times: AtMostOnce, Stage: 3,
		Help: "Mass.", Example: "mass 80 kg dry",
		Slots: []*Slot{
			{Name: "mass", Dim: Mass, Required: true, Help: "mass"},
			{Name: "state", Type: ChoiceType, Choices: []string{"dry", "wet"}, Help: "with or without water"},
		},
	},

	{
		In: []string{"catalogue"}, Keyword: "meter-type", Name: Defines, Block: MustBlock, Stage: 4,
		Help: "A type of gas meter.", Example: "meter-type Dia-100 {\n}",
	},
	{
		In: []string{"meter-type"}, Keyword: "rating", Times: AtMostOnce, Stage: 4,
		Help: "Greatest flow.", Example: "rating 100 m3/h",
		Slots: []*Slot{
			{Name: "rating", Dim: VolumeFlow, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"meter-type"}, Keyword: "least", Times: AtMostOnce, Stage: 4,
		Help: "Least flow.", Example: "least 0.65 m3/h",
		Slots: []*Slot{
			{Name: "least", Dim: VolumeFlow, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"meter-type"}, Keyword: "loss", Times: AtMostOnce, Stage: 4,
		Help: "Loss at its rating.", Example: "loss 1.2 mbar",
		Slots: []*Slot{
			{Name: "loss", Dim: Pressure, Required: true, Help: "loss"},
		},
	},
	{
		In: []string{"meter-type"}, Keyword: "volume", Times: AtMostOnce, Stage: 4,
		Help: "Gas volume.", Example: "volume 0.18 m3",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "volume"},
		},
	},
	{
		In: []string{"meter-type"}, Keyword: "cyclic-volume", Times: AtMostOnce, Stage: 4,
		Help: "Volume of one cycle.", Example: "cyclic-volume 0.057 m3",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "volume"},
		},
	},

	{
		In: []string{"catalogue"}, Keyword: "regulator-type", Name: Defines, Block: MustBlock, Stage: 4,
		Help: "A type of gas regulator.", Example: "regulator-type Gov-1 {\n}",
	},
	{
		In: []string{"regulator-type"}, Keyword: "most", Times: AtMostOnce, Stage: 4,
		Help: "Greatest flow.", Example: "most 140 m3/h",
		Slots: []*Slot{
			{Name: "flow", Dim: VolumeFlow, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"regulator-type"}, Keyword: "least", Times: AtMostOnce, Stage: 4,
		Help: "Least flow it controls.", Example: "least 1 m3/h",
		Slots: []*Slot{
			{Name: "flow", Dim: VolumeFlow, Required: true, Help: "flow"},
		},
	},
	{
		In: []string{"regulator-type"}, Keyword: "lock-up", Times: AtMostOnce, Stage: 4,
		Help: "Pressure without flow.", Example: "lock-up 25 mbar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "pressure"},
		},
	},

	{
		In: []string{"catalogue"}, Keyword: "vessel-type", Name: Defines, Block: MustBlock, Stage: 6,
		Help: "A type of expansion vessel.", Example: "vessel-type Ves-80 {\n}",
	},
	{
		In: []string{"vessel-type"}, Keyword: "volume", Times: AtMostOnce, Stage: 6,
		Help: "Nominal volume.", Example: "volume 80 l",
		Slots: []*Slot{
			{Name: "volume", Dim: Volume, Required: true, Help: "volume"},
		},
	},
	{
		In: []string{"vessel-type"}, Keyword: "rating", Times: AtMostOnce, Stage: 6,
		Help: "Highest working pressure.", Example: "rating 6 bar",
		Slots: []*Slot{
			{Name: "pressure", Dim: Pressure, Required: true, Help: "pressure"},
		},
	},
}
