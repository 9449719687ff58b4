package solve

// solveInsulation computes the insulation values of the plant.
func solveInsulation(c *Context) {}
