package solve

// solveFrame computes the frame values of the plant.
func solveFrame(c *Context) {}
