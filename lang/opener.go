package lang

// Where braces are lost the nesting asks the schema which statement can have a
// block: a statement of a word that the schema does not know there may have one.

// mayOpen tells whether a statement of this keyword has a block anywhere.
func mayOpen(keyword string) bool {
	return opener(keyword, func(*Row) bool { return true })
}

// mayOpenIn tells whether it has one in the block of a statement, nil for a
// statement outside of all blocks.
func mayOpenIn(parent *Statement, keyword string) bool {
	return opener(keyword, func(r *Row) bool {
		for _, in := range r.In {
			if parent == nil {
				switch in {
				case "plant", "catalogue", "record", "project":
					return true
				}
				continue
			}
			for i := range Language().Rows {
				if o := &Language().Rows[i]; o.Keyword == parent.Head.Keyword && o.BlockName() == in {
					return true
				}
			}
		}
		return false
	})
}

func opener(keyword string, allowed func(*Row) bool) bool {
	known := false
	rows := Language().Rows
	for i := range rows {
		if r := &rows[i]; r.Keyword == keyword && allowed(r) {
			if r.Block != NoBlock {
				return true
			}
			known = true
		}
	}
	return !known
}
