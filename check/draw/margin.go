package draw

import (
	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Band is how much of its limit a part uses.
type Band uint8

// The bands, from no statement to a broken limit.
const (
	NotJudged Band = iota // no limit was held against it
	Unknown               // a limit could not be judged for want of input
	Plenty                // at most 70 % of the limit is used
	Near                  // at most 90 %
	Tight                 // at most the limit itself
	Over                  // the limit is broken
)

// Where one band ends and the next begins: a choice of presentation, no limit.
const (
	plentyMost = 0.7
	nearMost   = 0.9
)

// Mark is what the drawings say about one part.
type Mark struct {
	Band  Band
	Share float64 // greatest share of a limit used, 0 without one
	Open  bool    // something about it could not be judged
	Fault bool    // a finding that is an error or a warning names it
}

// Marks holds the mark of every part of a plant.
type Marks map[string]Mark

// MarksOf reads the marks from a report: the worst comparison of a part gives
// its band. A part whose only judgements are open is Unknown; an open question
// never hides a broken limit, and a kept limit never hides an open question.
func MarksOf(rep *check.Report) Marks {
	m := Marks{}
	if rep == nil {
		return m
	}
	for i := range rep.Comparisons {
		c := &rep.Comparisons[i]
		share, ok := c.Used()
		band := bandOf(share, ok, c.Holds)
		k := m[c.Quantity.Part.Label()]
		if band > k.Band {
			k.Band = band
		}
		if ok {
			k.Share = max(k.Share, share)
		}
		m[c.Quantity.Part.Label()] = k
	}
	for i := range rep.Unknowns {
		k := m[rep.Unknowns[i].Part]
		k.Open = true
		if k.Band == NotJudged {
			k.Band = Unknown
		}
		m[rep.Unknowns[i].Part] = k
	}
	for i := range rep.Findings {
		if f := &rep.Findings[i]; f.Severity != lang.Note && !f.Trial {
			k := m[f.Part]
			k.Fault = true
			m[f.Part] = k
		}
	}
	return m
}

func bandOf(share float64, ok, holds bool) Band {
	switch {
	case !holds:
		return Over
	case !ok:
		return NotJudged
	case share <= plentyMost:
		return Plenty
	case share <= nearMost:
		return Near
	}
	return Tight
}

// Of gives the mark of a part; the zero mark for none.
func (m Marks) Of(p *plant.Part) Mark {
	if p == nil {
		return Mark{}
	}
	return m[p.Label()]
}

// stroke is how a band is drawn. Width alone tells the bands apart in grey, and
// a light core marks the two that want attention.
type stroke struct {
	color string
	width float64
	core  float64 // width of the light line inside; 0 without
	says  string
}

// strokes use colors that stay apart for the common kinds of color blindness
// (blue, green-blue, orange-brown, dark red) and grow in width with the share.
var strokes = [...]stroke{
	NotJudged: {"#222222", 1, 0, "no limit applies"},
	Unknown:   {"#666666", 5, 2.8, "? not judged: input missing"},
	Plenty:    {"#0072b2", 2.4, 0, "up to 70 % of the limit used"},
	Near:      {"#007f5f", 3.6, 0, "over 70 to 90 %"},
	Tight:     {"#b35900", 5.2, 0, "over 90 % to the limit"},
	Over:      {"#8f0f2e", 7, 2, "! limit broken"},
}
