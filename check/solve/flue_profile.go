package solve

import "example.org/tundish/check/plant"

// FluePoint is a place on the way of the products from a unit to the terminal.
type FluePoint struct {
	Part     *plant.Part // the piece that starts here; at the last point the one that ends
	Distance float64     // m from the outlet of the unit
	Pressure float64     // Pa over the air beside
}

// FlueProfile is the pressure along a flue in one firing case.
type FlueProfile struct {
	Case   Case
	Unit   *plant.Part // the unit whose way is followed
	Points []FluePoint
}

// FlueProfiles follows the products of one unit to the terminal with all units
// at full fire, with that unit at minimum and the others full, and with it alone
// at minimum. The unit is the one with the least margin at minimum fire beside
// the others, which is where products come back first; the way and the balance
// are those of the values "flue-margin". missing says what a balance needs when
// there is none.
func FlueProfiles(r *Results, part *plant.Part) (list []FlueProfile, missing string) {
	c := &Context{Results: r, P: r.Plant}
	m := newFlueModel(c, part)
	if m.missing != "" {
		return nil, m.missing
	}
	u, least := 0, 0.0
	for i := range m.units {
		if q := r.Get(m.units[i].part, "flue-margin", OneLow); q.Known() && (i == 0 || q.Num < least) {
			u, least = i, q.Num
		}
	}
	if lack := m.lacking(u); lack != "" {
		return nil, lack
	}
	if lack := m.lacking(-1); lack != "" {
		return nil, lack
	}
	for _, k := range [...]Case{AllFull, OneLow, OneAlone} {
		if k == OneLow && len(m.units) == 1 {
			continue // the same as alone
		}
		for i := range m.units {
			if k == OneAlone {
				m.stop(i)
			} else {
				m.set(i, &m.units[i].full)
			}
		}
		if k != AllFull {
			m.set(u, &m.units[u].low)
		}
		if err := m.common.Balance(m.firings, m.states); err != nil {
			return nil, err.Error()
		}
		list = append(list, FlueProfile{Case: k, Unit: m.units[u].part, Points: m.way(u)})
	}
	return list, ""
}

// way reads the pressures along the ducts from a unit to the terminal. Where
// ducts meet, the products gain speed and the pressure steps.
func (m *flueModel) way(u int) []FluePoint {
	var out []FluePoint
	at := 0.0
	for d := u; d >= 0; d = m.common.Ducts[d].Next {
		s := &m.states[d]
		out = append(out, FluePoint{m.pieces[d].part, at, s.Start})
		at += m.common.Ducts[d].Length
		out = append(out, FluePoint{m.pieces[d].part, at, s.End})
	}
	return out
}
