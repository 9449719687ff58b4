package lang

import (
	"math"
	"strconv"
	"strings"
)

// fill gives a slot its values.
func (w *walk) fill(s *Slot, label Span, it *Item) {
	if w.filled(s) && !s.Repeats {
		what := s.Label
		if what == "" {
			what = strings.ReplaceAll(s.Name, "-", " ")
		}
		w.problem(Problem{Span: it.Span(), Rule: "value-twice", Message: "The " + what + " stands twice in this statement.", Mend: "take one of the two out"})
		return
	}
	if len(it.Exprs) > 1 && !s.List {
		w.problem(Problem{Span: it.Span(), Rule: "wrong-value", Message: "Here one value is wanted, not a list.", Mend: "keep one of them, or take the comma out"})
	}
	from := len(w.values)
	for i := range it.Exprs {
		e := &it.Exprs[i]
		w.values = append(w.values, Value{State: Known, Expr: e, Word: e.Text})
		w.value(s, e, &w.values[len(w.values)-1])
	}
	w.b.Fields = append(w.b.Fields, Field{Slot: s, Label: label, Span: label.Join(it.Span()), Values: w.values[from:len(w.values):len(w.values)]})
}

// value reads an expression as the slot wants it; v holds its word.
func (w *walk) value(s *Slot, e *Expr, v *Value) {
	if e.Kind == WordExpr {
		switch e.Text {
		case "none":
			v.State = Absent
			return
		case "unknown":
			v.State = ToBeFound
			return
		}
	}
	switch s.Type {
	case QuantityType:
		w.quantity(s, e, v)
		return
	case SizeType:
		w.size(s, e, v)
		return
	case ExprType:
		return
	case CodeType:
		if fits(s, e) && len(s.Choices) > 0 && !hasWord(s.Choices, e.Text) {
			w.wrongChoice(s, e, v)
			return
		}
		if fits(s, e) {
			return
		}
	case ChoiceType:
		if e.Kind == WordExpr && hasWord(s.Choices, e.Text) {
			return
		}
		w.wrongChoice(s, e, v)
		return
	case PartType, PartsType:
		if e.Kind == NameExpr || e.Kind == SpanExpr || e.Kind == WordExpr {
			return
		}
	case DateType:
		if e.Kind == DateExpr {
			if _, ok := ParseDate(e.Text); ok {
				return
			}
			w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "There is no day " + e.Text + " in the calendar.", Mend: "check the date"})
			v.State = Invalid
			return
		}
	default:
		if fits(s, e) {
			return
		}
	}
	w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "Here " + wanted(s) + " is wanted, not " + described(e) + ".", Mend: "write " + wanted(s)})
	v.State = Invalid
}

func (w *walk) wrongChoice(s *Slot, e *Expr, v *Value) {
	v.State = Invalid
	p := Problem{Span: e.Span, Rule: "wrong-value", Message: described(e) + " is none of the words that fit here.", Mend: "use one of " + strings.Join(s.Choices, ", ")}
	if e.Kind == WordExpr || e.Kind == NameExpr {
		p.Message = "The word " + e.Text + " does not fit here."
		if near := Suggest(e.Text, s.Choices); near != "" {
			p.Mend = "did you mean " + near + "?"
			p.Fixes = []Fix{{Title: "Write " + near, Edits: []Edit{{Span: e.Span, NewText: near}}, Best: true}}
		}
	}
	w.problem(p)
}

func (w *walk) quantity(s *Slot, e *Expr, v *Value) {
	v.State = Invalid
	if e.Kind == NumberExpr {
		list := UnitsOf(s.Dim, Metric)
		p := Problem{Span: e.Span, Rule: "unit-missing", Message: "The number " + e.Text + " has no unit.", Mend: "write a unit of " + s.Dim.String() + " behind it"}
		if len(list) > 0 {
			p.Mend += ", such as " + list[0].Symbol
		}
		w.problem(p)
		return
	}
	if e.Kind != QuantityExpr {
		w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "Here " + wanted(s) + " is wanted, not " + described(e) + ".", Mend: "write " + wanted(s)})
		return
	}
	u, ok := e.unitOf()
	if !ok {
		w.unknownUnit(e, s.Dim)
		return
	}
	if !unitFits(s.Dim, u) {
		p := Problem{
			Span: e.Span, Rule: "wrong-unit",
			Message: "A" + Article(u.Dim.String())[1:] + " (" + e.UnitText + ") stands where " + Article(s.Dim.String()) + " is wanted.", Mend: "give it in " + unitList(s.Dim),
		}
		if s.Dim == TempDiff && u.Dim == Temperature {
			p.Message = "A temperature difference is given in " + e.UnitText + ", which is the unit of a temperature."
			to := "K"
			if u.US {
				to = "F"
			}
			p.Mend = "write " + to
			p.Fixes = []Fix{{Title: "Write " + to, Edits: []Edit{{Span: e.UnitSpan(), NewText: to}}, Safe: true, Best: true}}
		}
		w.problem(p)
		return
	}
	if !formFits(s, e, u) {
		w.problem(Problem{Span: e.Span, Rule: "wrong-form", Message: formWords(e.Form) + " stands where " + formsWanted(s) + " is wanted.", Mend: "write " + formsWanted(s)})
		return
	}
	v.State = Known
	v.Num, v.Num2 = ToSI(e.Num, u), ToSI(e.Num2, u)
	if e.Form == Single {
		v.Num2 = 0
	}
	if e.Form == Pair && u.Inches() {
		v.Num, v.Num2 = ToSI(e.Value(), u), 0
	}
	if s.Dim == Slope && u.Dim == Angle {
		v.Num = math.Tan(v.Num)
	}
	w.plausible(s, e, v)
}

// plausible warns of a number outside the physical range of the slot, and of a
// range that runs downwards.
func (w *walk) plausible(s *Slot, e *Expr, v *Value) {
	if e.Form == Range && v.Num > v.Num2 {
		w.problem(Problem{Span: e.NumSpan(), Rule: "wrong-form", Message: "The range runs from the greater number to the smaller.", Mend: "write the smaller number first"})
		v.State = Invalid
		return
	}
	if s.Low == s.High {
		return
	}
	check := func(x float64) {
		if x < s.Low || x > s.High {
			w.problem(Problem{
				Span: e.Span, Rule: "implausible-value", Severity: Warning,
				Message: "The value " + w.h.Text[e.Span.Start:e.Span.End] + " is outside what is likely for " + strings.ReplaceAll(s.Name, "-", " ") + ".",
				Mend:    "check number and unit; likely is " + In(s.Low, e.UnitText) + " to " + In(s.High, e.UnitText),
			})
		}
	}
	check(v.Num)
	if e.Form != Single && !(e.Form == Pair && e.UnitText == "in") {
		check(v.Num2)
	}
}

func (w *walk) unknownUnit(e *Expr, d Dimension) {
	p := Problem{Span: e.UnitSpan(), Rule: "unknown-unit", Message: "The unit " + strconv.Quote(e.UnitText) + " is not known."}
	if s := SuggestUnit(e.UnitText, d); s != "" {
		p.Mend = "did you mean " + s + "?"
		p.Fixes = []Fix{{Title: "Write " + s, Edits: []Edit{{Span: e.UnitSpan(), NewText: s}}, Best: true, Safe: foreignUnits()[e.UnitText] == s}}
	} else if d != NoDimension {
		p.Mend = "use " + unitList(d)
	} else {
		p.Mend = "use a unit of the language"
	}
	w.problem(p)
}

func (w *walk) size(s *Slot, e *Expr, v *Value) {
	if !fits(s, e) {
		w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "Here " + wanted(s) + " is wanted, not " + described(e) + ".", Mend: "write " + wanted(s)})
		v.State = Invalid
		return
	}
	if e.Kind == QuantityExpr {
		u, _ := e.unitOf()
		v.Num = ToSI(e.Value(), u)
		v.Word = w.h.Text[e.Span.Start:e.Span.End]
		return
	}
	n := 0.0
	for i := 0; i < len(e.Text); i++ {
		if isDigit(e.Text[i]) {
			n = n*10 + float64(e.Text[i]-'0')
		}
	}
	v.Num = n / 1000 // a nominal size in meters, for ordering; the bore is in the pipe tables
}

func wanted(s *Slot) string {
	switch s.Type {
	case QuantityType:
		return Article(s.Dim.String()) + " in " + unitList(s.Dim)
	case SizeType:
		return "a size such as DN50, 35 mm or 1 1/4 in"
	case ChoiceType:
		return "one of " + strings.Join(s.Choices, ", ")
	case CodeType:
		return "a code in capitals"
	case PartType:
		return "the name of a part"
	case PartsType:
		return "names of parts"
	case TextType:
		return `a text in "quotation marks"`
	case DateType:
		return "a date such as 2025-10-03"
	case WordType:
		return "a word"
	}
	return "an expression"
}

func unitList(d Dimension) string {
	var b strings.Builder
	for i, u := range UnitsOf(d, Metric) {
		if i == 4 {
			break
		}
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(u.Symbol)
	}
	return b.String()
}

func described(e *Expr) string {
	switch e.Kind {
	case NumberExpr, QuantityExpr:
		return "a number"
	case SizeExpr:
		return "the size " + e.Text
	case DateExpr:
		return "the date " + e.Text
	case TextExpr:
		return "a text"
	case WordExpr:
		return "the word " + e.Text
	case NameExpr, SpanExpr:
		return "the name " + e.Text
	}
	return "an expression"
}

func formWords(f NumberForm) string {
	switch f {
	case Range:
		return "A range"
	case Pair:
		return "A pair of numbers"
	}
	return "A single number"
}

func formsWanted(s *Slot) string {
	if len(s.Forms) == 0 {
		return "one number"
	}
	var out []string
	for _, f := range s.Forms {
		switch f {
		case Range:
			out = append(out, "a range such as 1..4")
		case Pair:
			out = append(out, "a pair such as 80/60")
		default:
			out = append(out, "one number")
		}
	}
	return strings.Join(out, " or ")
}
