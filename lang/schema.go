package lang

// The schema is one table of entries; each says what one statement may hold. It
// drives checking, completion, hover, formatting and the reference page. Entries
// live in schema_*.go, one file per group of stages. They are written out, without
// calls, so that the compiler lays the table down and no process has to make it.

// Times says how often a statement may stand in its block.
type Times uint8

// How often a statement may stand.
const (
	Many       Times = iota
	AtMostOnce       // none or one
	Once             // exactly one; its absence is a finding
)

// NameRole says what the first name of a statement does.
type NameRole uint8

// The roles of a first name.
const (
	NoName      NameRole = iota
	Defines              // gives the part its name: pipe G1
	DefinesMany          // one name or a span, each a part: units U1..U8, drop GD1..GD8
	MayDefine            // may name the part: neutraliser Neut, or without
	Refers               // names a part that stands elsewhere: log of U1
	RefersMany           // names one or more parts: wire U1..U8.damper, cover Flow-H, PF
)

// BlockRule says whether a statement opens a block.
type BlockRule uint8

// Whether a statement opens a block.
const (
	NoBlock BlockRule = iota
	MayBlock
	MustBlock
)

// SlotType is the type of what a slot takes.
type SlotType uint8

// The types of slot.
const (
	QuantityType SlotType = iota // number with a unit of the slot's dimension
	SizeType                     // DN80, 35 mm (copper outside diameter), 1 1/4 in (nominal)
	ChoiceType                   // one of Choices, a word
	FlagType                     // the word Name itself (or Label), present or not
	CodeType                     // a code such as T120-P1-W, X4, R4; a name in form
	PartType                     // a reference to one part
	PartsType                    // references to parts: names, spans, a list
	TextType                     // "text"
	DateType                     // 2025-10-03 or 1974-01
	WordType                     // any word: a rule id, a document kind outside a closed list
	ExprType                     // an expression over computed values
)

// Slot is one place of a statement for a value. A slot without Label and Suffix
// is positional: an item goes to the first unfilled positional slot that it
// fits by type, dimension and choice. A Label opens its slot; a Suffix word
// right after a quantity claims that quantity ("1.2 m wide").
type Slot struct {
	Name        string // stable name by which rules and values ask for it
	Label       string
	Suffix      string
	Type        SlotType
	List        bool // takes a comma list
	Repeats     bool // may stand more than once in the statement ("alarm ... alarm ...")
	Required    bool
	Dim         Dimension
	Forms       []NumberForm // allowed forms; nil means Single
	Units       []string     // offered first by completion; nil: the dimension's usual ones
	Low, High   float64      // physical range in SI for typing slips; equal: no check
	Choices     []string
	Refers      []string // kinds of part; nil: any
	OrderCounts bool     // the order of the list has a meaning; the formatter keeps it
	Default     string   // source text of the default, only where a standard or practice gives one
	DefaultFrom string   // source of the default, as printed
	Computed    string   // name of the computed value this stated one must agree with
	Help        string   // one phrase
}

// Entry is one statement of the language. The schema makes a Row of it.
type Entry struct {
	In      []string // blocks where it may stand; "plant", "catalogue", "record", "project" are the file kinds
	Keyword string
	Times   Times
	Name    NameRole
	Kind    string   // kind of the part it makes; empty: the keyword
	Refers  []string // kinds the first name may refer to; nil: any
	Block   BlockRule
	Opens   string // name of the block it opens, for In of its children; empty: the keyword
	Slots   []*Slot
	Stage   int    // 1 to 17, 0 for statements of the file itself
	Help    string // one or two sentences
	Example string // a statement that binds without a problem
	Source  string // work that asks for it, where one does
}

// Row is an entry with what answers the usual questions about it.
type Row struct {
	*Entry
	kind     int     // number of PartKind, see Schema.Kind
	keyword  int     // number of the keyword
	names    NameSet // of the part it makes: kind and keyword
	defaults NameSet // of the slots with a default
	labels   NameSet // that open a slot, flags among them
	suffixes NameSet
}

// Names is the set of the names by which the part that the row makes is found in
// its block: kind and keyword.
func (r *Row) Names() NameSet { return r.names }

// Kinds are the numbers of kind and keyword, see Schema.Kind.
func (r *Row) Kinds() (kind, keyword int) { return r.kind, r.keyword }

// Defaults is the set of the names of the slots with a default.
func (r *Row) Defaults() NameSet { return r.defaults }

// PartKind is the kind of part the statement makes.
func (r *Entry) PartKind() string {
	if r.Kind != "" {
		return r.Kind
	}
	return r.Keyword
}

// BlockName is the name of the block the statement opens.
func (r *Entry) BlockName() string {
	if r.Opens != "" {
		return r.Opens
	}
	return r.Keyword
}

// Slot finds a slot by its stable name; nil if there is none.
func (r *Entry) Slot(name string) *Slot {
	for _, s := range r.Slots {
		if s.Name == name {
			return s
		}
	}
	return nil
}
