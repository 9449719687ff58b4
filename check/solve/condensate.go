package solve

// solveCondensate computes the condensate values of the plant.
func solveCondensate(c *Context) {}
