package plant

import "example.org/tundish/lang"

// damage notes which blocks hold a statement that cannot be read or bound, and
// the names that stand in such statements.
type damage struct {
	any    bool
	blocks map[string]bool
	names  map[string]bool
}

// everywhere is the key of damage that cannot be tied to a block.
const everywhere = "*"

func (d *damage) mark(block string) {
	d.any = true
	if d.blocks == nil {
		d.blocks = map[string]bool{}
	}
	d.blocks[block] = true
}

func (p *Plant) findDamage() {
	for i := range p.File.Problems {
		switch p.File.Problems[i].Rule {
		case "brace-missing", "brace-astray", "not-text", "file-too-large", "too-many-statements", "block-too-deep":
			p.damage.mark(everywhere)
		}
	}
	for _, st := range p.File.Statements {
		block := st.Head.Keyword
		if st.Bound == nil {
			block = everywhere
		}
		p.damageOf(st, block)
	}
}

func (p *Plant) damageOf(st *lang.Statement, block string) {
	if broken(st) {
		p.damage.mark(block)
		if p.damage.names == nil {
			p.damage.names = map[string]bool{}
		}
		for _, t := range lang.Tokens(st.Head.Text) {
			if t.Kind == lang.NameToken {
				p.damage.names[t.Text(st.Head.Text)] = true
			}
		}
	}
	for _, c := range st.Block {
		p.damageOf(c, block)
	}
}

// broken tells a statement of which something cannot be taken as meant.
func broken(st *lang.Statement) bool {
	if st.Head.Problem != nil || st.Bound == nil {
		return true
	}
	for i := range st.Bound.Problems {
		if st.Bound.Problems[i].Severity == lang.Error {
			return true
		}
	}
	return false
}

// Damaged reports whether something in the file cannot be read or bound; with
// blocks named, whether that may concern one of them. What is absent there may
// only be unreadable.
func (p *Plant) Damaged(blocks ...string) bool {
	if !p.damage.any || len(blocks) == 0 {
		return p.damage.any
	}
	if p.damage.blocks[everywhere] {
		return true
	}
	for _, b := range blocks {
		if p.damage.blocks[b] {
			return true
		}
	}
	return false
}
