package fittings

import "example.org/tundish/check/cite"

// Sources of the formulas and numbers of this package.
var (
	SourceCrane = cite.Source{
		Work: "Crane Technical Paper 410", Read: cite.Memory,
		Note: "multiples of fT, the friction factor of complete turbulence",
	}
	SourceCraneTees = cite.Source{
		Work: "Crane Technical Paper 410", Edition: "2009", Clause: "chapter 2, converging and diverging tees", Read: cite.Memory,
		Note: "the limits of the diverging branch are printed in beta and in beta squared, so a band between is refused",
	}
	SourceCraneTurbulent = cite.Source{
		Work: "Crane Technical Paper 410", Clause: "table of fT by nominal size", Read: cite.Memory,
		Note: "a smooth line through the rounded table, Re 7.5e6 D and roughness 3.41268e-5 D^-1.0112 of the bore D in m",
	}
	SourceClamond = cite.Source{
		Work: "Clamond, Efficient resolution of the Colebrook equation, Ind. Eng. Chem. Res. 48", Edition: "2009", Read: cite.Memory,
		Note: "one step of the iteration",
	}
	SourceRennels = cite.Source{
		Work: "Rennels and Hudson, Pipe Flow: A Practical and Comprehensive Guide", Edition: "2012", Read: cite.Memory,
	}
	SourceIto = cite.Source{
		Work: "Ito, Pressure losses in smooth pipe bends, J. Basic Eng. 82", Edition: "1960", Read: cite.Memory,
		Note: "smooth bends, Re (D/r)^2 above 360",
	}
	SourceSwamee = cite.Source{
		Work: "Swamee and Sharma, Design of Water Supply Pipe Networks", Edition: "2008", Read: cite.Memory,
	}
	SourceBlevins = cite.Source{
		Work: "Blevins, Applied Fluid Dynamics Handbook", Edition: "1984", Read: cite.Memory, Note: "single miter bends",
	}
	SourceHooper = cite.Source{
		Work: "Hooper, The two-K method predicts head losses in pipe fittings, Chem. Eng.", Edition: "1981", Read: cite.Memory,
	}
	SourceDarby = cite.Source{
		Work: "Darby, Chemical Engineering Fluid Mechanics", Edition: "2nd ed., 2001", Clause: "3-K method", Read: cite.Memory,
	}
	SourceSudden = cite.Source{
		Work: "law of Borda and Carnot for a sudden enlargement", Read: cite.Memory, Note: "physics: momentum over the jump",
	}
	SourceExit = cite.Source{
		Work: "outflow into a large vessel: the whole velocity head is lost", Read: cite.Memory, Note: "physics",
	}
	SourceKv = cite.Source{
		Work: "definition of Kv: m3/h of water at 1 bar", Read: cite.Memory,
		Note: "with water of 1000 kg/m3, so that K is a round number",
	}
	SourceCv = cite.Source{
		Work: "definition of Cv: US gallons a minute at 1 psi", Read: cite.Memory, Note: "Kv = 0.86498 Cv from the exact units",
	}
	SourceUsual = cite.Source{
		Work: "loss coefficients of fittings, middle of the usual tables", Read: cite.Memory,
		Note: "the maker's figure comes first",
	}
	SourcePart = cite.Source{
		Work: "loss coefficients of screwed line parts", Read: cite.Practice,
		Note: "parts of one size differ by more than half; the maker's figure comes first",
	}
	SourceCopperGas = cite.Source{
		Work: "BS 6891", Edition: "2015", Clause: "equivalent lengths, as in a trade text", Read: cite.Practice,
	}
	SourceCopperGasOld = cite.Source{
		Work: "BS 6891, editions before 2015, as in a trade text", Read: cite.Practice,
	}
)
