package lang

import "strings"

// File is one parsed source file. It is never nil and never partial: what could
// not be read is a Problem, the rest of the file stands.
type File struct {
	Source     *Source
	Statements []*Statement // top level, in order
	Problems   []Problem    // of reading: syntax, braces, limits; sorted by place
	Comments   []Comment    // in order
	memory     *memory
}

// Comment is one "#" comment, without the line end.
type Comment struct {
	Span Span
	Own  bool // it has the line to itself
}

// Statement is one statement in its place: the shared, immutable Head, where it
// starts, and the block that follows it.
type Statement struct {
	Head   *Head
	Base   int // offset of the statement's first byte in the file
	Parent *Statement
	Block  []*Statement // in order; nil without a block
	Braces Span         // from "{" to "}" inclusive; empty without a block
	Bound  *Bound       // filled by Bind; nil for an unknown keyword
}

// Abs turns a span of the head into a span of the file.
func (st *Statement) Abs(s Span) Span { return s.Add(st.Base) }

// Span is the whole statement, block included.
func (st *Statement) Span() Span {
	s := st.Abs(st.Head.Span)
	if !st.Braces.Empty() {
		s.End = st.Braces.End
	}
	return s
}

// HeadSpan is the statement without its block.
func (st *Statement) HeadSpan() Span { return st.Abs(st.Head.Span) }

// Head is the parsed text of one statement without its block: a keyword and a
// flat list of items. Heads are shared by equal text and never change.
type Head struct {
	Text    string // the statement's text, from keyword to the end of the last item
	Keyword string
	KeySpan Span // of the keyword
	Items   []Item
	Span    Span     // {0, len(Text)}
	Problem *Problem // at most one; spans relative
	bounds  boundCache
	kept    bool // it lies in memory of its own, for a cache
}

// Item is one item of a statement: one expression, or several joined by commas.
type Item struct{ Exprs []Expr }

// Span is the item from its first expression to its last.
func (it *Item) Span() Span { return Span{it.Exprs[0].Span.Start, it.Exprs[len(it.Exprs)-1].Span.End} }

// ExprKind says what an expression is.
type ExprKind uint8

// The kinds of expression.
const (
	BadExpr      ExprKind = iota
	NumberExpr            // 0.95, bare: only before an operator, or where a unit is missing
	QuantityExpr          // 22 m, 80/60 degC, 17.5..25 mbar, 1 1/4 in, 8 off
	SizeExpr              // DN80, M16, PN16
	DateExpr              // 2025-10-03, 1974-01
	TextExpr              // "one line"; Text is without the quotes
	WordExpr              // back-to-back, basis.load
	NameExpr              // U1, U3.damper, T120-P1-W
	SpanExpr              // U1..U8, U1..U8.damper
	BinaryExpr            // L Op R with + - * /
	CompareExpr           // L Op R with <= >= < >
	ParenExpr             // ( L )
)

// NumberForm says how many numbers a quantity carries.
type NumberForm uint8

// The forms of a quantity's number.
const (
	Single NumberForm = iota
	Range             // low..high
	Pair              // first/second, as in 80/60 degC
)

// Expr is an expression. Spans are relative to the statement. A plant holds a
// thousand of them, so what only some kinds have shares a field or is computed.
type Expr struct {
	Kind   ExprKind
	Form   NumberForm
	numLen uint32 // of the number or numbers
	Span   Span
	// Text is the word, name, size, date or text as written; of a SpanExpr the
	// first name, of a BinaryExpr or CompareExpr the operator.
	Text      string
	Num, Num2 float64 // as written, in the written unit
	UnitText  string
	unit      *Unit // nil for one that is not known
	L, R      *Expr // R of a SpanExpr: the last name with its dotted rest
}

// NumSpan is the place of the number or numbers of a quantity.
func (e *Expr) NumSpan() Span { return Span{e.Span.Start, e.Span.Start + int(e.numLen)} }

// unitOf is the unit of a quantity; not found for one that is not known.
func (e *Expr) unitOf() (*Unit, bool) { return e.unit, e.unit != nil }

// UnitSpan is the place of the unit of a quantity; empty without one.
func (e *Expr) UnitSpan() Span { return Span{e.Span.End - len(e.UnitText), e.Span.End} }

// Last is the last name of a SpanExpr, without its dotted rest.
func (e *Expr) Last() string {
	last, _, _ := e.ends()
	return last
}

// Tail is the dotted rest of a SpanExpr ("damper"); empty without one.
func (e *Expr) Tail() string {
	_, tail, _ := e.ends()
	return tail
}

func (e *Expr) ends() (last, tail string, found bool) {
	if e.Kind != SpanExpr || e.R == nil {
		return "", "", false
	}
	return strings.Cut(e.R.Text, ".")
}

// Op is the operator of a BinaryExpr or CompareExpr.
func (e *Expr) Op() string {
	if e.Kind == BinaryExpr || e.Kind == CompareExpr {
		return e.Text
	}
	return ""
}

// Severity of a problem or finding.
type Severity uint8

// The severities, in order.
const (
	Note Severity = iota
	Warning
	Error
)

// String gives the word used in every output.
func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	default:
		return "note"
	}
}

// Problem is a fault of the text itself: it cannot be read, or does not fit the
// schema. It becomes a finding with the rule id given here.
type Problem struct {
	Span     Span // of the file, or of the statement when held by a Head or Bound
	Rule     string
	Severity Severity
	Message  string // one sentence: object, found, what fits
	Mend     string // what to do, in a few words; may be empty
	Fixes    []Fix
	Related  []Related
}

// Fix is one way to mend a finding by editing the text.
type Fix struct {
	Title string
	Edits []Edit
	Safe  bool // it cannot change what the plant means; "fix all" takes only these
	Best  bool // the one an editor offers first
}

// Edit replaces a span of one file with new text.
type Edit struct {
	File    string // empty: the file the finding is in
	Span    Span
	NewText string
}

// Related is a further place that explains a finding.
type Related struct {
	File    string // empty: the same file
	Span    Span
	Message string
}
