package gas

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceEN437 = cite.Source{
		Work: "EN 437", Read: cite.Memory,
		Note: "15/15 degC, 1013.25 mbar dry; the calorific values agree within 0.05 % with the molar heats of ISO 6976:2016",
	}
	SourceISO6976 = cite.Source{
		Work: "ISO 6976", Edition: "2016", Read: cite.Published,
		Note: "molar heats and compression factors as kept in a public thermodynamics data file",
	}
	SourceUKGas = cite.Source{
		Work: "BS 6891 discharge table and its training texts", Read: cite.Practice,
		Note: "calorific value for design 38.5 to 39.5 MJ/m3 gross, relative density 0.6; the low end is taken because it gives the greater flow; network gas varies",
	}
	SourceUSGas = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "chapter 4, tables for a specific gravity of 0.60", Read: cite.Published,
		Note: "1000 to 1100 Btu/ft3 gross; the low end is taken because it gives the greater flow",
	}
	SourceGrossNet = cite.Source{
		Work: "IGEM/UP/10 Ed 4 with amendments March 2016", Clause: "clause 2.1, note 4", Read: cite.Published,
		Note: "gross to net 1.11 for natural gas, 1.09 for propane",
	}
	SourceViscosity = cite.Source{
		Work: "dynamic viscosities for gas pipe sizing", Read: cite.Practice,
		Note: "1.1e-5 Pa.s natural gas, 8.0e-6 Pa.s propane; handbooks print 1.11e-5 for methane and 8.2e-6 for propane at 300 K",
	}
	SourceRate = cite.Source{
		Work: "energy balance: volume rate = heat input / calorific value on the same basis", Read: cite.Published,
		Note: "physics; worked figures beside the BS 6891 discharge table",
	}
	SourceAir = cite.Source{
		Work: "U.S. Standard Atmosphere", Edition: "1976", Read: cite.Memory,
		Note: "air 28.9647 g/mol, hence 1.2250 kg/m3 at 15 degC and 1013.25 mbar",
	}
	SourceIdealGas = cite.Source{
		Work: "ideal gas law with R = 8.314462618 J/(mol.K)", Edition: "CODATA 2018", Read: cite.Memory,
		Note: "physics; compressibility is left out, under 0.3 % for these gases below 1 bar",
	}
	SourceHydrostatic = cite.Source{
		Work: "hydrostatics: weight of the air column less that of the gas column", Read: cite.Memory,
		Note: "physics",
	}
	SourceIsothermal = cite.Source{
		Work: "isothermal compressible flow in a pipe, p1^2-p2^2 = (RT/M)(m/A)^2 [f L/D + 2 ln(p1/p2)]", Read: cite.Memory,
		Note: "found in any textbook of gas dynamics; f by Darcy-Weisbach and Colebrook",
	}
	SourceSteelTable = cite.Source{
		Work: "Faber & Kell, Heating and Air-Conditioning of Buildings", Clause: "Table 11.9", Read: cite.Published,
		Note: "equivalent length of a bend or tee in steel pipe; digest of a table of 1387-medium pipe",
	}
	SourceGradient = cite.Source{
		Work: "Chadderton, Building Services Engineering", Edition: "5th ed.", Clause: "Example 12.4", Read: cite.Published,
	}
	SourceLowPressure = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "402.4, low-pressure equation", Read: cite.Memory,
		Note: "form of the equation read in print, constants from memory; they reproduce the printed tables within 1 % on the high side",
	}
	SourceHighPressure = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "402.4, high-pressure equation", Read: cite.Memory,
		Note: "inlet of 1.5 psi gauge and more",
	}
	SourceSpitzglass = cite.Source{
		Work: "Spitzglass low-pressure formula", Read: cite.Practice,
		Note: "as in general engineering handbooks; a cross-check only",
	}
	SourceLongestLength = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Appendix A, Example A.6.1", Read: cite.Published,
	}
	SourceBranchLength = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "branch length method", Read: cite.Memory,
	}
	SourceUSFittings = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table A.2.2", Read: cite.Published,
		Note: "L = n D with n from the table",
	}
	SourceGravityMultiplier = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table A.2.4", Read: cite.Published,
		Note: "sqrt(0.60/SG) reproduces the printed multipliers",
	}
	SourceMeterLoss = cite.Source{
		Work: "Plumbing Engineering Services Design Guide", Clause: "mean loss of diaphragm meters at their rating", Read: cite.Published,
		Note: "read in a scan; the digit of U160 is doubtful",
	}
	SourceMeterLaw = cite.Source{
		Work: "loss of a meter with the square of the flow", Read: cite.Memory, Note: "physics of turbulent flow through a fixed opening",
	}
	SourceMeterVolume = cite.Source{
		Work: "IGEM/UP/1A and IGEM/UP/1, volumes of diaphragm meters", Read: cite.Memory, Note: "U16 read in training texts, larger meters from memory",
	}
	SourceSmallVolumes = cite.Source{
		Work: "IGEM/UP/1B, volume of pipe per metre, as in training texts", Read: cite.Practice,
	}
	SourceGeometry = cite.Source{
		Work: "volume of a cylinder of the pipe's bore", Read: cite.Memory, Note: "geometry; bore is outside diameter less twice the wall",
	}
	SourceInstallationVolume = cite.Source{
		Work: "pocket guide to IGEM/UP/1B Ed 3", Read: cite.Practice, Note: "10 % on the pipes for fittings",
	}
	SourceUSTest = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "406.4.2", Read: cite.Memory, Note: "half an hour by 500 ft3, 10 minutes under 10 ft3, 24 hours at most",
	}
	SourceTightness = cite.Source{
		Work: "IGEM/UP/1A and IGEM/UP/1, new pipework", Read: cite.Memory,
		Note: "F1 = 42 for natural gas agrees with 60/(1013.25 x 0.0014); gauge readable movement 0.5 mbar water, 0.1 mbar electronic",
	}
	SourcePurge = cite.Source{
		Work: "IGEM/UP/1B Ed 4 (2026), as reported in an industry article", Read: cite.Published,
		Note: "1.5 times the installation volume; five cyclic volumes of a diaphragm meter are from memory",
	}
	SourcePurgeRate = cite.Source{
		Work: "IGEM/UP/1 and IGEM/UP/1A, purge velocity", Read: cite.Memory, Note: "0.6 m/s up to DN150",
	}
)
