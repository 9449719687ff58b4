package flue

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceAtmosphere = cite.Source{
		Work: "U.S. Standard Atmosphere", Edition: "1976", Read: cite.Memory,
		Note: "compared with the reference table of draughts",
	}
	SourceIdealGas = cite.Source{
		Work: "ideal gas law with R = 8.314462618 J/(mol.K)", Edition: "CODATA 2018", Read: cite.Memory, Note: "physics",
	}
	SourceViscosity = cite.Source{
		Work: "U.S. Standard Atmosphere, Sutherland's law for air", Edition: "1976", Read: cite.Memory,
		Note: "1.458e-6 T^1.5/(T + 110.4); flue gas is taken as air",
	}
	SourceDraught = cite.Source{
		Work: "buoyancy of a column of gas, g H (rho_outside - rho_flue)", Read: cite.Memory,
		Note: "physics; EN 13384-1 has the same form with its own reference pressure",
	}
	SourceFriction = cite.Source{
		Work: "Darcy-Weisbach law with Colebrook's factor, 64/Re in laminar flow", Read: cite.Memory, Note: "physics of pipe flow",
	}
	SourceCooling = cite.Source{
		Work: "EN 13384-1", Clause: "cooling of the flue gas, K = U k L/(m cp)", Read: cite.Memory,
		Note: "the exponential law is the heat balance of a pipe; condensation heat is left out, so the true temperature is higher",
	}
	SourceBalance = cite.Source{
		Work: "EN 13384-1 and EN 13384-2, pressure balance", Read: cite.Memory,
		Note: "pressure at each entry from the outlet back; S_E on friction only; speeding up is charged, slowing down gives nothing back",
	}
	SourceSafety = cite.Source{
		Work: "EN 13384-1, flow safety factor S_E", Read: cite.Memory, Note: "1.2 positive pressure, 1.5 negative pressure",
	}
	SourceWind = cite.Source{
		Work: "EN 13384-1, wind pressure P_L", Read: cite.Memory,
		Note: "25 Pa inland, 40 Pa at the coast, where the outlet stands unfavorably; else 0",
	}
	SourceRoughness = cite.Source{
		Work: "EN 13384-1, mean roughness r", Read: cite.Memory, Note: "1 mm metal and plastic, 2 to 5 mm masonry",
	}
	SourceZeta = cite.Source{
		Work: "loss coefficients of flue parts in the manner of EN 13384-1", Read: cite.Practice, Note: "the maker's own figures go first",
	}
	SourceClasses = cite.Source{
		Work: "EN 1443, pressure classes", Read: cite.Published,
		Note: "40 and 20 Pa of N1 and N2 are pressures of the leakage test of negative-pressure flues",
	}
	SourceClassM  = cite.Source{Work: "EN 1443, pressure class M", Read: cite.Memory}
	SourceLeakage = cite.Source{
		Work: "EN 1443, leakage rates", Read: cite.Memory, Note: "l/(s.m2): N1 2.0, P1 and H1 0.006, P2 0.120",
	}
	SourceTemperatureClasses = cite.Source{Work: "EN 1856-1, temperature classes", Read: cite.Published}
	SourceFall               = cite.Source{
		Work: "fall of condensing flues: 3 degrees back to the trap", Read: cite.Practice,
		Note: "tan 3 deg is 52.4 mm/m; trade texts print 52 mm/m, compared in whole mm",
	}
	SourceGeometry    = cite.Source{Work: "tangent of the fall", Read: cite.Memory, Note: "geometry"}
	SourceTerminalADJ = cite.Source{
		Work: "Approved Document J (England)", Clause: "positions of terminals of room-sealed and open-flued fanned gas appliances to 70 kW", Read: cite.Published,
	}
	SourceTerminalUP10 = cite.Source{
		Work: "IGEM/UP/10 Ed 4", Clause: "figures of termination, as straight lines of trade literature", Read: cite.Practice,
		Note: "from 70 to 333 kW net, no extrapolation",
	}
	SourceTerminalUS = cite.Source{
		Work: "NFPA 54, through-the-wall terminals, as quoted in trade literature", Read: cite.Practice,
	}
	SourceTerminalUSDirect = cite.Source{Work: "NFPA 54, direct-vent terminals", Read: cite.Memory}
	SourceMemorandum       = cite.Source{
		Work: "Chimney Heights, 1956 Clean Air Act Memorandum", Edition: "3rd ed., 1981", Read: cite.Memory,
		Note: "formula for gas from memory; the correction H + 0.6 U read in a design note of the method",
	}
	SourceCleanAir = cite.Source{
		Work: "Clean Air Act 1993", Clause: "sections 14, 15 and 64(6)", Read: cite.Published,
		Note: "units on one chimney count together",
	}
	SourceApprovals = cite.Source{
		Work: "IGEM/UP/10 Ed 4 with amendments March 2016", Clause: "horizontal terminals above 135 kW net in total", Read: cite.Published,
		Note: "the replacement text of 2016 was cut off in the copy read",
	}
)
