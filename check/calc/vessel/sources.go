package vessel

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceEN12828 = cite.Source{
		Work: "EN 12828", Edition: "2012+A1:2014", Clause: "annex D", Read: cite.Memory,
		Note: "water reserve 0.5 % and at least 3 l; 20 % of a vessel below 15 l; end pressure 0.5 bar, over 5 bar 10 %, below the safety valve",
	}
	SourceExpansion = cite.Source{
		Work: "EN 12828", Edition: "2012+A1:2014", Clause: "annex D", Read: cite.Memory,
		Note: "a fit; equal to the physics at 70 to 90 degC and above it below 60 degC; 0.32 points for each 10 % of additive from a public table",
	}
	SourceStatic = cite.Source{
		Work: "hydrostatics, p = rho g h with 1000 kg/m3", Read: cite.Memory, Note: "physics; 0.0981 bar/m",
	}
	SourcePrecharge = cite.Source{
		Work: "EN 12828", Edition: "2012+A1:2014", Clause: "annex D", Read: cite.Memory,
		Note: "0.3 bar over the static pressure; at least 0.7 bar is preferred",
	}
	SourceBoyle = cite.Source{
		Work: "law of Boyle for the gas in the vessel", Read: cite.Memory, Note: "physics; absolute pressure taken as gauge + 1 bar, as EN 12828 does",
	}
	SourceUK = cite.Source{
		Work: "BS 5449 and BS 7074-1, vessel table of sealed systems", Read: cite.Published,
		Note: "as reproduced in three public copies; times 0.8 below 88 degC flow; one copy misprints 0.207 for 0.200",
	}
	SourceUKForm = cite.Source{
		Work: "closed form through the vessel table of BS 5449 and BS 7074-1", Read: cite.Memory,
		Note: "fitted by the project; within 1.5 % of every printed factor",
	}
	SourceASHRAE = cite.Source{
		Work: "ASHRAE Handbook HVAC Systems and Equipment", Clause: "hydronic chapter, expansion tanks", Read: cite.Memory,
		Note: "steel 6.5e-6 and copper 9.5e-6 per degF",
	}
	SourceUSCode = cite.Source{
		Work: "closed-tank formula of US boiler codes", Read: cite.Practice,
		Note: "mean water temperature 160 to 280 degF; the greatest pressure is taken at 90 % of the relief valve",
	}
	SourceAntiFlash = cite.Source{
		Work: "HSE PM5 as quoted: margin of 17 K against flashing", Read: cite.Memory,
		Note: "the quoted example, 82 degC with a rise of 11 K, comes out; at least 0.2 bar at the unit",
	}
	SourceOrder = cite.Source{
		Work: "EN 12828 and practice: order of the pressures of a sealed plant", Read: cite.Practice,
		Note: "cut-out at most 0.2 bar under the safety valve; it may equal the end pressure",
	}
	SourceContent = cite.Source{
		Work: "water content of emitters by heat output", Read: cite.Practice, Note: "an estimate: take the vessel 30 % larger or count the pipes",
	}
)
