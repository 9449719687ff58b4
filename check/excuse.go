package check

import (
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// excuse moves the findings that a deviation in force accepts out of the list.
// A deviation names a rule, the parts it holds for, a reason, a person and an
// end. A missing safety device cannot be argued away: its finding stays, as a
// warning that names the deviation.
func excuse(pass *Pass) {
	devs := pass.Plant.ByKind("deviation")
	if len(devs) == 0 {
		return
	}
	used := make(map[*plant.Part]int, len(devs))
	device := map[string]bool{}
	for _, r := range pass.in.Rules {
		device[r.ID] = r.Device
	}
	kept := pass.rep.Findings[:0]
	for i := range pass.rep.Findings {
		f := pass.rep.Findings[i]
		d := deviationFor(pass, devs, &f)
		if d == nil {
			kept = append(kept, f)
			continue
		}
		used[d]++
		if device[f.Rule] {
			if f.Severity == lang.Error {
				f.Severity = lang.Warning
			}
			f.Related = append(f.Related, lang.Related{Span: d.Span(), Message: "accepted here"})
			kept = append(kept, f)
			continue
		}
		pass.rep.Excused = append(pass.rep.Excused, Excused{Finding: f, Deviation: d})
	}
	pass.rep.Findings = kept
	pass.used = used
}

// Expired reports whether a deviation ended before today; known is false when
// no date was given or stated.
func (p *Pass) Expired(dev *plant.Part) (expired, known bool) {
	until, ok := lang.ParseDate(dev.Get("until").Word)
	if !ok || p.Today.IsZero() {
		return false, false
	}
	if until.Day == 0 { // a month holds to its last day
		until.Day = 31
	}
	return until.Before(p.Today), true
}

// Used tells how many findings a deviation accepted in this run.
func (p *Pass) Used(dev *plant.Part) int { return p.used[dev] }

func deviationFor(pass *Pass, devs []*plant.Part, f *Finding) *plant.Part {
	for _, d := range devs {
		if d.Get("rule").Word != f.Rule {
			continue
		}
		if expired, known := pass.Expired(d); known && expired {
			continue
		}
		refs := d.Refs("on")
		for _, ref := range refs {
			if covers(ref.Part, f.Part) {
				return d
			}
		}
	}
	return nil
}

// covers reports whether a finding on the part named lies in p or its block.
func covers(p *plant.Part, label string) bool {
	if p.Label() == label || p.Address() == label {
		return true
	}
	return len(label) > len(p.Address()) && label[:len(p.Address())] == p.Address() && label[len(p.Address())] == '.'
}

// Undecided reports whether a rule lacked input somewhere in this run.
func (p *Pass) Undecided(rule string) bool {
	for i := range p.rep.Unknowns {
		if p.rep.Unknowns[i].Rule == rule {
			return true
		}
	}
	return false
}
