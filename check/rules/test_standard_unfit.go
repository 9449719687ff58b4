package rules

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(&ruleTestStandardUnfit)

var ruleTestStandardUnfit = check.Rule{
	ID: "test-standard-unfit", Group: check.Testing, Severity: lang.Error, Since: "0.3",
	Summary: "The gas run is larger than the standard of its tightness test covers.",
	Why:     "Its times and allowed falls are those of small pipes: a leak passes the test.",
	Mend:    "test by the standard that covers the installation",
	Limits:  "Asked in the UK, of tests that name IGEM/UP/1B or IGEM/UP/1A; IGEM/UP/1 covers every size.",
	Sources: sources(cite.Source{Work: "IGEM/UP/1B, IGEM/UP/1A and IGEM/UP/1", Clause: "scopes", Read: cite.Published}),
	Run: func(p *check.Pass) {
		block := p.Plant.Block("gas-run")
		if block == nil || abroad(p.Plant) {
			return
		}
		for _, t := range p.Plant.Block("tests").Children("tightness") {
			v := t.Get("by-standard")
			if !v.Known() {
				if v.Given {
					p.Unknown(t, "the standard of the tightness test")
				}
				continue
			}
			small := strings.Contains(v.Word, "UP/1B")
			if !small && !strings.Contains(v.Word, "UP/1A") {
				continue
			}
			f, what := overScope(p, block, small)
			if f == nil || nationOpen(p, t) {
				continue
			}
			f.Message = "The tightness test is by " + v.Word + ", which covers up to " + strings.TrimPrefix(f.Limit, "at most ") + " of " + what + "; the gas run has " + f.Found + "."
			f.Span, f.File, f.Part = v.Span(), v.File, ""
			better := "IGEM/UP/1"
			if small && inScope(p, block) {
				better = "IGEM/UP/1A"
			}
			f.Mend = "test by " + better
			f.Fixes = []lang.Fix{{Title: "Test by " + better, Best: true, Edits: []lang.Edit{{Span: t.Stmt.Abs(v.Field.Values[0].Expr.Span), NewText: `"` + better + `"`}}}}
			p.Report(t, *f)
		}
	},
}

// scope is one bound of a standard of tightness tests.
type scope struct {
	limit, what string
	of          func(*check.Pass, *plant.Part) *solve.Quantity
}

func volumeOf(p *check.Pass, block *plant.Part) *solve.Quantity {
	return p.Results.Get(block, "installation-volume", solve.Always)
}

func largestPipe(p *check.Pass, block *plant.Part) *solve.Quantity {
	return p.Results.Group(block, "pipe-size", solve.Most, solve.Always)
}

var (
	smallScope = [...]scope{{"tightness-1b-volume", "installation volume", volumeOf}, {"tightness-1b-size", "pipe size", largestPipe}}
	largeScope = [...]scope{{"tightness-1a-volume", "installation volume", volumeOf}, {"tightness-1a-size", "pipe size", largestPipe}}
)

// overScope finds the first bound that the gas run passes; nil when it passes
// none.
func overScope(p *check.Pass, block *plant.Part, small bool) (f *check.Finding, what string) {
	list := largeScope
	if small {
		list = smallScope
	}
	for _, s := range list {
		if f := p.AtMost(s.of(p, block), p.Limit(s.limit)); f != nil {
			return f, s.what
		}
	}
	if small {
		limit := p.Limit("tightness-1b-meter")
		for _, m := range block.Children("meter") {
			if v := m.Get("rating"); v.Known() && v.Num > limit.Num*(1+1e-9) {
				return &check.Finding{Found: p.In(v.Num, limit.Unit), Limit: "at most " + limit.Text(), Source: limit.Source}, "meter rating"
			}
		}
		return nil, ""
	}
	limit := p.Limit("tightness-1a-pressure")
	if v := p.Plant.Block("basis").Get("supply"); v.Known() && v.Num > limit.Num*(1+1e-9) {
		return &check.Finding{Found: p.In(v.Num, limit.Unit), Limit: "at most " + limit.Text(), Source: limit.Source}, "operating pressure"
	}
	return nil, ""
}

// inScope tells whether the larger standard covers the gas run.
func inScope(p *check.Pass, block *plant.Part) bool {
	for _, s := range largeScope {
		if q := s.of(p, block); !q.Known() || q.Num > p.Limit(s.limit).Num*(1+1e-9) {
			return false
		}
	}
	v := p.Plant.Block("basis").Get("supply")
	return !v.Known() || v.Num <= p.Limit("tightness-1a-pressure").Num*(1+1e-9)
}
