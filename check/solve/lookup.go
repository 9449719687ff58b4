package solve

import (
	"strings"

	"example.org/tundish/check/plant"
)

// Lookup finds a quantity by its path. A value that varies with the case and is
// named without one gives the governing case: the greatest value, or the least
// for values of which too little is the fault. The second result is false when
// no part or value has that name.
func (r *Results) Lookup(path string) (*Quantity, bool) {
	part, rest := r.split(path)
	if part == nil || rest == "" {
		return nil, false
	}
	name, stat, c := parseTail(rest)
	if q := r.find(part, name, stat, c); q != nil {
		return q, true
	}
	if c != Always {
		return nil, false
	}
	var best *Quantity
	r.Of(part, func(q *Quantity) {
		if q.Name != name || q.Stat != stat {
			return
		}
		switch {
		case best == nil, !best.Known() && q.Known():
			best = q
		case !q.Known():
		case lowGoverns(name) && q.Num < best.Num, !lowGoverns(name) && q.Num > best.Num:
			best = q
		}
	})
	return best, best != nil
}

// lowGoverns tells values of which too little is the fault.
func lowGoverns(name string) bool {
	return strings.HasSuffix(name, "-margin") || strings.HasSuffix(name, "pressure") && strings.HasPrefix(name, "gas") ||
		name == "flow" || name == "cover" || name == "outlet-temperature" || name == "tip-angle"
}

func (r *Results) split(path string) (*plant.Part, string) {
	p := r.Plant
	for i := len(path); i > 0; {
		i = strings.LastIndexByte(path[:i], '.')
		if i < 0 {
			return nil, ""
		}
		if part := p.Find(path[:i]); part != nil {
			return part, path[i+1:]
		}
	}
	return nil, ""
}

func parseTail(tail string) (name string, stat Stat, c Case) {
	name = tail
	if i := strings.LastIndexByte(name, '.'); i >= 0 {
		for k, w := range caseWords {
			if w != "" && name[i+1:] == w {
				c, name = Case(k), name[:i]
				break
			}
		}
	}
	if i := strings.LastIndexByte(name, '.'); i >= 0 {
		for k, w := range statWords {
			if w != "" && name[i+1:] == w {
				stat, name = Stat(k), name[:i]
				break
			}
		}
	}
	return name, stat, c
}
