package solve

// solveGas computes the gas values of the plant.
func solveGas(c *Context) {}
