package stability

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceStatics = cite.Source{
		Work: "statics: balance of moments about the tipping edge", Read: cite.Memory, Note: "physics; the frame is taken as rigid and its feet as hinges",
	}
	SourceTipLimits = cite.Source{
		Work: "tipping of free-standing frames", Read: cite.Practice, Note: "warning below 10 degrees, error below 5; overturn factor 1.5",
	}
	SourceFloor = cite.Source{
		Work: "BS EN 1991-1-1 with the UK national annex, plant rooms", Read: cite.Memory, Note: "7.5 kN/m2 and 4.5 kN on a point; the building's own figure comes first",
	}
	SourceLift = cite.Source{
		Work: "HSE INDG143, guideline weights for lifting and lowering", Read: cite.Memory, Note: "a filter, not a safe limit; the assessment of the task decides",
	}
	SourceTeam = cite.Source{
		Work: "HSE L23, team handling", Read: cite.Memory, Note: "two carry 2/3 and three carry 1/2 of the sum",
	}
	SourceNIOSH = cite.Source{
		Work: "NIOSH lifting equation", Edition: "revised 1991", Read: cite.Memory,
	}
)
