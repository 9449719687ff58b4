package lang

import (
	"slices"
	"strconv"
	"strings"
)

// walk binds one head against one row.
type walk struct {
	h      *Head
	row    *Row
	b      *Bound
	values []Value // for the fields
}

func bindHead(h *Head, row *Row) *Bound { return bindIn(&memory{}, h, row) }

func bindIn(m *memory, h *Head, row *Row) *Bound {
	values := 0
	for i := range h.Items {
		values += len(h.Items[i].Exprs)
	}
	w := walk{h: h, row: row, b: &m.bounds.Reserve(1)[:1][0], values: m.values.Reserve(values)}
	*w.b = Bound{Row: row, Fields: m.fields.Reserve(len(h.Items))}
	i := w.leadingName()
	if !w.wholly(i) {
		for i < len(h.Items) {
			i = w.item(i)
		}
		w.required()
	}
	for i := range w.b.Fields {
		f := &w.b.Fields[i]
		f.bit = NameBit(f.Slot.Name)
		w.b.names |= f.bit
	}
	if h.kept {
		return w.b.own(len(w.values))
	}
	k := len(w.b.Fields)
	m.bounds.Keep(1)
	m.fields.Keep(k)
	m.values.Keep(len(w.values))
	w.b.Fields = w.b.Fields[:k:k]
	return w.b
}

// own copies a binding of n values, for a head that outlives the memory of its
// file.
func (b *Bound) own(n int) *Bound {
	out, values := *b, make([]Value, 0, n)
	out.Fields = make([]Field, len(b.Fields))
	for i := range b.Fields {
		f := &out.Fields[i]
		*f = b.Fields[i]
		from := len(values)
		values = append(values, f.Values...)
		f.Values = values[from:len(values):len(values)]
	}
	return &out
}

// wholly binds a statement of the design that says nothing but none or unknown
// at i: the part is stated to be absent, or open. Nothing more is asked of it.
func (w *walk) wholly(i int) bool {
	if i != len(w.h.Items)-1 || w.row.Stage < 1 || w.row.Stage > lastDesignStage {
		return false
	}
	it := &w.h.Items[i]
	e := &it.Exprs[0]
	if len(it.Exprs) > 1 || e.Kind != WordExpr || e.Text != "none" && e.Text != "unknown" {
		return false
	}
	var first *Slot
	for _, s := range w.row.Slots {
		if s.Type == FlagType {
			continue
		}
		if s.Label == "" && s.Suffix == "" {
			first = s
			break
		}
		if first == nil {
			first = s
		}
	}
	if first == nil && len(w.row.Slots) > 0 {
		first = w.row.Slots[0] // a row of flags alone: "isolator none"
	}
	if first == nil {
		return false
	}
	w.fill(first, Span{}, it)
	return true
}

// lastDesignStage is the last stage that designs parts; persons, records,
// deviations and cautions come behind it.
const lastDesignStage = 14

func (w *walk) problem(p Problem) {
	if p.Severity == Note {
		p.Severity = Error
	}
	w.b.Problems = append(w.b.Problems, p)
}

// leadingName takes the first name and returns where the rest begins.
func (w *walk) leadingName() int {
	role := w.row.Name
	if role == NoName {
		return 0
	}
	if len(w.h.Items) > 0 {
		it := &w.h.Items[0]
		e := &it.Exprs[0]
		many := role == RefersMany
		switch {
		case e.Kind == NameExpr || e.Kind == SpanExpr && role != Defines && role != MayDefine,
			e.Kind == WordExpr && (role == Refers || many) && w.freeWord(e.Text):
			if len(it.Exprs) > 1 && !many {
				w.problem(Problem{Span: it.Span(), Rule: "wrong-value", Message: "The statement " + w.row.Keyword + " takes one name.", Mend: "write a statement for each"})
			}
			w.b.Name = e
			if many {
				w.b.Names = it.Exprs
			}
			if role == Defines || role == DefinesMany || role == MayDefine {
				w.definedName(e)
			}
			return 1
		case e.Kind == SizeExpr && role != MayDefine && role != Refers && role != RefersMany:
			w.problem(Problem{
				Span: e.Span, Rule: "name-reserved",
				Message: e.Text + " reads as a size and cannot be the name of a part.", Mend: "choose a name such as " + e.Text[:1] + "x-" + e.Text[1:],
			})
			w.b.Name = e
			return 1
		case e.Kind == SpanExpr && (role == Defines || role == MayDefine):
			w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "The statement " + w.row.Keyword + " describes one part, not a span of parts.", Mend: "write a statement for each"})
			w.b.Name = e
			return 1
		}
	}
	if role == MayDefine {
		return 0
	}
	at := w.h.KeySpan
	p := Problem{Span: at, Rule: "name-missing", Message: "The statement " + w.row.Keyword + " lacks its name.", Mend: "write a name that starts with a capital letter behind " + w.row.Keyword}
	if role == Refers || role == RefersMany {
		p.Message, p.Mend = "The statement "+w.row.Keyword+" does not say which part it speaks of.", "write the name of the part behind "+w.row.Keyword
	}
	if len(w.h.Items) > 0 {
		if e := &w.h.Items[0].Exprs[0]; e.Kind == WordExpr && w.freeWord(e.Text) {
			fixed := strings.ToUpper(e.Text[:1]) + e.Text[1:]
			p.Span, p.Message, p.Mend = e.Span, "The name "+e.Text+" starts with a small letter; names start with a capital.", "write "+fixed
			p.Fixes = []Fix{{Title: "Write " + fixed, Edits: []Edit{{Span: e.Span, NewText: fixed}}, Best: true}}
			w.problem(p)
			return 1
		}
	}
	w.problem(p)
	return 0
}

func (w *walk) definedName(e *Expr) {
	if strings.Contains(e.Text, ".") {
		w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "The name " + e.Text + " has a dot; a dot leads to a part of a part.", Mend: "choose a name without a dot"})
	}
	if e.Kind != SpanExpr {
		return
	}
	if _, _, ok := spanBounds(e); !ok {
		w.problem(Problem{Span: e.Span, Rule: "wrong-value", Message: "The span " + e.Text + ".." + e.Last() + " cannot be counted.", Mend: "write it with one name and rising numbers, as in U1..U8"})
	}
}

// spanBounds gives the numbers of U1..U8.
func spanBounds(e *Expr) (low, high int, ok bool) {
	split := func(s string) (string, int, bool) {
		i := len(s)
		for i > 0 && isDigit(s[i-1]) {
			i--
		}
		n, err := strconv.Atoi(s[i:])
		return s[:i], n, err == nil
	}
	a, low, ok1 := split(e.Text)
	b, high, ok2 := split(e.Last())
	return low, high, ok1 && ok2 && a == b && low <= high && high-low < 256
}

// freeWord tells a word that the row does not use for itself.
func (w *walk) freeWord(word string) bool {
	if word == "none" || word == "unknown" {
		return false
	}
	for _, s := range w.row.Slots {
		if s.Label == word || s.Suffix == word || s.Type == FlagType && s.Name == word || hasWord(s.Choices, word) {
			return false
		}
	}
	return true
}

func hasWord(list []string, word string) bool {
	for _, c := range list {
		if c == word {
			return true
		}
	}
	return false
}

// item binds the item at i, with its label or suffix, and returns the next.
func (w *walk) item(i int) int {
	it := &w.h.Items[i]
	e := &it.Exprs[0]
	if e.Kind == WordExpr && len(it.Exprs) == 1 {
		if s := w.labelled(e.Text, i); s != nil {
			if s.Type == FlagType {
				w.flag(s, e)
				return i + 1
			}
			if i+1 >= len(w.h.Items) || w.isLabelWord(&w.h.Items[i+1], s) {
				w.problem(Problem{Span: e.Span, Rule: "value-missing", Message: "The label " + e.Text + " has no value behind it.", Mend: "write " + wanted(s) + " behind " + e.Text})
				return i + 1
			}
			w.fill(s, e.Span, &w.h.Items[i+1])
			return i + 2
		}
	}
	if i+1 < len(w.h.Items) { // 1.2 m wide
		if next := &w.h.Items[i+1]; len(next.Exprs) == 1 && next.Exprs[0].Kind == WordExpr {
			if s := w.suffixed(next.Exprs[0].Text); s != nil {
				w.fill(s, next.Exprs[0].Span, it)
				return i + 2
			}
		}
	}
	w.positional(it)
	return i + 1
}

// isLabelWord tells whether the item that should be the value of a label is
// itself a label or flag.
func (w *walk) isLabelWord(it *Item, s *Slot) bool {
	e := &it.Exprs[0]
	if e.Kind != WordExpr || len(it.Exprs) > 1 || s.Type == WordType || hasWord(s.Choices, e.Text) {
		return false
	}
	return w.labelled(e.Text, -1) != nil
}

// labelled finds the slot that the word at item i opens. Of several with the
// same label the one that the value fits is meant, else the first.
func (w *walk) labelled(word string, i int) *Slot {
	if w.row.labels.Lacks(word) {
		return nil
	}
	var first *Slot
	for _, s := range w.row.Slots {
		if s.Label != word && (s.Label != "" || s.Type != FlagType || s.Name != word) {
			continue
		}
		if first == nil {
			first = s
		}
		if i >= 0 && i+1 < len(w.h.Items) && fits(s, &w.h.Items[i+1].Exprs[0]) && (!w.filled(s) || s.Repeats) {
			return s
		}
	}
	return first
}

func (w *walk) suffixed(word string) *Slot {
	if w.row.suffixes.Lacks(word) {
		return nil
	}
	for _, s := range w.row.Slots {
		if s.Suffix == word {
			return s
		}
	}
	return nil
}

func (w *walk) filled(s *Slot) bool {
	for i := range w.b.Fields {
		if w.b.Fields[i].Slot == s {
			return true
		}
	}
	return false
}

func (w *walk) flag(s *Slot, e *Expr) {
	if w.filled(s) {
		w.problem(Problem{
			Span: e.Span, Rule: "value-twice", Message: "The word " + e.Text + " stands twice in this statement.", Mend: "take one out",
			Fixes: []Fix{{Title: "Take the second " + e.Text + " out", Edits: []Edit{{Span: Span{e.Span.Start - 1, e.Span.End}}}, Safe: true, Best: true}},
		})
		return
	}
	w.b.Fields = append(w.b.Fields, Field{Slot: s, Span: e.Span})
}

// positional gives an item to the first unfilled positional slot that it fits.
func (w *walk) positional(it *Item) {
	e := &it.Exprs[0]
	var first *Slot // the first unfilled positional slot, for the message
	for _, s := range w.row.Slots {
		if s.Label != "" || s.Suffix != "" || s.Type == FlagType || w.filled(s) && !s.Repeats {
			continue
		}
		if fits(s, e) {
			w.fill(s, Span{}, it)
			return
		}
		if first == nil || first.Type != QuantityType && s.Type == QuantityType && isNumber(e) {
			first = s
		}
	}
	switch {
	case e.Kind == WordExpr:
		w.unknownWord(e)
	case first != nil && (isNumber(e) == (first.Type == QuantityType)):
		w.fill(first, Span{}, it) // says what is wrong with it
	default:
		w.leftOver(it)
	}
}

func isNumber(e *Expr) bool { return e.Kind == QuantityExpr || e.Kind == NumberExpr }

// fits tells whether an expression may fill a positional slot.
func fits(s *Slot, e *Expr) bool {
	if e.Kind == WordExpr && (e.Text == "none" || e.Text == "unknown") {
		return true
	}
	switch s.Type {
	case QuantityType:
		if e.Kind != QuantityExpr {
			return false
		}
		u, ok := e.unitOf()
		return ok && unitFits(s.Dim, u) && formFits(s, e, u)
	case SizeType:
		if e.Kind == QuantityExpr {
			u, ok := e.unitOf()
			return ok && u.Dim == Length && (u.Symbol == "mm" || u.Symbol == "in")
		}
		return e.Kind == SizeExpr
	case ChoiceType:
		return e.Kind == WordExpr && hasWord(s.Choices, e.Text)
	case CodeType:
		return e.Kind == NameExpr || e.Kind == SizeExpr
	case PartType, PartsType:
		return e.Kind == NameExpr || e.Kind == SpanExpr
	case TextType:
		return e.Kind == TextExpr
	case DateType:
		return e.Kind == DateExpr
	case WordType:
		return e.Kind == WordExpr
	case ExprType:
		return true
	}
	return false
}

func unitFits(d Dimension, u *Unit) bool {
	switch {
	case u.Dim == d, d == NoDimension:
		return true
	case d == Slope:
		return u.Dim == Angle || u.Dim == Ratio && u.Symbol == "%"
	}
	return false
}

func formFits(s *Slot, e *Expr, u *Unit) bool {
	form := e.Form
	if form == Pair && u.Inches() {
		form = Single
	}
	if len(s.Forms) == 0 {
		return form == Single
	}
	for _, f := range s.Forms {
		if f == form {
			return true
		}
	}
	return false
}

func (w *walk) unknownWord(e *Expr) {
	var words []string
	for _, s := range w.row.Slots {
		switch {
		case s.Label != "" && slices.Contains(words, s.Label): // one label for two dimensions
		case s.Label != "":
			words = append(words, s.Label)
		case s.Suffix != "":
			words = append(words, s.Suffix)
		case s.Type == FlagType:
			words = append(words, s.Name)
		default:
			words = append(words, s.Choices...)
		}
	}
	p := Problem{Span: e.Span, Rule: "unknown-word", Message: "The word " + e.Text + " has no meaning in " + Article(w.row.Keyword) + " statement."}
	if near := Suggest(e.Text, words); near != "" {
		p.Mend = "did you mean " + near + "?"
		p.Fixes = []Fix{{Title: "Write " + near, Edits: []Edit{{Span: e.Span, NewText: near}}, Best: true}}
	} else if len(words) > 0 {
		p.Mend = "use one of " + strings.Join(words, ", ")
	} else {
		p.Mend = "take it out"
	}
	w.problem(p)
}

func (w *walk) leftOver(it *Item) {
	e := &it.Exprs[0]
	text := w.h.Text[it.Span().Start:it.Span().End]
	p := Problem{Span: it.Span(), Rule: "value-left-over", Message: "There is no place for " + text + " in this " + w.row.Keyword + " statement.", Mend: "give it its label, or take it out"}
	if isNumber(e) {
		if u, ok := e.unitOf(); ok {
			for _, s := range w.row.Slots {
				if s.Label != "" && s.Type == QuantityType && unitFits(s.Dim, u) && !w.filled(s) {
					p.Mend = "write the label " + s.Label + " before it if that is what it says"
					break
				}
			}
		} else if e.UnitText != "" {
			w.unknownUnit(e, NoDimension)
			return
		}
	}
	w.problem(p)
}

func (w *walk) required() {
	for _, s := range w.row.Slots {
		if !s.Required || w.filled(s) {
			continue
		}
		what := s.Help
		if what == "" {
			what = s.Name
		}
		mend := "write " + wanted(s)
		if s.Label != "" {
			mend = "write " + s.Label + " and " + wanted(s)
		}
		w.problem(Problem{
			Span: w.h.KeySpan, Rule: "value-missing",
			Message: "The statement " + w.row.Keyword + " does not state its " + strings.ReplaceAll(s.Name, "-", " ") + " (" + what + ").", Mend: mend,
		})
	}
}
