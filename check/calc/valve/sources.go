package valve

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceKv = cite.Source{
		Work: "definition of Kv: m3/h of water at 1 bar", Read: cite.Memory,
		Note: "density against 1000 kg/m3; with water of 15.5 degC as the base Kv is 0.045 % higher",
	}
	SourceGasKv = cite.Source{
		Work: "IEC 60534-2-1", Clause: "gases, no fittings attached", Read: cite.Memory,
		Note: "N9 = 24.6 for m3/h at 0 degC and 101325 Pa, kPa and K",
	}
	SourceOrifice = cite.Source{
		Work: "ISO 5167-2", Edition: "2003", Clause: "Reader-Harris/Gallagher equation, corner taps; expansibility; loss that stays", Read: cite.Memory,
	}
	SourceFreeOrifice = cite.Source{
		Work: "flow through a hole, Q = C A sqrt(2 dp/rho)", Read: cite.Memory, Note: "physics of an incompressible flow",
	}
	SourceSteamArea = cite.Source{
		Work: "API 520 Part I, Napier's equation for steam", Read: cite.Memory, Note: "saturated steam to 10.3 MPa",
	}
	SourceAD2000 = cite.Source{
		Work: "AD 2000-Merkblatt A2", Read: cite.Published,
		Note: "hot water to 120 degC, safety valve at 3 bar, up to 2700 kW",
	}
	SourceNominalSteps = cite.Source{
		Work: "TRD 721 and AD 2000-Merkblatt A2, sizes of valves with letter H as in trade texts", Read: cite.Practice,
		Note: "2.5 and 3 bar only",
	}
	SourceNominalEnds = cite.Source{
		Work: "TRD 721 and AD 2000-Merkblatt A2, sizes of valves with letter H", Read: cite.Memory, Note: "2.5 and 3 bar only",
	}
	SourceISO4126 = cite.Source{
		Work: "EN ISO 4126-1", Clause: "capacity with saturated steam, critical flow", Read: cite.Memory,
	}
	SourceHeatToSteam = cite.Source{
		Work: "steam from heat: m = Q/hfg", Read: cite.Memory, Note: "energy balance of boiling water",
	}
	SourceSteam = cite.Source{
		Work: "tables of saturated steam", Read: cite.Memory,
		Note: "evaporation heat and volume at whole bars; they obey the law of Clausius and Clapeyron within 0.3 %",
	}
	SourceRise = cite.Source{
		Work: "EN 12828, as quoted in extracts", Read: cite.Published, Note: "rise to 10 % over the greatest working pressure; 0.5 bar for valves to 5 bar from memory",
	}
	SourceSetPressure = cite.Source{
		Work: "EN 12828", Read: cite.Memory, Note: "distance of the safety valve to the working pressure",
	}
	SourceUSCapacity = cite.Source{
		Work: "New York State Code Rule 4 (12 NYCRR 4-5.3)", Read: cite.Published, Note: "1 lb/h of steam for 1000 Btu/h; pressure rise and spread of settings as in US state boiler rules",
	}
	SourceUSLeast = cite.Source{
		Work: "Code of Maryland Regulations, boiler safety", Read: cite.Published, Note: "no safety relief valve below 3/4 in",
	}
	SourceUnvented = cite.Source{
		Work: "Approved Document G", Clause: "G3, Table 3.1", Read: cite.Published,
		Note: "for unvented hot-water storage; not for the safety valves of heating units",
	}
	SourceDischarge = cite.Source{
		Work: "TRD 721, blow-off line of safety valves of heating plants", Read: cite.Memory,
	}
	SourceCommon = cite.Source{
		Work: "common discharge of several safety valves", Read: cite.Practice, Note: "one size over the largest",
	}
)
