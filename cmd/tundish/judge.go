package main

import (
	"context"
	"fmt"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// verdict is what came of one job.
type verdict struct {
	rep *check.Report
	err error
}

// pending is a job that was given out, and where its verdict comes.
type pending struct {
	*job
	verdict chan verdict
}

// judgeAll judges jobs side by side and hands the reports out one at a time, in
// the order of the jobs. It holds no more than a window of reports, however many
// jobs there are. When the context ends it stops with what is at work and returns
// how many jobs were done.
func judgeAll(ctx context.Context, jobs []*job, workers int, day lang.Date, take func(*job, *check.Report, error)) (done int) {
	workers = max(min(workers, len(jobs)), 1)
	inOrder, work := make(chan pending, 16*workers), make(chan pending)
	go func() {
		defer close(work)
		defer close(inOrder)
		for _, j := range jobs {
			p := pending{j, make(chan verdict, 1)}
			select {
			case <-ctx.Done():
				return
			case inOrder <- p:
			}
			work <- p
		}
	}()
	for range workers {
		go func() {
			for p := range work {
				rep, err := judgeOne(p.job, day)
				p.verdict <- verdict{rep, err}
			}
		}()
	}
	for p := range inOrder {
		v := <-p.verdict
		take(p.job, v.rep, v.err)
		done++
	}
	return done
}

// judgeOne judges one specification. A breakdown of the tool is a finding about
// this file and stops no other.
func judgeOne(j *job, day lang.Date) (rep *check.Report, err error) {
	defer func() {
		if v := recover(); v != nil {
			rep, err = problemReport(j.name, lang.Problem{
				Rule: "not-finished", Severity: lang.Error, Message: fmt.Sprintf("The tool broke down on this file and decided nothing: %v.", v),
				Mend: "report this with the file; the fault is in the tool, not in the plant",
			}), nil
		}
	}()
	if j.problems != nil {
		return problemReport(j.name, j.problems...), nil
	}
	sp, err := j.space()
	if err != nil {
		return nil, err
	}
	text, err := j.read()
	if err != nil {
		return nil, err
	}
	j.gate = sp.set.Gate
	return sp.judge(j.name, text, day), nil
}

// judge judges one text under the name given.
func (sp *lintSpace) judge(name, text string, day lang.Date) *check.Report {
	p := plant.Resolve(sp.parse(name, text), sp.load)
	p.Problems = append(p.Problems, sp.set.Problems...)
	return check.Run(check.Input{Plant: p, Rules: rules.All(), Today: day, Overrides: sp.set.Overrides})
}

// problemReport is a report of problems alone, of something that has no text.
func problemReport(name string, problems ...lang.Problem) *check.Report {
	f := lang.Parse(lang.NewSource(name, ""), nil)
	f.Problems = problems
	return check.TextOnly(plant.Resolve(f, nil))
}
