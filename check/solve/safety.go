package solve

// solveSafety computes the safety values of the plant.
func solveSafety(c *Context) {}
