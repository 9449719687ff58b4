package check

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Term is the value of an expression: a number in the SI unit of its dimension.
type Term struct {
	Num float64
	Dim lang.Dimension
	// Pure marks a bare number, which goes with any dimension in a product.
	Pure bool
	// Unit is the unit in which the text wrote it, for printing.
	Unit string
}

// EvalError says why an expression has no value. Missing tells apart an input
// that is not known (not evaluated) from an expression that makes no sense.
type EvalError struct {
	Span    lang.Span // relative to the statement
	Text    string
	Missing bool
}

func (e *EvalError) Error() string { return e.Text }

// Eval computes an expression of a requirement over the results of the plant.
func (p *Pass) Eval(e *lang.Expr) (Term, *EvalError) { return eval(p.Plant, p.Results, e) }

func eval(pl *plant.Plant, res *solve.Results, e *lang.Expr) (Term, *EvalError) {
	switch e.Kind {
	case lang.ParenExpr:
		return eval(pl, res, e.L)
	case lang.NumberExpr:
		return Term{Num: e.Num, Pure: true}, nil
	case lang.QuantityExpr:
		u, ok := lang.LookupUnit(e.UnitText)
		if !ok {
			return Term{}, &EvalError{Span: e.UnitSpan(), Text: "the unit " + strconv.Quote(e.UnitText) + " is not known"}
		}
		if e.Form != lang.Single && !u.Inches() {
			return Term{}, &EvalError{Span: e.Span, Text: "a range or pair cannot be calculated with"}
		}
		return Term{Num: lang.ToSI(e.Value(), u), Dim: u.Dim, Unit: e.UnitText}, nil
	case lang.NameExpr, lang.WordExpr:
		return named(pl, res, e)
	case lang.BinaryExpr:
		l, err := eval(pl, res, e.L)
		if err != nil {
			return l, err
		}
		r, err := eval(pl, res, e.R)
		if err != nil {
			return r, err
		}
		return binary(e, l, r)
	}
	return Term{}, &EvalError{Span: e.Span, Text: "this is not a value to calculate with"}
}

func named(pl *plant.Plant, res *solve.Results, e *lang.Expr) (Term, *EvalError) {
	if q, ok := res.Lookup(e.Text); ok {
		if !q.Known() {
			return Term{}, &EvalError{Span: e.Span, Text: q.Missing, Missing: true}
		}
		return Term{Num: q.Num, Dim: q.Dim, Unit: q.Unit}, nil
	}
	if v, ok := statedValue(pl, e.Text); ok {
		if !v.Known() {
			return Term{}, &EvalError{Span: e.Span, Text: "a value of " + e.Text, Missing: true}
		}
		return Term{Num: v.Num, Dim: v.Slot.Dim}, nil
	}
	if needs := silent(pl, e.Text); needs != "" {
		return Term{}, &EvalError{Span: e.Span, Text: needs, Missing: true}
	}
	return Term{}, &EvalError{Span: e.Span, Text: "there is no value named " + e.Text}
}

// silent says what the text would have to state of a part that it names, where the
// part is stated to be unknown, or could state the value and does not; empty where
// the name makes no sense.
func silent(pl *plant.Plant, path string) string {
	part, name := ownerOf(pl, path)
	if part == nil {
		return ""
	}
	if part.First().Open() {
		return "what is still unknown of " + part.Label()
	}
	if part.Row != nil {
		if s := part.Row.Slot(name); s != nil && s.Type == lang.QuantityType {
			return "the " + strings.ReplaceAll(name, "-", " ") + " of " + part.Label()
		}
	}
	return ""
}

// ownerOf splits a path into the part that it names and the rest.
func ownerOf(pl *plant.Plant, path string) (part *plant.Part, name string) {
	for i := len(path) - 1; i > 0; i-- {
		if path[i] == '.' {
			if part := pl.Find(path[:i]); part != nil {
				return part, path[i+1:]
			}
		}
	}
	return nil, ""
}

// statedValue finds a value that the text states: "G1.length".
func statedValue(pl *plant.Plant, path string) (plant.Value, bool) {
	part, name := ownerOf(pl, path)
	v := part.Get(name)
	return v, v.Given && v.Slot.Type == lang.QuantityType
}

func binary(e *lang.Expr, l, r Term) (Term, *EvalError) {
	switch e.Op() {
	case "*":
		return Term{Num: l.Num * r.Num, Dim: lang.MulDim(l.Dim, r.Dim), Pure: l.Pure && r.Pure, Unit: oneUnit(l, r)}, nil
	case "/":
		if r.Num == 0 {
			return Term{}, &EvalError{Span: e.R.Span, Text: "this is zero and cannot divide"}
		}
		t := Term{Num: l.Num / r.Num, Dim: lang.DivDim(l.Dim, r.Dim), Pure: l.Pure && r.Pure}
		if r.Pure {
			t.Unit = l.Unit
		}
		return t, nil
	case "+", "-":
		dim, ok := lang.AddDim(l.Dim, r.Dim, e.Op() == "-")
		if !ok {
			return Term{}, &EvalError{Span: e.Span, Text: fmt.Sprintf("a %s and a %s cannot be added or subtracted", l.Dim, r.Dim)}
		}
		if e.Op() == "-" {
			return Term{Num: l.Num - r.Num, Dim: dim, Unit: sameUnit(l, r, dim)}, nil
		}
		return Term{Num: l.Num + r.Num, Dim: dim, Unit: sameUnit(l, r, dim)}, nil
	}
	return Term{}, &EvalError{Span: e.Span, Text: "the operator " + e.Op() + " does not belong here"}
}

func oneUnit(l, r Term) string {
	switch {
	case l.Pure:
		return r.Unit
	case r.Pure:
		return l.Unit
	}
	return ""
}

func sameUnit(l, r Term, dim lang.Dimension) string {
	if dim != l.Dim {
		return ""
	}
	if l.Unit != "" {
		return l.Unit
	}
	return r.Unit
}

// Compare judges "L op R" of a requirement.
func (p *Pass) Compare(e *lang.Expr) (l, r Term, holds bool, err *EvalError) {
	if e.Kind != lang.CompareExpr {
		return l, r, false, &EvalError{Span: e.Span, Text: "a requirement compares two values with <=, >=, < or >"}
	}
	if l, err = p.Eval(e.L); err != nil {
		return l, r, false, err
	}
	if r, err = p.Eval(e.R); err != nil {
		return l, r, false, err
	}
	if !l.Pure && !r.Pure && !lang.Comparable(l.Dim, r.Dim) {
		return l, r, false, &EvalError{Span: e.Span, Text: fmt.Sprintf("a %s cannot be compared with a %s", l.Dim, r.Dim)}
	}
	switch e.Op() {
	case "<=":
		holds = atMost(l.Num, r.Num)
	case ">=":
		holds = atLeast(l.Num, r.Num)
	case "<":
		holds = !atLeast(l.Num, r.Num)
	case ">":
		holds = !atMost(l.Num, r.Num)
	}
	return l, r, holds, nil
}
