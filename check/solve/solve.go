package solve

import "example.org/tundish/check/plant"

// stage is one solver. Solvers run in order; a later one reads what an earlier
// one stored.
type stage func(*Context)

// stages is the order of calculation.
var stages = []stage{
	solveCapacity,
	solveGas,
	solveWater,
	solveFlue,
	solveSeason,
	solveTerminals,
	solveCondensate,
	solveAir,
	solveSafety,
	solveInsulation,
	solveQuality,
	solveFrame,
	solveTests,
}

// Context is what a solver works with.
type Context struct {
	*Results
	P       *plant.Plant
	scratch *scratch
}

// Run computes everything that the plant's statements allow. The result is
// never nil; what cannot be computed is stored as missing with what it needs.
func Run(p *plant.Plant) *Results {
	c := &Context{Results: NewResults(p), P: p}
	if p.Kind == "record" && p.Of != nil {
		solveRecord(c)
	}
	if p.Kind != "plant" {
		return c.Results
	}
	c.scratch = scratches.Get().(*scratch)
	c.scratch.outputs = c.scratch.outputs[:0]
	for _, s := range stages {
		s(c)
	}
	scratches.Put(c.scratch)
	return c.Results
}
