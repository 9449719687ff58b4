package lang

// State says what is known of a value. Silence is not a state of a value: a
// slot that nobody filled has no Field at all.
type State uint8

// The states of a value.
const (
	Invalid   State = iota // written, but not to be read as this slot wants it; a Problem says why
	Known                  // a value
	Absent                 // the word none: a stated absence
	ToBeFound              // the word unknown: open work, never a pass
)

// Bound is a statement after the walk against its row. Like the Head it belongs
// to, it is shared by equal text and never changes; spans are relative.
type Bound struct {
	Row      *Row
	Name     *Expr   // the leading name or span, nil without one
	Names    []Expr  // RefersMany: all of them
	Fields   []Field // in the order written
	Problems []Problem
	names    NameSet // of the slots filled
}

// Field is one filled slot.
type Field struct {
	Slot   *Slot
	bit    NameSet // of the slot's name
	Label  Span    // the label or suffix word; empty for a plain positional slot
	Span   Span    // label and values together
	Values []Value
}

// Value is one value of a field.
type Value struct {
	State State
	Expr  *Expr
	// Num and Num2 are in the unit of lang.SI for the slot's dimension: SI base
	// and derived units, temperatures in degC, temperature differences in K.
	Num, Num2 float64
	Word      string // choice, flag, code, text, date, size or name as written
}

// Field gives the field of the slot with that stable name, nil if not filled.
func (b *Bound) Field(name string) *Field { return b.FieldBit(name, NameBit(name)) }

// FieldBit is Field for a name whose bit is at hand.
func (b *Bound) FieldBit(name string, bit NameSet) *Field {
	if b.names&bit == 0 {
		return nil
	}
	for i := range b.Fields {
		if f := &b.Fields[i]; f.bit == bit && f.Slot.Name == name {
			return f
		}
	}
	return nil
}

// Filled is the set of the names of the slots that have a field.
func (b *Bound) Filled() NameSet { return b.names }
