package combustion

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceStoichiometry = cite.Source{
		Work: "balance of atoms of the complete combustion of methane and propane in air with 20.95 % oxygen", Read: cite.Memory,
		Note: "chemistry; molar heats at 15 degC as in ISO 6976:2016",
	}
	SourceStandardMass = cite.Source{
		Work: "EN 13384-1", Clause: "flue gas mass flow from fm1, fm2 and CO2", Read: cite.Memory,
		Note: "natural gas fm1 3.72, fm2 0.053; within 3 % of the balance of atoms",
	}
	SourceOxygen = cite.Source{
		Work: "dilution of dry flue gas by air, O2 = 20.95 (1 - CO2/CO2max)", Read: cite.Memory, Note: "follows from the balance of atoms",
	}
	SourceSaturation = cite.Source{
		Work: "IAPWS-IF97, region 4, saturation pressure and its backward equation", Edition: "1997, revised 2007", Read: cite.Memory,
		Note: "compared with the reference table of water properties",
	}
	SourceDewPoint = cite.Source{
		Work: "saturation temperature of water at its partial pressure in the flue gas", Read: cite.Memory,
		Note: "physics; acids raise the true dew point by less than 1 K with gas",
	}
	SourceCondensate = cite.Source{
		Work: "water of combustion less the vapor that saturated flue gas carries away", Read: cite.Memory, Note: "physics; drains are sized on all the water of combustion",
	}
	SourceSiegert = cite.Source{
		Work: "Siegert formula with the factors of the German order on small firing installations", Read: cite.Memory,
		Note: "A1 0.37 and B 0.009 natural gas, 0.42 and 0.008 liquefied gas; net, without heat of condensation",
	}
	SourceHeatCapacity = cite.Source{
		Work: "heat capacities of ideal gases", Read: cite.Memory, Note: "straight lines through table values from 0 to 200 degC, within 1 %",
	}
	SourceCO = cite.Source{
		Work: "carbon monoxide of undiluted dry flue gas, CO CO2max/CO2", Read: cite.Memory, Note: "follows from dilution",
	}
)
