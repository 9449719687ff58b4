package margin

import (
	"math"
	"strconv"

	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// changes lists what may grow in a plant: the loads, the lengths of each run, and
// the altitude.
func changes(p *plant.Plant) []change {
	var out []change
	var factors []float64
	for x := 1.05; x <= mostFactor; x *= 1.1 {
		factors = append(factors, x)
	}
	var loads []written
	for _, l := range p.ByKind("load") {
		loads = appendWritten(loads, p, l, "load")
	}
	out = appendScaled(out, "load", loads, factors)
	for _, block := range [...]string{"gas-run", "headers", "flue"} {
		b := p.Block(block)
		if b == nil {
			continue
		}
		var lengths []written
		var last *lang.Statement
		for _, part := range b.Parts {
			if part.Stmt != last { // a group is one statement
				lengths = appendWritten(lengths, p, part, "length")
				last = part.Stmt
			}
		}
		out = appendScaled(out, "length of "+block, lengths, factors)
	}
	if v := p.Block("basis").Get("altitude"); v.Known() && v.Field != nil && v.Num < mostAltitude {
		e := v.Field.Values[0].Expr
		span := v.Stmt.Abs(e.Span)
		ch := change{name: "altitude", from: v.Num, edits: func(x float64) []lang.Edit {
			return []lang.Edit{{Span: span, NewText: number(x) + " m"}}
		}}
		for x := math.Floor(v.Num/100+1) * 100; x <= mostAltitude; x += 100 {
			ch.steps = append(ch.steps, x)
		}
		out = append(out, ch)
	}
	return out
}

// written is a number of the text that may be scaled.
type written struct {
	span lang.Span // of the number alone; its unit stays
	num  float64   // as written
}

func appendWritten(list []written, p *plant.Plant, part *plant.Part, slot string) []written {
	v := part.Get(slot)
	if !v.Known() || v.Field == nil || v.File != p.File || len(v.Field.Values) == 0 || v.Field.Values[0].Expr == nil {
		return list
	}
	e := v.Field.Values[0].Expr
	if e.Kind != lang.QuantityExpr || e.Form != lang.Single {
		return list
	}
	return append(list, written{v.Stmt.Abs(e.NumSpan()), e.Num})
}

func appendScaled(out []change, name string, list []written, factors []float64) []change {
	if len(list) == 0 {
		return out
	}
	return append(out, change{name: name, from: 1, steps: factors, edits: func(x float64) []lang.Edit {
		edits := make([]lang.Edit, len(list))
		for i, w := range list {
			edits[i] = lang.Edit{Span: w.span, NewText: number(w.num * x)}
		}
		return edits
	}})
}

// number writes a value so that the language reads it: no exponent, no sign.
func number(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) }
