// Package sheet makes the calculation sheet of one specification: a
// self-contained page with the job, every calculation with its formula, the
// numbers put in, result, limit, margin and source, the findings, the accepted
// deviations, what was not evaluated, and a block to sign. It holds no clock
// and no script; dates come in as options.
package sheet

import (
	"crypto/sha256"
	"encoding/hex"
	"html/template"

	"example.org/tundish/check"
	"example.org/tundish/check/report/compare"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// Options are what the sheet cannot know from the report.
type Options struct {
	Name    string // of the specification, as the user gave it
	Version string // of the tool
	Today   lang.Date
	Figures []Figure
	// Since is what changed from an earlier revision; nil leaves the section out.
	Since *compare.Changes
	// Head is further markup for the head of the page, for a page that renews
	// itself in the editor.
	Head template.HTML
	// Notice is a sentence above the sheet, such as that the text has changed
	// since; empty: none.
	Notice string
}

// Figure is one drawing or plot, an SVG fragment.
type Figure struct {
	ID, Title string
	SVG       template.HTML
	Wide      bool   // takes a page of its own, on its side, in print
	Missing   string // why there is none: what the drawing needs
}

// Sheet is the content of the page, before it becomes markup.
type Sheet struct {
	Options  Options
	Title    string
	Kind     string // plant, record, catalogue
	Revision string
	Dated    string
	Today    string
	Hash     string // SHA-256 of the text, hexadecimal
	Tables   string // SHA-256 of the tables of limits and sizes, hexadecimal
	Files    []File // the catalogues that it uses
	Verdict  Verdict
	People   []Person
	Basis    []Line
	Wants    []Want
	Tightest []Tight
	Findings []Finding
	Excused  []Deviation
	Open     []Open
	Blocks   []Block
	Further  []Limit // comparisons of values that stand in no calculation
	Cautions []Caution
	Sources  []Source
	Text     []TextLine
}

// File is a further file that was read, with its hash.
type File struct{ Name, Hash string }

// Verdict counts what was found.
type Verdict struct{ Errors, Warnings, Notes, Open, Excused, Calculations, Limits int }

// Clean reports that nothing was found and nothing stayed open.
func (v Verdict) Clean() bool { return v.Errors+v.Warnings+v.Open == 0 }

// Line is one statement of the specification with its place.
type Line struct {
	Key, Text string
	Number    int
}

// Person is one person of the job by code.
type Person struct{ Code, Role, Register string }

// Caution is one caution that the specification carries.
type Caution struct{ Topic, Text string }

// TextLine is one line of the specification.
type TextLine struct {
	Number int
	Text   string
}

// Build collects the content of a sheet from a report.
func Build(rep *check.Report, o Options) *Sheet {
	p := rep.Plant
	s := &Sheet{Options: o, Kind: p.Kind, Title: o.Name, Hash: hash(p.File.Source.Text), Tables: tables.Hash()}
	if !o.Today.IsZero() {
		s.Today = o.Today.String()
	}
	for _, f := range p.Catalogues {
		s.Files = append(s.Files, File{f.Source.Name, hash(f.Source.Text)})
	}
	b := &builder{rep: rep, s: s, us: p.US()}
	b.front()
	b.findings()
	b.calculations()
	b.links()
	b.wants()
	b.sources()
	return s
}

// builder holds what the steps of Build share.
type builder struct {
	rep   *check.Report
	s     *Sheet
	us    bool
	cited map[Source]int
}

func (b *builder) system() lang.System {
	if b.us {
		return lang.US
	}
	return lang.Metric
}

func hash(text string) string {
	h := sha256.Sum256([]byte(text))
	return hex.EncodeToString(h[:])
}
