package main

import (
	"context"
	"fmt"
	"iter"
	"sync"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

// verdict is what came of one job: a report, or why there is none.
type verdict struct {
	rep  *check.Report
	gate string // of the project
	err  error
}

// chunk is a few neighboring jobs that go through the stages together.
type chunk[T any] struct {
	jobs  []job
	texts []loaded
	out   []T
	done  chan struct{}
}

// loaded is the text of a job, read ahead of its judging.
type loaded struct {
	text string
	err  error
}

// chunkSize keeps the hand-over between stages cheap beside the judging.
const chunkSize = 8

// judgeAll judges jobs side by side. Readers fetch texts ahead of the workers, so
// that a slow disk and the judging do not wait for each other. work turns a
// verdict into what take is given, in the order of the jobs and one at a time, so
// that nothing but a window of answers is held, however many jobs there are. When
// the context ends it stops with what is at work and returns how many jobs were
// done.
func judgeAll[T any](ctx context.Context, jobs iter.Seq[job], workers int, day lang.Date, work func(job, verdict) T, take func(job, T)) (done int) {
	if workers == 1 {
		return judgeInTurn(ctx, jobs, day, work, take)
	}
	inOrder := make(chan *chunk[T], 2*workers)
	toRead, toJudge := make(chan *chunk[T]), make(chan *chunk[T], workers)
	go func() {
		defer close(toRead)
		defer close(inOrder)
		var c *chunk[T]
		send := func() bool {
			select {
			case <-ctx.Done():
				return false
			case inOrder <- c:
			}
			toRead <- c
			c = nil
			return true
		}
		for j := range jobs {
			if c == nil {
				c = &chunk[T]{jobs: make([]job, 0, chunkSize), done: make(chan struct{})}
			}
			if c.jobs = append(c.jobs, j); len(c.jobs) == chunkSize && !send() {
				return
			}
		}
		if c != nil {
			send()
		}
	}()
	var reading sync.WaitGroup
	for range workers {
		reading.Go(func() {
			for c := range toRead {
				c.texts = make([]loaded, len(c.jobs))
				for i, j := range c.jobs {
					c.texts[i].text, c.texts[i].err = j.load()
				}
				toJudge <- c
			}
		})
	}
	go func() {
		reading.Wait()
		close(toJudge)
	}()
	for range workers {
		go func() {
			for c := range toJudge {
				c.out = make([]T, len(c.jobs))
				for i, j := range c.jobs {
					c.out[i] = work(j, judgeOne(j, c.texts[i], day))
					c.texts[i] = loaded{}
				}
				close(c.done)
			}
		}()
	}
	for c := range inOrder {
		<-c.done
		for i, j := range c.jobs {
			take(j, c.out[i])
		}
		done += len(c.jobs)
	}
	return done
}

// judgeInTurn is judgeAll with nothing side by side. For one file it takes half a
// millisecond less: a process starts no threads for it.
func judgeInTurn[T any](ctx context.Context, jobs iter.Seq[job], day lang.Date, work func(job, verdict) T, take func(job, T)) (done int) {
	for j := range jobs {
		if ctx.Err() != nil {
			break
		}
		var in loaded
		in.text, in.err = j.load()
		take(j, work(j, judgeOne(j, in, day)))
		done++
	}
	return done
}

// load reads the text of a job that has one. A breakdown of a reader concerns this
// file alone.
func (j job) load() (text string, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("reading %s: the tool broke down: %v", j.name, fault)
		}
	}()
	if _, ok := j.from.(problemSource); ok {
		return "", nil
	}
	return j.from.read(j.name)
}

// judgeOne judges one specification. A breakdown of the tool is a finding about
// this file and stops no other.
func judgeOne(j job, in loaded, day lang.Date) (v verdict) {
	defer func() {
		if fault := recover(); fault != nil {
			v = verdict{rep: problemReport(j.name, lang.Problem{
				Rule: "not-finished", Severity: lang.Error, Message: fmt.Sprintf("The tool broke down on this file and decided nothing: %v.", fault),
				Mend: "report this with the file; the fault is in the tool, not in the plant",
			})}
		}
	}()
	if p, ok := j.from.(problemSource); ok {
		return verdict{rep: problemReport(j.name, p.problems...)}
	}
	if in.err != nil {
		return verdict{err: in.err}
	}
	sp, err := j.from.space(j.name)
	if err != nil {
		return verdict{err: err}
	}
	return verdict{rep: sp.judge(j.name, in.text, day), gate: sp.set.Gate}
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
