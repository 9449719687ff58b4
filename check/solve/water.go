package solve

// solveWater computes the water values of the plant.
func solveWater(c *Context) {}
