package ventilation

import "example.org/tundish/check/cite"

// Sources of the numbers of this package.
var (
	SourceBS6644 = cite.Source{
		Work: "BS 6644", Edition: "2011", Clause: "ventilation tables", Read: cite.Practice,
		Note: "as tabulated in trade literature, cross-read in three texts; per kW of net input, 70 kW to 1.8 MW",
	}
	SourceSummer = cite.Source{
		Work: "IGEM/UP/10 Ed 4 with amendments March 2016", Clause: "summer use", Read: cite.Published,
		Note: "the amendment prints 1350 m3/h per 1000 kW for 75 to 100 %, the tables 1440: the greater is used",
	}
	SourceTightRoom = cite.Source{
		Work: "IGEM/UP/10 Ed 4 with amendments March 2016", Clause: "rooms of under 0.5 air changes per hour and under 1500 m3", Read: cite.Published,
	}
	SourceCooler = cite.Source{
		Work: "quick guide to BS 6644 and IGEM/UP/10", Read: cite.Practice, Note: "per kelvin of room temperature less",
	}
	SourceBS5440 = cite.Source{
		Work: "BS 5440-2", Clause: "vents to 70 kW net", Read: cite.Practice, Note: "as in a quick guide and training texts; the compartment figures also in Approved Document J",
	}
	SourceOpenings = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "304", Read: cite.Published, Note: "per Btu/h of gross input",
	}
	SourceSingleOpening = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "304", Read: cite.Published, Note: "one opening, 1 in2 per 3000 Btu/h",
	}
	SourceIndoorVolume = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "304.5.1", Read: cite.Published, Note: "50 ft3 per 1000 Btu/h",
	}
	SourceKnownInfiltration = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "304.5.2 and Appendix E", Read: cite.Published,
		Note: "21 and 15 ft3 per 1000 Btu/h over the air changes, to 0.60 per hour",
	}
	SourceUSMechanical = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Read: cite.Memory, Note: "0.35 ft3/min per 1000 Btu/h",
	}
	SourceLouver = cite.Source{
		Work: "International Fuel Gas Code, free area of louvers of unknown make", Read: cite.Memory, Note: "75 % metal, 25 % wood",
	}
	SourceLouverUK = cite.Source{Work: "free area of louvers, half of the face", Read: cite.Practice}
	SourceDuct     = cite.Source{
		Work: "IGEM/UP/2, ventilation of ducts that hold gas pipes", Read: cite.Memory,
		Note: "the bands meet: 7.5 m2/150 is 0.05 m2",
	}
	SourceGermany = cite.Source{
		Work: "German rule for heating rooms above 50 kW", Read: cite.Memory, Note: "150 cm2 and 2 cm2 per kW above 50 kW",
	}
)
