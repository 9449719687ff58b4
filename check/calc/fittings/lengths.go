package fittings

import (
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// CopperLength is what one fitting of a copper gas pipe counts in m of pipe.
type CopperLength struct {
	Outside int // outside diameter of the pipe, mm
	Fitting string
	Length  float64 // m
	Source  cite.Source
}

// The fittings of the table of copper gas pipe.
const (
	CopperHalfBend = "45 deg bend"
	CopperBend     = "90 deg bend"
	CopperElbow    = "90 deg elbow"
)

var copperLengths = [...]CopperLength{
	{15, CopperHalfBend, 0.15, SourceCopperGas},
	{15, CopperBend, 0.20, SourceCopperGas},
	{15, CopperElbow, 0.40, SourceCopperGas},
	{22, CopperHalfBend, 0.20, SourceCopperGas},
	{22, CopperBend, 0.30, SourceCopperGas},
	{22, CopperElbow, 0.60, SourceCopperGas},
}

// CopperLengths returns the table of equivalent lengths of copper gas pipe. Those
// of steel pipe and the ratios of the US code stand in package gas.
func CopperLengths() []CopperLength { return append([]CopperLength(nil), copperLengths[:]...) }

// Lengths of fittings of copper gas pipe of any size before 2015, in m. Source:
// SourceCopperGasOld.
const (
	CopperBendOld  = 0.3 // per bend
	CopperElbowOld = 0.5 // per elbow or tee
)

// CopperFitting is the equivalent length in m of a fitting in copper gas pipe
// of 15 or 22 mm outside diameter; other sizes and fittings are an error.
// Source: SourceCopperGas.
func CopperFitting(outside int, fitting string) (float64, error) {
	for i := range copperLengths {
		if c := &copperLengths[i]; c.Outside == outside && c.Fitting == fitting {
			return c.Length, nil
		}
	}
	return 0, &within.Error{Name: "outside diameter (with a fitting of the table)", Value: float64(outside), Low: 15, High: 22, Unit: "mm"}
}
