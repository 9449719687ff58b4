package solve

import (
	"slices"

	"example.org/tundish/check/calc/gas"
	"example.org/tundish/check/calc/pipe"
	"example.org/tundish/check/plant"
)

// gasTree is the gas run as a tree: sections in order from the supply.
type gasTree struct {
	sections []gasSection
	missing  string
	fuel     gasFuel
	source   float64 // pressure at the supply point, Pa gauge
	start    *plant.Part
	loose    bool // a pipe of which it is open where it begins or leads
}

// gasFuel is what the pipes need to know of the gas.
type gasFuel struct {
	density, viscosity float64
	value              float64 // calorific value, J/m3
	gross              bool
}

// gasSection is a piece of the tree: a pipe, a segment of a manifold, a drop, or
// a fitting with a loss of its own.
type gasSection struct {
	part       *plant.Part
	parent     int         // -1 at the supply
	unit       *plant.Part // the unit at its end, nil
	bore       float64     // 0 for a part without length
	roughness  float64
	length     float64 // measured
	equivalent float64 // of its fittings
	rise       float64
	loss       float64 // stated, Pa at full flow
	meter      float64 // rating of a meter; its loss goes with the square of the flow
	flow       float64
	inlet      float64 // Pa gauge
	outlet     float64
	drop       float64 // friction and stated losses
	velocity   float64
}

func (t *gasTree) need(what string) {
	if t.missing == "" {
		t.missing = what
	}
}

// newGasTree follows the run from the supply point to every unit.
func newGasTree(c *Context, block *plant.Part) *gasTree {
	t := &gasTree{}
	basis := c.P.Block("basis")
	if c.P.Damaged("gas-run", "basis", "units") {
		t.need("a file that can be read whole")
	}
	t.readFuel(basis)
	supply := basis.Child("supply")
	pressure := supply.Get("pressure")
	start, ok := supply.Ref("at")
	switch {
	case !pressure.Known():
		t.need("the supply pressure in the basis")
		return t
	case !ok:
		t.need("the part at which the supply pressure is measured")
		return t
	}
	t.source, t.start = pressure.Num, start.Part
	allowance := 0.0
	if block.Child("fitting-allowance").First().Open() {
		t.need("the allowance for fittings (fitting-allowance)")
	}
	if v := block.Child("fitting-allowance").First(); v.Known() {
		allowance = v.Num
	}
	w := gasWalk{t: t, block: block, allowance: allowance}
	t.sections = c.room().sections[:0]
	w.from(start.Part, -1)
	c.room().sections = t.sections
	t.findLoose(block)
	return t
}

// findLoose looks for pipes that the walk may have missed: what hangs on them is
// not known to be without gas.
func (t *gasTree) findLoose(block *plant.Part) {
	for _, kind := range [...]string{"pipe", "manifold", "drop"} {
		for _, p := range block.Children(kind) {
			if p.Undecided() || p.Get("from").Open() || p.Get("to").Open() || p.Get("feeds").Open() {
				t.loose = true
				t.need("where " + p.Label() + " leads")
			}
		}
	}
}

func (t *gasTree) readFuel(basis *plant.Part) {
	g := basis.Child("gas")
	value := g.Get("heat-value")
	var table *gas.Fuel
	us := basis.Get("jurisdiction").Is("US")
	switch fuel := g.Get("fuel"); {
	case fuel.Is("propane"):
		table, _ = gas.FuelNamed("G31")
	case fuel.Is("natural") && us:
		table, _ = gas.FuelNamed("US natural gas")
	case fuel.Is("natural"):
		table, _ = gas.FuelNamed("UK natural gas")
	}
	if table == nil || !value.Known() || !g.Get("heat-basis").Known() {
		t.need("the gas and its calorific value, gross or net, in the basis")
		return
	}
	t.fuel = gasFuel{density: table.RelativeDensity, viscosity: table.Viscosity, value: value.Num, gross: g.Get("heat-basis").Is("gross")}
	if lack := openValue(g, "relative-density"); lack != "" {
		t.need(lack)
	}
	if v := g.Get("relative-density"); v.Known() {
		t.fuel.density = v.Num
	}
}

// gasWalk walks from part to part along the pipes.
type gasWalk struct {
	t         *gasTree
	block     *plant.Part
	allowance float64
	seen      []*plant.Part
}

// from adds every pipe that leaves a part.
func (w *gasWalk) from(part *plant.Part, parent int) {
	if slices.Contains(w.seen, part) || len(w.t.sections) > 512 {
		w.t.need("a gas run without a circle through " + part.Label())
		return
	}
	w.seen = append(w.seen, part)
	parent = w.own(part, parent)
	if part.Kind == "manifold" {
		w.manifold(part, parent)
		return
	}
	for _, p := range w.block.Children("pipe") {
		if r, ok := p.Ref("from"); ok && r.Part == part {
			w.pipe(p, parent)
		}
	}
	for _, d := range w.block.Children("drop") {
		if r, ok := d.Ref("from"); ok && r.Part == part {
			w.pipe(d, parent)
		}
	}
}

// own adds the loss of a part itself: meter, valve, filter, regulator.
func (w *gasWalk) own(part *plant.Part, parent int) int {
	s := gasSection{part: part, parent: parent}
	if lack := openValue(part, "loss"); lack != "" {
		w.t.need(lack)
	}
	switch part.Kind {
	case "meter":
		// The supply pressure is that behind the meter where it is stated there.
		if part == w.t.start {
			return parent
		}
		if v := part.Get("loss"); v.Known() {
			s.loss = v.Num
		}
		if v := part.Get("rating"); v.Known() {
			s.meter = v.Num
		}
	case "valve", "filter":
		if v := part.Get("loss"); v.Known() {
			s.loss = v.Num
		} else {
			return parent
		}
	default:
		return parent
	}
	w.t.sections = append(w.t.sections, s)
	return len(w.t.sections) - 1
}

func (w *gasWalk) pipe(p *plant.Part, parent int) {
	to := p.Refs("to")
	if len(to) == 0 {
		w.t.need("where " + p.Label() + " leads")
		return
	}
	s := w.section(p, parent, p.Get("length"))
	if to[0].Part.Kind == "unit" {
		s.unit = to[0].Part
		w.t.sections = append(w.t.sections, s)
		return
	}
	w.t.sections = append(w.t.sections, s)
	i := len(w.t.sections) - 1
	for _, r := range to {
		w.from(r.Part, i)
	}
}

// section reads a pipe: bore, length, fittings as equivalent length.
func (w *gasWalk) section(p *plant.Part, parent int, length plant.Value) gasSection {
	s := gasSection{part: p, parent: parent}
	material, size := p.Get("material"), p.Get("size")
	switch {
	case !material.Known():
		w.t.need("the material of " + p.Label())
		return s
	case !size.Known():
		w.t.need("the size of " + p.Label())
		return s
	case !length.Known():
		w.t.need("the length of " + p.Label())
		return s
	}
	found := pipe.Find(material.Word, size.Num)
	if found == nil {
		w.t.need("a size of " + p.Label() + " that the table of " + material.Word + " pipes holds")
		return s
	}
	s.bore, s.roughness, s.length = found.Bore(), found.Roughness, length.Num
	s.equivalent = equivalentLength(p, found) + w.allowance*s.length
	if lack := openValue(p, "bends", "half-bends", "tees", "branch-tees", "valves", "reducers", "rise", "loss", "pitch"); lack != "" {
		w.t.need(lack)
	}
	if v := p.Get("rise"); v.Known() {
		s.rise = v.Num
	}
	if v := p.Get("loss"); v.Known() {
		s.loss = v.Num
	}
	return s
}

// Equivalent lengths of fittings in bores, as the US table prints them; they
// serve every material where the UK table of steel has no row.
const (
	boresBend     = 30
	boresHalfBend = 14
	boresTee      = 60
	boresValve    = 8 // full-bore valve: common practice
	boresReducer  = 10
)

// equivalentLength is the length of pipe that loses what the fittings lose.
// Steel pipes of the UK table count each bend and tee with its printed meters.
func equivalentLength(p *plant.Part, found *pipe.Pipe) float64 {
	count := func(slot string) float64 {
		if v := p.Get(slot); v.Known() {
			return v.Num
		}
		return 0
	}
	bore := found.Bore()
	bend, tee := boresBend*bore, boresTee*bore
	if found.Material == "steel" || found.Material == "steel-heavy" {
		if l, err := gas.SteelFitting(int(found.Nominal*1000 + 0.5)); err == nil {
			bend, tee = l, l
		}
	}
	return count("bends")*bend + count("half-bends")*boresHalfBend*bore + (count("tees")+count("branch-tees"))*tee +
		count("valves")*boresValve*bore + count("reducers")*boresReducer*bore
}

// manifold cuts a manifold into the lengths between its take-offs and hangs the
// drops on them.
func (w *gasWalk) manifold(m *plant.Part, parent int) {
	feeds := m.Refs("feeds")
	n := len(feeds)
	if n == 0 {
		w.t.need("the units that " + m.Label() + " feeds")
		return
	}
	base := w.section(m, parent, m.Get("length"))
	share := base.length / float64(max(n-1, 1))
	if v := m.Get("pitch"); v.Known() {
		share = v.Num
	}
	drops := w.block.Children("drop")
	at := parent
	for k, f := range feeds {
		if k > 0 { // the first take-off stands where the manifold begins
			s := base
			s.parent, s.length = at, share
			s.equivalent = w.allowance * share
			w.t.sections = append(w.t.sections, s)
			at = len(w.t.sections) - 1
		}
		found := false
		for _, d := range drops {
			from, ok := d.Ref("from")
			if !ok || from.Part != m {
				continue
			}
			if to, ok := d.Ref("to"); ok && to.Part == f.Part {
				s := w.section(d, at, d.Get("length"))
				s.unit = f.Part
				w.t.sections = append(w.t.sections, s)
				found = true
			}
		}
		if !found {
			w.t.need("the drop from " + m.Label() + " to " + f.Part.Label())
		}
	}
}
