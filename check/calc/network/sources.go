package network

import "example.org/tundish/check/cite"

// Sources of the laws and of the method.
var (
	SourceGravity = cite.Source{
		Work: "CGPM, standard acceleration of free fall", Edition: "1901", Read: cite.Memory,
		Note: "9.80665 m/s2, a definition",
	}
	SourceMethod = cite.Source{
		Work: "Todini, Pilati: A gradient algorithm for the analysis of pipe networks", Edition: "1988", Read: cite.Memory,
		Note: "the answers are compared with the reference networks, so nothing rests on the wording of the work",
	}
	SourceFriction = cite.Source{
		Work: "Darcy-Weisbach law with f = 64/Re in laminar flow", Read: cite.Memory,
		Note: "physics of pipe flow, found in any textbook of hydraulics",
	}
	SourceColebrook = cite.Source{
		Work: "Colebrook: Turbulent flow in pipes, Journal of the Institution of Civil Engineers 11", Edition: "1939", Read: cite.Memory,
		Note: "used from Re 4000, relative roughness to 0.05; between Re 2000 and 4000 a straight bridge without a source",
	}
	SourcePumpPoint = cite.Source{
		Work: "Pump known by its duty point alone", Read: cite.Practice,
		Note: "head at no flow 4/3 of the duty head, no head at twice the duty flow: H = 4/3 h0 - h0/3 (q/q0)2",
	}
	SourceAffinity = cite.Source{
		Work: "Affinity law of rotating pumps", Read: cite.Memory,
		Note: "flow with the speed, head with its square, along curves of like efficiency",
	}
)
