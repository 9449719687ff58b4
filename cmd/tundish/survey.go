package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"slices"

	"example.org/tundish/cmd/tundish/survey"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "survey", args: "PATH... -o FILE",
	summary: "put an archive into an SQLite database: files, parts, values, findings, readings",
	run:     runSurvey,
})

func runSurvey(args []string, s std) int {
	fs := flags("survey", s)
	out := fs.StringP("output", "o", "", "the database; with --format csv a folder")
	form := fs.String("format", "sqlite", "sqlite, or csv: one file for each table")
	jobs := fs.IntP("jobs", "j", runtime.GOMAXPROCS(0), "how many files are checked side by side")
	list := fs.String("files-from", "", "a file that lists paths, one on a line; - reads the list from standard input")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if err := oneOf("format", *form, "sqlite", "csv"); err != nil {
		return badUse(s, err.Error())
	}
	switch {
	case fs.NArg() == 0 && *list == "":
		return badUse(s, "survey needs files, folders or archives")
	case *out == "":
		return badUse(s, "survey needs -o, the database to write")
	case *jobs < 1 || *jobs > 1024:
		return badUse(s, "--jobs takes a number from 1 to 1024")
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	in := newInputs(s)
	defer in.close()
	if err := in.add(fs.Args(), *list); err != nil {
		return failed(s, err)
	}
	file := *out
	if *form == "csv" {
		dir, err := os.MkdirTemp("", "tundish-*")
		if err != nil {
			return failed(s, fmt.Errorf("making room: %w", err))
		}
		defer os.RemoveAll(dir)
		file = filepath.Join(dir, "survey.db")
	}
	r := &surveyRun{s: s, in: in, day: day, hashes: map[string]string{}}
	if r.db, err = survey.Open(file, "tundish "+version+", "+day.String()); err != nil {
		return failed(s, fmt.Errorf("opening %s: %w", *out, err))
	}
	code := r.run(*jobs)
	if *form == "csv" && code != exitFailed {
		if err := writeTables(r.db, *out); err != nil {
			code = failed(s, err)
		}
	}
	if err := r.db.Close(); err != nil {
		return failed(s, fmt.Errorf("writing %s: %w", *out, err))
	}
	return code
}

// surveyRun is one run of survey.
type surveyRun struct {
	s      std
	in     *inputs
	db     *survey.DB
	day    lang.Date
	hashes map[string]string // of files that others use
	bar    *bar
	missed int // files that could not be read
	code   int
}

func (r *surveyRun) run(workers int) int {
	paths := map[string]bool{}
	var todo []job
	for j := range r.in.jobs.all() {
		paths[j.name] = true
		if !r.unchanged(j) {
			todo = append(todo, j)
		}
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	r.bar = newBar(r.s, len(todo))
	n := judgeAll(ctx, slices.Values(todo), workers, r.day, func(_ job, v verdict) verdict { return v }, r.take)
	r.bar.end()
	if r.code == exitFailed {
		return r.code
	}
	if n < len(todo) {
		fmt.Fprintf(r.s.err, "tundish: interrupted after %d of %d files; the next run goes on from there\n", n, len(todo))
		return exitFailed
	}
	if err := r.db.Keep(paths); err != nil {
		return failed(r.s, err)
	}
	fmt.Fprintf(r.s.out, "Surveyed %d files, %d of them new or changed. A survey is no permission to build or to fire.\n", r.in.jobs.len()-r.missed, len(todo)-r.missed)
	if r.missed > 0 {
		fmt.Fprintf(r.s.err, "tundish: %d files could not be read\n", r.missed)
		return exitFailed
	}
	return exitClean
}

// unchanged tells a file that stands in the database with the same text and the
// same texts of what it uses.
func (r *surveyRun) unchanged(j job) bool {
	hash, used, known, err := r.db.Known(j.name)
	if err != nil || !known {
		return false
	}
	if _, ok := j.from.(problemSource); ok {
		return false
	}
	sp, err := j.from.space(j.name)
	if err != nil {
		return false
	}
	if text, err := j.load(); err != nil || survey.Hash(withSettings(text, sp)) != hash {
		return false
	}
	for name, was := range used {
		h, seen := r.hashes[name]
		if !seen {
			if f, err := sp.load(name); err == nil {
				h = survey.Hash(f.Source.Text)
			}
			r.hashes[name] = h
		}
		if h != was {
			return false
		}
	}
	return true
}

// withSettings is the text of a file together with the settings that hold for it:
// a change of either is a change.
func withSettings(text string, sp *lintSpace) string { return text + "\x00" + sp.set.Text }

func (r *surveyRun) take(j job, v verdict) {
	r.bar.step()
	if v.err != nil {
		fmt.Fprintf(r.s.err, "tundish: %v\n", v.err)
		r.missed++
		return // the file is told; the others go on
	}
	text := v.rep.Plant.File.Source.Text
	if _, ok := j.from.(problemSource); !ok {
		if sp, err := j.from.space(j.name); err == nil {
			text = withSettings(text, sp)
		}
	}
	if err := r.db.Put(j.name, text, v.rep); err != nil && r.code != exitFailed {
		r.code = failed(r.s, fmt.Errorf("writing %s: %w", j.name, err))
	}
}

// writeTables writes each table of a survey as a CSV file of a folder.
func writeTables(db *survey.DB, dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("making %s: %w", dir, err)
	}
	for _, t := range survey.Tables {
		f, err := os.Create(filepath.Join(dir, t+".csv"))
		if err != nil {
			return fmt.Errorf("making the table %s: %w", t, err)
		}
		w := csv.NewWriter(f)
		err = db.Rows(t, w.Write)
		w.Flush()
		if err == nil {
			err = w.Error()
		}
		if e := f.Close(); err == nil {
			err = e
		}
		if err != nil {
			return fmt.Errorf("writing the table %s: %w", t, err)
		}
	}
	return nil
}
