package lang

// allRows joins the rows of every file in the order of a specification.
func allRows() []Row {
	groups := [][]Row{
		fileRows, basisRows, unitRows, frameRows, gasRows, headerRows, separationRows, safetyRows, flueRows, condensateRows, airRows,
		electricalRows, insulationRows, testRows, catalogueRows, recordRows, projectRows,
	}
	n := 0
	for _, g := range groups {
		n += len(g)
	}
	out := make([]Row, 0, n)
	for _, g := range groups {
		out = append(out, g...)
	}
	return out
}
