package solve

// solveFlue computes the flue values of the plant.
func solveFlue(c *Context) {}
