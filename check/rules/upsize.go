package rules

import (
	"example.org/tundish/check"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// cheapestUpsize looks for the single gas pipe whose next sizes bring the loss
// under the limit (Pa) and every unit over its least pressure, with the least
// added steel; where no single pipe does, it steps up the pipe that loses most
// by meter, again and again.
func cheapestUpsize(p *check.Pass, limit float64) (lang.Fix, bool) {
	block := p.Plant.Block("gas-run")
	if block == nil {
		return lang.Fix{}, false
	}
	parts := gasPipes(block)
	best, bestMass := sizes(nil), 0.0
	for _, part := range parts {
		try := sizes{}
		for next := above(part, try); next != nil; next = above(part, try) {
			try[part.Stmt] = next
			if passes(p, try, limit) {
				if m := added(part, next); best == nil || m < bestMass {
					best, bestMass = sizes{part.Stmt: next}, m
				}
				break
			}
		}
	}
	if best == nil {
		best = stepwise(p, parts, limit)
	}
	if best == nil {
		return lang.Fix{}, false
	}
	fix := lang.Fix{Best: true}
	for _, part := range parts {
		next := best[part.Stmt]
		if next == nil || part.Index > 0 && part.Of > 1 && part.Bound.Name.Kind == lang.SpanExpr {
			continue
		}
		v := part.Get("size")
		fix.Edits = append(fix.Edits, lang.Edit{Span: part.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: next.Size})
		name := part.Label()
		if part.Bound.Name.Kind == lang.SpanExpr {
			name = part.Bound.Name.Text + ".." + part.Bound.Name.Last()
		}
		if fix.Title == "" {
			fix.Title = "Take " + name + " in " + next.Size
		} else {
			fix.Title += ", " + name + " in " + next.Size
		}
	}
	return fix, len(fix.Edits) > 0
}

// sizes are sizes tried, by statement: a group is changed as one.
type sizes map[*lang.Statement]*pipe.Pipe

func gasPipes(block *plant.Part) []*plant.Part {
	var out []*plant.Part
	for _, kind := range [...]string{"pipe", "manifold", "drop"} {
		for _, part := range block.Children(kind) {
			if v := part.Get("size"); v.Known() && v.Field != nil {
				out = append(out, part)
			}
		}
	}
	return out
}

func above(part *plant.Part, have sizes) *pipe.Pipe {
	now := have[part.Stmt]
	if now == nil {
		now = pipe.Find(part.Get("material").Word, part.Get("size").Num)
	}
	if now == nil {
		return nil
	}
	return now.Above()
}

// added is the steel that a size costs more, as length times bore.
func added(part *plant.Part, next *pipe.Pipe) float64 {
	return part.Get("length").Num * float64(max(part.Of, 1)) * next.Outside
}

func passes(p *check.Pass, try sizes, limit float64) bool {
	worst, least, ok := solve.GasWith(p.Plant, p.Results, func(part *plant.Part) *pipe.Pipe { return try[part.Stmt] })
	if !ok || limit > 0 && worst > limit*(1+1e-9) {
		return false
	}
	for _, u := range p.Plant.Units() {
		for _, s := range u.Children("gas-inlet") {
			if v := s.Get("pressure"); v.Known() && least < v.Num {
				return false
			}
		}
	}
	return true
}

func stepwise(p *check.Pass, parts []*plant.Part, limit float64) sizes {
	try := sizes{}
	for range 24 {
		var dear *plant.Part
		most := 0.0
		for _, part := range parts {
			q := p.Results.Get(part, "pressure-loss", solve.AllFull)
			length := part.Get("length")
			if !q.Known() || !length.Known() || above(part, try) == nil {
				continue
			}
			// A size more divides the loss by about three: count it so.
			g := q.Num
			if n := try[part.Stmt]; n != nil {
				from := pipe.Find(part.Get("material").Word, part.Get("size").Num)
				r := from.Bore() / n.Bore()
				g *= r * r * r * r * r
			}
			if g > most {
				dear, most = part, g
			}
		}
		if dear == nil {
			return nil
		}
		try[dear.Stmt] = above(dear, try)
		if passes(p, try, limit) {
			return try
		}
	}
	return nil
}
