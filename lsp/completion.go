package lsp

import (
	"encoding/json"
	"sort"
	"strings"

	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// completion item kinds of the protocol
const (
	itemKeyword  = 14
	itemField    = 5
	itemValue    = 12
	itemUnit     = 11
	itemVariable = 6
	itemClass    = 7
)

var _ = on("textDocument/completion", onDocument(func(s *Server, at *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	offset := s.enc.offset(d.src, p.Position)
	f := a.rep.Plant.File
	x := lang.Expect(f, lang.Language(), offset)
	c := completer{s: s, d: d, a: a, x: x, at: at}
	c.offer(offset)
	return object{"isIncomplete": false, "items": c.items}, nil
}))

type completer struct {
	s     *Server
	d     *document
	a     *analysis
	at    *snapshot
	x     lang.Expectation
	items []object
}

// add offers a word; the edit replaces what is typed of it.
func (c *completer) add(label string, kind int, detail, doc string) {
	r := c.s.enc.rangeOf(c.d.src, c.x.Prefix)
	o := object{"label": label, "kind": kind, "textEdit": object{"range": r, "newText": label}, "sortText": sortText(len(c.items))}
	if detail != "" {
		o["detail"] = detail
	}
	if doc != "" {
		o["documentation"] = doc
	}
	c.items = append(c.items, o)
}

// block makes the last item open the block that its statement must have, with
// the cursor where the name or the first line goes; the bare word for a client
// without snippets.
func (c *completer) block(r *lang.Row) {
	if !c.s.client.snippets || r.Block != lang.MustBlock {
		return
	}
	text := r.Keyword
	if r.Name != lang.NoName {
		text += " ${1:Name}"
	}
	if len(r.Slots) > 0 {
		text += " $2"
	}
	o := c.items[len(c.items)-1]
	o["insertTextFormat"] = 2
	o["textEdit"].(object)["newText"] = text + " {\n  $0\n}"
}

func sortText(n int) string {
	return string([]byte{byte('a' + n/676%26), byte('a' + n/26%26), byte('a' + n%26)})
}

func (c *completer) offer(offset int) {
	c.items = []object{}
	switch {
	case c.x.Keywords != nil:
		for _, r := range c.x.Keywords {
			c.add(r.Keyword, itemKeyword, r.Help, "Example: "+strings.Split(r.Example, "\n")[0])
			c.block(r)
		}
		return
	case c.x.Row == nil:
		return
	case c.x.Unit:
		c.units()
		return
	case c.x.Value != nil:
		c.value(c.x.Value)
		return
	}
	if c.x.Name && (c.x.Row.Name == lang.Refers || c.x.Row.Name == lang.RefersMany) {
		c.names(c.x.Row.Refers)
	}
	for _, s := range c.x.Slots {
		switch {
		case s.Label != "":
			c.add(s.Label, itemField, s.Help, "")
		case s.Type == lang.FlagType:
			c.add(s.Name, itemValue, s.Help, "")
		case s.Suffix == "":
			c.value(s)
		}
	}
}

// units offers the units that may follow the number: those of the slots that
// wait for one.
func (c *completer) units() {
	seen := map[string]bool{}
	sys := system(c.a)
	slots := c.x.Slots
	if c.x.Value != nil {
		slots = []*lang.Slot{c.x.Value}
	}
	for _, s := range slots {
		if s.Type == lang.SizeType {
			for _, u := range []string{"mm", "in"} {
				if !seen[u] {
					seen[u] = true
					c.add(u, itemUnit, "nominal size", "")
				}
			}
			continue
		}
		if s.Type != lang.QuantityType {
			continue
		}
		for _, u := range lang.UnitsOf(s.Dim, sys) {
			if !seen[u.Symbol] {
				seen[u.Symbol] = true
				c.add(u.Symbol, itemUnit, u.Name, s.Help)
			}
		}
	}
}

func (c *completer) value(s *lang.Slot) {
	switch s.Type {
	case lang.ChoiceType:
		for _, w := range s.Choices {
			c.add(w, itemValue, s.Help, "")
		}
	case lang.CodeType:
		for _, w := range s.Choices {
			c.add(w, itemValue, s.Help, "")
		}
	case lang.PartType, lang.PartsType:
		c.names(s.Refers)
	case lang.SizeType:
		c.sizes(s)
	}
}

// names offers parts of the right kind, or types of the catalogues.
func (c *completer) names(kinds []string) {
	for _, k := range kinds {
		if !strings.HasSuffix(k, "-type") {
			continue
		}
		var types []string
		for n, t := range c.a.rep.Plant.Types {
			if t.Kind == k {
				types = append(types, n)
			}
		}
		sort.Strings(types)
		for _, n := range types {
			c.add(n, itemClass, k, "")
		}
		return
	}
	source := c.a.rep.Plant
	if c.d.good != nil && source.Damaged() {
		source = c.d.good.rep.Plant
	}
	groups := map[*lang.Statement]bool{}
	for _, part := range source.All {
		if part.Name == "" || len(kinds) > 0 && !ofKind(part, kinds) {
			continue
		}
		if part.Of > 1 && part.Index == 0 && part.Bound.Name != nil && part.Bound.Name.Kind == lang.SpanExpr && !groups[part.Stmt] {
			groups[part.Stmt] = true
			c.add(part.Bound.Name.Text+".."+part.Bound.Name.Last(), itemVariable, "all of "+part.Kind, "")
		}
		c.add(part.Name, itemVariable, part.Kind, "")
	}
}

func ofKind(p *plant.Part, kinds []string) bool {
	for _, k := range kinds {
		if p.Kind == k || p.Row.Keyword == k {
			return true
		}
	}
	return false
}

// sizes offers the standard sizes of the statement's material, each with what it
// would mean for this statement: the velocity at once where the flow is known,
// the loss and the findings when the client looks at the item.
func (c *completer) sizes(_ *lang.Slot) {
	material := "steel"
	line := c.a.src.LineOf(c.x.Prefix.Start)
	head := c.d.src.Text[c.d.src.LineStart(line):c.x.Prefix.Start]
	fields := strings.Fields(head)
	for _, w := range fields {
		if pipe.Sizes(w) != nil {
			material = w
		}
	}
	name := ""
	if len(fields) > 1 {
		name, _, _ = strings.Cut(fields[1], "..")
	}
	// The size that stands there already is what the new one replaces.
	end := c.x.Prefix.End
	for end < len(c.d.src.Text) && isSizeByte(c.d.src.Text[end]) {
		end++
	}
	c.x.Prefix.End = end
	for _, p := range pipe.Sizes(material) {
		c.add(p.Size, itemUnit, "bore "+lang.In(p.Bore(), "mm")+c.effect(name, &p), "")
		if name != "" {
			c.items[len(c.items)-1]["data"] = sizeTrial{c.d.uri, c.d.version, name, c.x.Prefix.Start, end, p.Size}
		}
	}
}

func isSizeByte(b byte) bool {
	return b >= '0' && b <= '9' || b >= 'A' && b <= 'Z' || b >= 'a' && b <= 'z' || b == '/'
}

// effect tells the velocity that a size would give, from the flow that was last
// computed for the statement.
func (c *completer) effect(name string, p *pipe.Pipe) string {
	a, _ := c.d.shown(c.at)
	part := a.rep.Plant.Find(name)
	if part == nil {
		return ""
	}
	now := part.Get("size")
	v := a.rep.Results.Get(part, "velocity", 1)
	if v == nil {
		v = a.rep.Results.Get(part, "velocity", 0)
	}
	have := pipe.Find(part.Get("material").Word, now.Num)
	if !v.Known() || have == nil {
		return ""
	}
	r := have.Bore() / p.Bore()
	return ", " + lang.In(v.Num*r*r, "m/s")
}

var _ = on("textDocument/signatureHelp", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	x := lang.Expect(a.rep.Plant.File, lang.Language(), s.enc.offset(d.src, p.Position))
	if x.Row == nil {
		return nil, nil
	}
	label := x.Row.Keyword
	if x.Row.Name != lang.NoName {
		label += " Name"
	}
	params := []object{}
	active := 0
	for _, sl := range x.Row.Slots {
		word := "<" + sl.Name + ">"
		switch {
		case sl.Type == lang.FlagType:
			word = sl.Name
		case sl.Label != "":
			word = sl.Label + " <" + sl.Dim.String() + ">"
			if sl.Type != lang.QuantityType {
				word = sl.Label + " <" + sl.Name + ">"
			}
		case sl.Suffix != "":
			word = "<" + sl.Dim.String() + "> " + sl.Suffix
		}
		if x.Value == sl || x.Value == nil && len(x.Slots) > 0 && x.Slots[0] == sl {
			active = len(params)
		}
		label += " " + word
		p := object{"label": word, "documentation": sl.Help}
		if s.client.labelOffsets { // a word can stand twice in the label
			to := utf16.units(label)
			p["label"] = []int{to - utf16.units(word), to}
		}
		params = append(params, p)
	}
	return object{"signatures": []object{{"label": label, "documentation": x.Row.Help, "parameters": params}}, "activeSignature": 0, "activeParameter": active}, nil
}))
