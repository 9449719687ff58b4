package steps

import (
	"slices"
	"strings"

	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
)

// place puts every share of a line of parts into the step that fits it.
func (b *builder) place(l *parts.Line) {
	for _, y := range l.Why {
		id := home(b, l, y.Part)
		list := b.shares[id]
		i := slices.IndexFunc(list, func(p Part) bool {
			return p.Package == l.Package && p.Name == l.Name && p.Size == l.Size && p.Unit == l.Unit
		})
		if i < 0 {
			i = len(list)
			list = append(list, Part{Package: l.Package, Name: l.Name, Size: l.Size, Unit: l.Unit})
		}
		list[i].Quantity += y.Quantity
		list[i].Why = append(list[i].Why, y)
		b.shares[id] = list
	}
}

// home is the step in which a part is fitted. Every part has one.
func home(b *builder, l *parts.Line, from *plant.Part) string {
	keyword := ""
	if from != nil && from.Stmt != nil {
		keyword = from.Stmt.Head.Keyword
	}
	switch l.Package {
	case parts.Frame:
		return "frame"
	case parts.UnitSets:
		switch {
		case l.Name == "unit":
			return "units"
		case keyword == "gas-valve":
			return "gas-drops"
		case keyword == "damper":
			return "dampers"
		case keyword == "trap":
			return "condensate"
		case keyword == "isolator":
			return "wiring"
		}
		return "unit-pipework"
	case parts.Gas:
		switch {
		case l.Name == "pipe support":
			return "supports"
		case keyword == "drop":
			return "gas-drops"
		case keyword == "manifold" || on(from, "manifold") != nil:
			return "gas-manifold"
		case on(from, "drop") != nil:
			return "gas-drops"
		}
		return "gas-supply"
	case parts.Headers, parts.Separation, parts.Secondary:
		switch {
		case l.Name == "pipe support":
			return "supports"
		case keyword == "header":
			return b.headerStep(from)
		case keyword == "branch" || on(from, "branch") != nil:
			return "unit-pipework"
		case keyword == "exchanger" || keyword == "separator":
			if strings.HasPrefix(l.Name, "insulation") {
				return "insulation"
			}
			return "separation"
		case on(from, "exchanger") != nil || on(from, "separator") != nil:
			return "separation"
		case on(from, "header") != nil:
			return b.headersStep(from)
		}
		return "main-pipes"
	case parts.Safety:
		return "safety-devices"
	case parts.Flue:
		if l.Name == "flue insulation" {
			return "insulation"
		}
		return "flue"
	case parts.Condensate:
		if l.Name == "drain insulation" {
			return "insulation"
		}
		return "condensate"
	case parts.Air:
		return "air"
	case parts.Electrical:
		return "wiring"
	}
	return "insulation"
}

// on is the last part of a kind that a small part stands on or closes.
func on(p *plant.Part, kind string) *plant.Part {
	var out *plant.Part
	for _, slot := range [...]string{"of", "on"} {
		for _, r := range p.Refs(slot) {
			if r.Part.Kind == kind {
				out = r.Part
			}
		}
	}
	return out
}

// headers are the flow and return headers of the water.
func (b *builder) headers() []*plant.Part {
	var out []*plant.Part
	for _, h := range b.p.ByKind("header") {
		if h.Kind == "header" {
			out = append(out, h)
		}
	}
	return out
}

// headerStep tells the flow header from the return header: water comes from the
// units into the flow header.
func (b *builder) headerStep(h *plant.Part) string {
	for _, r := range h.Refs("to") {
		if r.Part.Kind == "unit" {
			return "return-header"
		}
	}
	return "flow-header"
}

// headersStep is the step of what stands on headers: on both, that of the upper.
func (b *builder) headersStep(p *plant.Part) string {
	id := ""
	for _, slot := range [...]string{"of", "on"} {
		for _, r := range p.Refs(slot) {
			if r.Part.Kind != "header" {
				continue
			}
			if h := b.headerStep(r.Part); id == "" {
				id = h
			} else if id != h {
				return b.upper()
			}
		}
	}
	return id
}

// upper is the step of the header that lies above the other; the flow header
// where nothing is said.
func (b *builder) upper() string {
	for _, h := range b.headers() {
		if h.Get("level").Is("upper") {
			return b.headerStep(h)
		}
	}
	return "flow-header"
}
