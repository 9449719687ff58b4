package check

import (
	"cmp"
	"slices"
	"strings"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Input is one specification to judge, and by what.
type Input struct {
	Plant     *plant.Plant
	Rules     []*Rule
	Today     lang.Date        // zero: rules that need a date say "not evaluated"
	Overrides map[string]Limit // limits that the project replaced, with the reason
	Expected  int              // findings that an earlier version of the text had: room is made for as many
}

// Run judges a plant. The report is never nil. A rule that breaks down becomes
// an internal finding; the others go on.
func Run(in Input) *Report {
	rep := reports.Get().(*Report)
	rep.Plant = in.Plant
	if cap(rep.Findings) < in.Expected {
		rep.Findings = make([]Finding, 0, in.Expected+in.Expected/8)
	}
	rep.Findings = textFindings(in.Plant, rep.Findings)
	rep.Results = solve.Run(in.Plant)
	pass := &Pass{Plant: in.Plant, Results: rep.Results, Today: in.Today, in: &in, rep: rep}
	if in.Plant.Of != nil {
		pass.Design = solve.Run(in.Plant.Of)
		if in.Plant.Built != nil {
			pass.Design.Release()
			pass.Design = solve.Run(in.Plant.Built) // readings are of what stands
		}
		rep.design = pass.Design
	}
	pass.us = in.Plant.US()
	runRules(pass, false)
	excuse(pass)
	runRules(pass, true)
	finish(rep)
	return rep
}

// TextOnly is the report of a plant whose text alone was looked at: what no rule
// could be asked about.
func TextOnly(p *plant.Plant) *Report {
	rep := &Report{Plant: p, Results: solve.NewResults(p), Findings: textFindings(p, nil)}
	finish(rep)
	return rep
}

func runRules(pass *Pass, last bool) {
	for _, r := range pass.in.Rules {
		if r.Status != Withdrawn && r.Last == last {
			runRule(pass, r)
		}
	}
}

// runRule shields the run from a fault of ours in one rule.
func runRule(pass *Pass, r *Rule) {
	pass.Rule = r
	defer func() {
		if v := recover(); v != nil {
			pass.rep.Findings = append(pass.rep.Findings, internalFinding(pass.Plant, r.ID, v))
		}
	}()
	r.Run(pass)
}

// textFindings turns the problems of reading and binding into findings.
func textFindings(p *plant.Plant, out []Finding) []Finding {
	add := func(f *lang.File, pr *lang.Problem) {
		out = append(out, Finding{
			Rule: pr.Rule, Severity: pr.Severity, File: f, Span: pr.Span, Message: pr.Message,
			Mend: pr.Mend, Fixes: pr.Fixes, Related: pr.Related, Source: languageSource,
		})
	}
	for i := range p.File.Problems {
		add(p.File, &p.File.Problems[i])
	}
	for i := range p.Problems {
		add(p.Problems[i].File, &p.Problems[i].Problem)
	}
	return out
}

// finish sorts by file, place and rule, and drops exact repeats, so that every
// front end shows the same list.
func finish(rep *Report) {
	own := rep.Plant.File
	name := func(f *lang.File) string {
		if f == nil || f == own {
			return "" // the file itself comes first
		}
		return f.Source.Name
	}
	slices.SortStableFunc(rep.Findings, func(a, b Finding) int {
		return cmp.Or(
			strings.Compare(name(a.File), name(b.File)), cmp.Compare(a.Span.Start, b.Span.Start),
			strings.Compare(a.Rule, b.Rule), strings.Compare(a.Message, b.Message),
		)
	})
	rep.Findings = unique(rep.Findings, func(a, b *Finding) bool {
		return a.Rule == b.Rule && a.Span == b.Span && a.Message == b.Message && name(a.File) == name(b.File)
	})
	rep.Findings = likewise(rep.Findings)
	slices.SortStableFunc(rep.Unknowns, func(a, b Unknown) int {
		return cmp.Or(cmp.Compare(a.Span.Start, b.Span.Start), strings.Compare(a.Rule, b.Rule), strings.Compare(a.Needs, b.Needs))
	})
	rep.Unknowns = unique(rep.Unknowns, func(a, b *Unknown) bool {
		return a.Rule == b.Rule && a.Span == b.Span && a.Needs == b.Needs
	})
}

func unique[T any](list []T, same func(a, b *T) bool) []T {
	if len(list) < 2 {
		return list
	}
	out := list[:1]
	for i := 1; i < len(list); i++ {
		if !same(&out[len(out)-1], &list[i]) {
			out = append(out, list[i])
		}
	}
	return out
}

// likewise joins findings of one rule on one place that say the same of several
// members of a group: a group of eight is one fault in the text. The first tells
// its numbers, the others are named behind it.
func likewise(list []Finding) []Finding {
	out := list[:0]
	for i := 0; i < len(list); {
		j := i + 1
		for j < len(list) && list[j].Rule == list[i].Rule && list[j].Span == list[i].Span && list[j].File == list[i].File {
			j++
		}
		if j == i+1 {
			out = append(out, list[i])
		} else {
			out = append(out, members(list[i:j])...)
		}
		i = j
	}
	return out
}

// members joins the findings of one rule on one place that differ in names and
// numbers only, each of another part.
func members(list []Finding) []Finding {
	type group struct {
		Finding
		says  string
		parts []string
	}
	var groups []*group
next:
	for i := range list {
		f := &list[i]
		says := unnumbered(f.Message)
		for _, g := range groups {
			if f.Part != "" && g.Part != "" && g.Severity == f.Severity && g.says == says && !slices.Contains(g.parts, f.Part) {
				g.parts = append(g.parts, f.Part)
				continue next
			}
		}
		groups = append(groups, &group{*f, says, []string{f.Part}})
	}
	out := make([]Finding, 0, len(groups))
	for _, g := range groups {
		if also := g.parts[1:]; len(also) > 0 {
			g.Message += " Likewise " + strings.Join(also, ", ") + "."
		}
		out = append(out, g.Finding)
	}
	return out
}

// unnumbered is a sentence with each run of digits taken out, and with it what
// tells U1 from U2 and 0.82 m/s from 1 m/s.
func unnumbered(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r == '.' {
			return -1
		}
		return r
	}, s)
}
