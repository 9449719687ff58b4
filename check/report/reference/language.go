package reference

import (
	"fmt"
	"slices"
	"strings"

	"example.org/tundish/lang"
)

// Language is the reference of the language, as the schema has it.
type Language struct {
	Blocks []Block     `json:"blocks"`
	Units  []Dimension `json:"units"`
}

// Block is a place where statements stand: a kind of file or a block in braces.
type Block struct {
	Name       string      `json:"name"`
	Statements []Statement `json:"statements"`
	Also       []Also      `json:"also"` // statements told elsewhere that may stand here too
}

// Also leads to a statement that is told under another block.
type Also struct {
	Keyword string `json:"keyword"`
	At      string `json:"at"` // its anchor
}

// Statement is one statement of the language.
type Statement struct {
	Anchor  string   `json:"anchor"` // "gas-run.pipe"
	Keyword string   `json:"keyword"`
	In      []string `json:"in"`
	Times   string   `json:"times"`
	Name    string   `json:"name"`  // what its first name does
	Block   string   `json:"block"` // the block it opens; empty: none
	Help    string   `json:"help"`
	Source  string   `json:"source,omitempty"`
	Example string   `json:"example"`
	Slots   []Slot   `json:"slots"`
}

// Slot is one place of a statement for a value.
type Slot struct {
	Name    string `json:"name"`
	Written string `json:"written"` // "rise LENGTH", "LENGTH wide", "upper | lower"
	Takes   string `json:"takes"`   // "length in m, mm; 0.01 m to 1000 m"
	Needed  bool   `json:"needed"`
	Help    string `json:"help"`
}

// Dimension is a kind of quantity with the units that it is written in.
type Dimension struct {
	Name  string `json:"name"`
	Units []Unit `json:"units"`
}

// Unit is one unit of the language.
type Unit struct {
	Symbol string `json:"symbol"`
	Help   string `json:"help"`
}

// OfLanguage tells of every statement of a schema, in the order of its table, and
// of every unit.
func OfLanguage(s *lang.Schema) *Language {
	l := &Language{}
	at := map[string]int{}
	block := func(name string) *Block {
		i, ok := at[name]
		if !ok {
			i = len(l.Blocks)
			at[name] = i
			l.Blocks = append(l.Blocks, Block{Name: name, Statements: []Statement{}, Also: []Also{}})
		}
		return &l.Blocks[i]
	}
	for i := range s.Rows {
		st := statement(s, &s.Rows[i])
		b := block(st.In[0])
		b.Statements = append(b.Statements, st)
		for _, in := range st.In[1:] {
			b := block(in)
			b.Also = append(b.Also, Also{st.Keyword, st.Anchor})
		}
	}
	for d := lang.NoDimension; d < lang.Derived; d++ {
		x := Dimension{Name: d.String()}
		for _, u := range lang.UnitsOf(d, lang.Metric) {
			x.Units = append(x.Units, Unit{u.Symbol, u.Name})
		}
		if len(x.Units) > 0 {
			l.Units = append(l.Units, x)
		}
	}
	return l
}

// Find gives the statements with a keyword, in all blocks.
func (l *Language) Find(keyword string) []Statement {
	var out []Statement
	for _, b := range l.Blocks {
		for _, st := range b.Statements {
			if st.Keyword == keyword {
				out = append(out, st)
			}
		}
	}
	return out
}

// Only is the reference cut to the statements with a keyword.
func (l *Language) Only(keyword string) *Language {
	out := &Language{}
	for _, b := range l.Blocks {
		cut := Block{Name: b.Name, Also: []Also{}}
		for _, st := range b.Statements {
			if st.Keyword == keyword {
				cut.Statements = append(cut.Statements, st)
			}
		}
		if len(cut.Statements) > 0 {
			out.Blocks = append(out.Blocks, cut)
		}
	}
	return out
}

// Keywords lists every word that starts a statement, each once.
func (l *Language) Keywords() []string {
	var out []string
	for _, b := range l.Blocks {
		for _, st := range b.Statements {
			if !slices.Contains(out, st.Keyword) {
				out = append(out, st.Keyword)
			}
		}
	}
	return out
}

func statement(s *lang.Schema, r *lang.Row) Statement {
	st := Statement{
		Anchor: r.In[0] + "." + r.Keyword, Keyword: r.Keyword, In: r.In, Times: times(r.Times), Name: naming(r), Help: r.Help,
		Source: r.Source, Example: r.Example, Slots: []Slot{},
	}
	if r.Block != lang.NoBlock && len(s.RowsOf(r.BlockName())) > 0 {
		st.Block = r.BlockName()
	}
	for _, s := range r.Slots {
		st.Slots = append(st.Slots, slot(s))
	}
	return st
}

func times(t lang.Times) string {
	switch t {
	case lang.Once:
		return "once"
	case lang.AtMostOnce:
		return "once at most"
	}
	return "as often as needed"
}

func naming(r *lang.Row) string {
	of := "a part"
	if len(r.Refers) > 0 {
		of = strings.Join(r.Refers, ", ")
	}
	switch r.Name {
	case lang.Defines:
		return "names its part"
	case lang.DefinesMany:
		return "names its part, or a span of parts (U1..U8)"
	case lang.MayDefine:
		return "may name its part"
	case lang.Refers:
		return "refers to " + of
	case lang.RefersMany:
		return "refers to one or more: " + of
	}
	return ""
}

func slot(s *lang.Slot) Slot {
	out := Slot{Name: s.Name, Needed: s.Required, Help: s.Help}
	what, takes := "", ""
	switch s.Type {
	case lang.QuantityType:
		what = strings.ToUpper(strings.ReplaceAll(s.Dim.String(), " ", "-"))
		takes = s.Dim.String() + " in " + strings.Join(units(s), ", ")
		if s.Low < s.High {
			takes += fmt.Sprintf("; likely %s to %s", lang.Quantity(s.Low, s.Dim, lang.Metric), lang.Quantity(s.High, s.Dim, lang.Metric))
		}
		for _, f := range s.Forms {
			switch f {
			case lang.Range:
				what, takes = what+".."+what, takes+"; a range"
			case lang.Pair:
				what, takes = what+"/"+what, takes+"; a pair"
			}
		}
	case lang.SizeType:
		what, takes = "SIZE", "nominal size: DN80, 35 mm, 1 1/4 in"
	case lang.ChoiceType:
		what, takes = strings.Join(s.Choices, " | "), "one of these words"
	case lang.FlagType:
		what, takes = s.Name, "the word itself, or nothing"
		if s.Label != "" {
			what = s.Label
		}
		out.Written, out.Takes = what, takes
		return out
	case lang.CodeType:
		what, takes = "CODE", "a code"
		if len(s.Choices) > 0 {
			what, takes = strings.Join(s.Choices, " | "), "one of these codes"
		}
	case lang.PartType:
		what, takes = "NAME", "the name of a part"
	case lang.PartsType:
		what, takes = "NAMES", "names of parts, or a span"
	case lang.TextType:
		what, takes = `"TEXT"`, "a text in quotes"
	case lang.DateType:
		what, takes = "DATE", "a date: 2026-03-31, 1974-01"
	case lang.WordType:
		what, takes = "WORD", "a word"
		if len(s.Choices) > 0 {
			what, takes = strings.Join(s.Choices, " | ")+" | WORD", "one of these words or another"
		}
	case lang.ExprType:
		what, takes = "CONDITION", "a comparison of computed values"
	}
	if len(s.Refers) > 0 {
		takes += " (" + strings.Join(s.Refers, ", ") + ")"
	}
	if s.List {
		what += ", ..."
		takes += "; a list"
	}
	if s.Repeats {
		takes += "; may be repeated"
	}
	if s.Default != "" {
		takes += "; without it " + s.Default + " by " + s.DefaultFrom
	}
	if s.Computed != "" {
		takes += "; compared with the computed " + s.Computed
	}
	out.Written = strings.TrimSpace(s.Label + " " + what + " " + s.Suffix)
	out.Takes = takes
	return out
}

func units(s *lang.Slot) []string {
	if len(s.Units) > 0 {
		return s.Units
	}
	var out []string
	for _, u := range lang.UnitsOf(s.Dim, lang.Metric) {
		out = append(out, u.Symbol)
	}
	return out
}
