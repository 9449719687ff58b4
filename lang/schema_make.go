package lang

// Short makers for the rows of the schema; the rows themselves are in the
// schema files, one for each group of stages.

func qty(name string, d Dimension, help string) Slot {
	return Slot{Name: name, Type: QuantityType, Dim: d, Help: help}
}

func sizeSlot(help string) Slot { return Slot{Name: "size", Type: SizeType, Help: help} }

func choice(name, help string, words ...string) Slot {
	return Slot{Name: name, Type: ChoiceType, Choices: words, Help: help}
}

func flag(name, help string) Slot { return Slot{Name: name, Type: FlagType, Help: help} }

func part(name, help string, kinds ...string) Slot {
	return Slot{Name: name, Label: name, Type: PartType, Refers: kinds, Help: help}
}

func parts(name, help string, kinds ...string) Slot {
	return Slot{Name: name, Label: name, Type: PartsType, List: true, Refers: kinds, Help: help}
}

func text(name, help string) Slot { return Slot{Name: name, Type: TextType, Help: help} }
func date(name, help string) Slot { return Slot{Name: name, Type: DateType, Help: help} }
func word(name, help string) Slot { return Slot{Name: name, Type: WordType, Help: help} }
func code(name, help string) Slot { return Slot{Name: name, Type: CodeType, Help: help} }

func typeOf(kind string) Slot {
	return Slot{Name: "type", Label: "type", Type: PartType, Refers: []string{kind}, Help: "the catalogue type it follows"}
}

// by makes a slot labelled with its own name.
func (s Slot) by() Slot                      { s.Label = s.Name; return s }
func (s Slot) label(l string) Slot           { s.Label = l; return s }
func (s Slot) suffix(l string) Slot          { s.Suffix = l; return s }
func (s Slot) need() Slot                    { s.Required = true; return s }
func (s Slot) many() Slot                    { s.List = true; return s }
func (s Slot) likely(low, high float64) Slot { s.Low, s.High = low, high; return s }
func (s Slot) ranged() Slot                  { s.Forms = []NumberForm{Range}; return s }
func (s Slot) paired() Slot                  { s.Forms = []NumberForm{Pair}; return s }
func (s Slot) agrees(computed string) Slot   { s.Computed = computed; return s }

// materials of pipes, as every run names them.
var pipeMaterials = []string{"steel", "steel-heavy", "steel-40", "copper", "stainless", "polyethylene", "polypropylene", "plastic"}

func material() Slot {
	return choice("material", "what the pipe is made of: steel is EN 10255 medium, steel-40 is schedule 40", pipeMaterials...)
}

// fittings of a gas or water run.
func fittingSlots() []Slot {
	return []Slot{
		qty("bends", Count, "bends or elbows of 90 degrees").by(),
		qty("half-bends", Count, "bends of 45 degrees").by(),
		qty("tees", Count, "tees passed straight through").by(),
		qty("branch-tees", Count, "tees turned through").by(),
		qty("valves", Count, "full-bore valves in the run").by(),
		qty("reducers", Count, "changes of size").by(),
		qty("unions", Count, "unions").by(),
		qty("loss", Pressure, "further loss at full flow").by(),
		qty("loss-coefficient", Ratio, "sum of further loss coefficients").by().likely(0, 100),
	}
}

func slots(groups ...any) []Slot {
	var out []Slot
	for _, g := range groups {
		switch g := g.(type) {
		case Slot:
			out = append(out, g)
		case []Slot:
			out = append(out, g...)
		}
	}
	return out
}

func in(blocks ...string) []string { return blocks }

// single makes a row of one fact.
func single(block, keyword string, stage int, help, example string, s ...Slot) Row {
	return Row{In: in(block), Keyword: keyword, Times: AtMostOnce, Slots: s, Stage: stage, Help: help, Example: example}
}
