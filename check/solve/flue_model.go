package solve

import (
	"math"

	"example.org/tundish/check/calc/combustion"
	"example.org/tundish/check/calc/flue"
	"example.org/tundish/check/plant"
)

// flueModel is one flue of the plant as the balance wants it.
type flueModel struct {
	part     *plant.Part
	common   flue.Common
	pieces   []fluePiece // one for each duct
	units    []flueUnit
	header   *plant.Part
	riser    *plant.Part
	terminal *plant.Part
	missing  string // what the balance needs; empty when it can be run
	states   []flue.State
	firings  []flue.Firing
	outlet   bool // temperatures along the flue are known
	balanced bool // the ducts were checked and taken
}

// fluePiece is the part that a duct belongs to.
type fluePiece struct {
	part *plant.Part
	unit int // of a header's segment: the entry at its start; else -1
}

// flueUnit is one unit on the flue with its products.
type flueUnit struct {
	part      *plant.Part
	connector *plant.Part
	full, low products
	// resistance of the connector in Pa by (kg/s)2 at full fire, without S_E.
	resistance float64
	// openLeast is the least margin at full fire while the damper of another unit
	// that draws air is stuck open; not a number: no such case.
	openLeast float64
	openAt    int // that other unit
}

// products is what a unit sends into the flue at one rate.
type products struct {
	mass, temperature, push float64
	missing                 string
}

// outsideForPressure is the outside temperature in degC of the pressure
// balance: 15, because less draught is the harder case. EN 13384-1, from memory.
const outsideForPressure = 15

func (m *flueModel) need(what string) {
	if m.missing == "" {
		m.missing = what
	}
}

// newFlueModel builds the ducts of one flue: connectors first, then the
// segments of the header from entry to entry, then everything up to the
// terminal.
func newFlueModel(c *Context, part *plant.Part) *flueModel {
	m := &c.room().flue
	*m = flueModel{
		part: part, header: part.Child("flue-header"), riser: part.Child("riser"), terminal: part.Child("terminal"), outlet: true,
		common: m.common, pieces: m.pieces[:0], units: m.units[:0], states: m.states[:0], firings: m.firings[:0],
	}
	m.common.Reset()
	if c.P.Damaged("flue", "basis", "units") {
		m.need("a file that can be read whole")
	}
	for _, con := range part.Children("connector") {
		ref, ok := con.Ref("from")
		if !ok || ref.Part.Kind != "unit" {
			m.need("the unit that " + con.Label() + " comes from")
			continue
		}
		m.units = append(m.units, flueUnit{part: ref.Part, connector: con, openLeast: math.NaN()})
	}
	if len(m.units) == 0 {
		m.need("a connector from a unit")
		return m
	}
	for i := range m.units {
		m.units[i].full, m.units[i].low = unitProducts(c, m.units[i].part)
	}
	m.environment(c)
	m.ducts(c)
	if m.missing == "" {
		m.states = append(m.states, make([]flue.State, len(m.common.Ducts))...)
		m.firings = append(m.firings, make([]flue.Firing, len(m.units))...)
	}
	return m
}

func (m *flueModel) environment(c *Context) {
	basis := c.P.Block("basis")
	m.common.SafetyFactor = flue.SafetyPositive
	m.common.Outside = outsideForPressure
	altitude := basis.Get("altitude")
	if !altitude.Known() {
		m.need("the altitude in the basis")
		return
	}
	p, err := flue.Pressure(altitude.Num)
	if err != nil {
		m.need("an altitude within range: " + err.Error())
		return
	}
	m.common.Pressure = p
	switch exposure := basis.Get("exposure"); {
	case exposure.Is("inland"):
		m.common.Wind = flue.WindInland
	case exposure.Is("coast"):
		m.common.Wind = flue.WindCoast
	}
	fuel := &combustion.Methane
	if basis.Child("gas").Get("fuel").Is("propane") {
		fuel = &combustion.Propane
	}
	co2 := 9.0
	for _, s := range m.units[0].part.Child("flue-data").Children("co2") {
		if v := s.First(); v.Known() && !s.Get("at").Is("low") {
			co2 = v.Num * 100
			break
		}
	}
	burnt, err := combustion.Burn(fuel, co2, 0)
	if err != nil {
		m.need("a CO2 within range: " + err.Error())
		return
	}
	m.common.GasConstant = burnt.GasConstant()
	if m.common.HeatCapacity, err = burnt.HeatCapacity(60); err != nil {
		m.need(err.Error())
	}
}

// ducts lays the pieces out in the order of the flow.
func (m *flueModel) ducts(c *Context) {
	for i := range m.units {
		m.add(m.units[i].connector, 1, -1)
	}
	next := m.units[0].connector
	entries := []int(nil)
	if m.header != nil {
		entries = m.entries()
		n := float64(len(entries))
		share := 1 / n
		if pitch := m.header.Get("pitch"); pitch.Known() {
			if l := m.header.Get("length"); l.Known() && l.Num > 0 {
				share = pitch.Num / l.Num
			}
		}
		for k := range entries {
			part := share
			if k == len(entries)-1 {
				part = 1 - share*(n-1)
			}
			if part <= 0 {
				m.need("a pitch of " + m.header.Label() + " that fits its length")
				return
			}
			m.add(m.header, part, entries[k])
		}
		next = m.header
	}
	for guard := 0; ; guard++ { // from the header, or from the only connector, to the terminal
		ref, ok := next.Ref("to")
		switch {
		case !ok || guard > 64:
			m.need("where " + next.Label() + " leads")
			return
		case ref.Part.Kind == "terminal":
			m.finish(entries)
			return
		}
		if m.first(ref.Part) >= 0 {
			m.need("a flue that does not run in a circle")
			return
		}
		m.add(ref.Part, 1, -1)
		next = ref.Part
	}
}

// first is the first duct of a piece; -1 for one that has none.
func (m *flueModel) first(part *plant.Part) int {
	for i := range m.pieces {
		if m.pieces[i].part == part {
			return i
		}
	}
	return -1
}

// entries gives the units by position in the order in which they enter the
// header.
func (m *flueModel) entries() []int {
	order := make([]int, 0, len(m.units))
	seen := make([]bool, len(m.units))
	if e := m.part.Child("entry-order"); e != nil {
		for _, ref := range e.Refs("units") {
			for i := range m.units {
				if m.units[i].part == ref.Part && !seen[i] {
					order, seen[i] = append(order, i), true
				}
			}
		}
	}
	for i := range m.units {
		if !seen[i] {
			order = append(order, i)
		}
	}
	return order
}

// add appends the duct of a piece, or of a share of its length.
func (m *flueModel) add(part *plant.Part, share float64, unit int) {
	size, length := part.Get("size"), part.Get("length")
	switch {
	case !size.Known():
		m.need("the size of " + part.Label())
	case !length.Known():
		m.need("the length of " + part.Label())
	}
	d := flue.Duct{Next: -1, Bore: size.Num, Length: length.Num * share, Roughness: flue.RoughnessMetal, Ambient: 20}
	if lack := openValue(part, "roughness", "rise", "bends", "half-bends", "loss-coefficient", "pitch"); lack != "" {
		m.need(lack)
	}
	if v := part.Get("roughness"); v.Known() {
		d.Roughness = v.Num
	}
	switch rise := part.Get("rise"); {
	case rise.Known():
		d.Rise = rise.Num * share
	case part.Kind == "riser":
		d.Rise = d.Length
	}
	if part.Has("outdoors") {
		d.Ambient = outsideForPressure
	}
	if v := part.Get("resistance"); v.Known() {
		d.Transmittance = v.Num
	} else if part.Kind != "connector" {
		m.outlet = false
	}
	if share == 1 || unit < 0 {
		d.Loss = m.loss(part)
	}
	if math.Abs(d.Rise) > d.Length {
		m.need("a rise of " + part.Label() + " that is not more than its length")
	}
	m.common.Ducts = append(m.common.Ducts, d)
	m.pieces = append(m.pieces, fluePiece{part, unit})
}

// names in the table of loss coefficients
const (
	zetaBend     = "90 deg bend, smooth"
	zetaHalfBend = "45 deg bend"
	zetaEntry    = "90 deg tee entry"
)

// Loss coefficients the table lacks: common practice, no source. A terminal
// states its own where the maker gives one.
const (
	zetaThrough = 0.2 // straight through the tee of an entry
	zetaCap     = 1.0 // cowl or rain cap
)

func zeta(name string) float64 {
	z, _ := flue.ZetaOf(name)
	return z.Use
}

// loss sums the loss coefficients of a piece: its bends and what it states.
func (m *flueModel) loss(part *plant.Part) float64 {
	k := 0.0
	bends := part.Get("bends")
	if bends.Known() {
		k += bends.Num * zeta(zetaBend)
	} else {
		for _, b := range m.part.Children("bend") {
			if ref, ok := b.Ref("on"); !ok || ref.Part != part {
				continue
			}
			n := 1.0
			if lack := openValue(b, "count", "angle"); lack != "" {
				m.need(lack)
			}
			if v := b.Get("count"); v.Known() {
				n = v.Num
			}
			if a := b.Get("angle"); a.Known() && a.Num < 1.0 { // under 57 degrees
				k += n * zeta(zetaHalfBend)
			} else {
				k += n * zeta(zetaBend)
			}
		}
	}
	if v := part.Get("half-bends"); v.Known() {
		k += v.Num * zeta(zetaHalfBend)
	}
	if v := part.Get("loss-coefficient"); v.Known() {
		k += v.Num
	}
	return k
}

// finish joins the ducts: connectors into their segment, the segments in a row,
// the last piece to the outlet, with the tees and the terminal charged.
func (m *flueModel) finish(entries []int) {
	ducts := m.common.Ducts
	n := len(m.units)
	segment := func(unit int) int {
		for k, e := range entries {
			if e == unit {
				return n + k
			}
		}
		return n
	}
	for i := range m.units {
		if m.header != nil {
			ducts[i].Next = segment(i)
			ducts[i].Loss += zeta(zetaEntry)
			continue
		}
		if ref, ok := m.units[i].connector.Ref("to"); ok {
			if k := m.first(ref.Part); k >= 0 {
				ducts[i].Next = k
			}
		}
	}
	for k := n; k < len(ducts)-1; k++ {
		ducts[k].Next = k + 1
		if m.pieces[k].unit >= 0 && m.pieces[k+1].unit >= 0 {
			ducts[k].Loss += zetaThrough
		}
	}
	last := &ducts[len(ducts)-1]
	last.Next = -1
	if m.header != nil && len(ducts) > 2*n-1 { // the header's own bends stand at its end
		end := n + len(entries) - 1
		ducts[end].Loss += m.loss(m.header)
	}
	if lack := openValue(m.terminal, "loss-coefficient", "cap"); lack != "" {
		m.need(lack)
	}
	if v := m.terminal.Get("loss-coefficient"); v.Known() {
		last.Loss += v.Num
	} else {
		switch cap := m.terminal.Get("cap"); {
		case cap.Is("rain-cap"), cap.Is("cowl"):
			last.Loss += zetaCap
		}
	}
}

// unitProducts reads what a unit sends into the flue at full and minimum rate.
func unitProducts(c *Context, unit *plant.Part) (full, low products) {
	data, fan := unit.Child("flue-data"), unit.Child("fan-pressure")
	read := func(rate string) products {
		var p products
		if v := atRate(data.Children("gas-flow"), rate); v.Known() {
			p.mass = v.Num
		} else if m, ok := massFromInput(c, unit, data, rate); ok {
			p.mass = m
		} else {
			p.missing = "the flow of products of " + unit.Label() + " at " + rate + " fire"
			return p
		}
		if v := flueTemperature(c, data, rate); v.Known() {
			p.temperature = v.Num
		} else {
			p.missing = "the flue temperature of " + unit.Label() + " at " + rate + " fire"
			return p
		}
		if v := fan.Child(rate).First(); v.Known() {
			p.push = v.Num
		} else {
			p.missing = "the fan pressure of " + unit.Label() + " at " + rate + " fire"
		}
		return p
	}
	return read("full"), read("low")
}

// atRate picks the value stated for a firing rate; one without a rate counts
// for full fire.
func atRate(list []*plant.Part, rate string) plant.Value {
	for _, s := range list {
		at := s.Get("at")
		if at.Is(rate) || !at.Given && rate == "full" {
			return s.First()
		}
	}
	return plant.Value{}
}

// flueTemperature picks the flue temperature stated for a rate, and of several
// the one whose water temperatures are nearest to those of the plant.
func flueTemperature(c *Context, data *plant.Part, rate string) plant.Value {
	primary := c.P.Block("basis").Get("primary")
	var best plant.Value
	bestAt := math.Inf(1)
	for _, s := range data.Children("temperature") {
		at := s.Get("at")
		if !at.Is(rate) && (at.Given || rate != "full") {
			continue
		}
		d := 0.0
		if f := s.Get("for"); f.Known() && primary.Known() {
			d = math.Abs(f.Num2 - primary.Num2)
		}
		if d < bestAt {
			best, bestAt = s.First(), d
		}
	}
	return best
}

// massFromInput computes the flow of products from heat input and CO2.
func massFromInput(c *Context, unit, data *plant.Part, rate string) (float64, bool) {
	name := "input"
	if rate == "low" {
		name = "input-low"
	}
	heat, ok := NetInput(c.P, unit.Child(name))
	co2 := atRate(data.Children("co2"), rate)
	if !ok || !co2.Known() {
		return 0, false
	}
	fuel := &combustion.Methane
	if c.P.Block("basis").Child("gas").Get("fuel").Is("propane") {
		fuel = &combustion.Propane
	}
	p, err := combustion.Burn(fuel, co2.Num*100, 0)
	if err != nil {
		return 0, false
	}
	return p.MassPerHeat() * heat, true
}

// grossToNet is the ratio of gross to net calorific value of natural gas and of
// propane; EN 437, cross-read in IGEM/UP/10.
const (
	grossToNetNatural = 37.78 / 34.02
	grossToNetPropane = 95.65 / 88.00
)

// NetInput gives a stated heat input (an input or input-low statement) as net
// heat in W.
func NetInput(p *plant.Plant, s *plant.Part) (float64, bool) {
	v := s.First()
	if !v.Known() {
		return 0, false
	}
	switch s.Get("heat-basis").Word {
	case "net":
		return v.Num, true
	case "gross":
		return v.Num / GrossToNet(p), true
	}
	return 0, false
}

// GrossToNet is the ratio of gross to net calorific value of the plant's gas.
func GrossToNet(p *plant.Plant) float64 {
	if p.Block("basis").Child("gas").Get("fuel").Is("propane") {
		return grossToNetPropane
	}
	return grossToNetNatural
}
