package solve

// solveCapacity computes the capacity values of the plant.
func solveCapacity(c *Context) {}
