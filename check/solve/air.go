package solve

// solveAir computes the air values of the plant.
func solveAir(c *Context) {}
