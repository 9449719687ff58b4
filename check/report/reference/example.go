package reference

import (
	_ "embed"
	"errors"
	"fmt"
	"path"
	"regexp"
	"strings"
	"sync"

	"golang.org/x/tools/txtar"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
	cases "example.org/tundish/testdata/rules"
)

// Example is one plant that a rule finds fault with, and how the fault goes. It
// was run when it was made: the findings are those of this program.
type Example struct {
	About    string    `json:"about"`            // what is tried and where the numbers come from
	Lines    []Line    `json:"lines"`            // the lines that matter
	Findings []Finding `json:"findings"`         // what the rule says
	ByTool   bool      `json:"mendedByTool"`     // the mend is the edit that the tool offers
	Left     int       `json:"findingsOfMended"` // what the rule still says after it; 0
}

// Line is one line of the plant of an example.
type Line struct {
	Sign string `json:"sign"` // "-" of the faulty text, "+" of the mended, " " of both, "~" for lines left out
	Text string `json:"text"`
}

// Finding is what the rule says of the faulty text.
type Finding struct {
	Severity string `json:"severity"`
	Text     string `json:"text"` // the line on which it starts
	Message  string `json:"message"`
	Found    string `json:"found,omitempty"`
	Limit    string `json:"limit,omitempty"`
	Source   string `json:"source,omitempty"`
	Mend     string `json:"mend,omitempty"`
}

// ErrNoExample is wrapped where a fault of the text has no example, because no
// text alone can show it.
var ErrNoExample = errors.New("no example")

// faultsOfText are the examples of the faults of the text: plants whose names
// start with the id of the fault.
//
//go:embed faults.txtar
var faultsOfText []byte

// Example runs the rule's example. The error wraps ErrNoExample where there is none.
func (r *Rule) Example(all []*check.Rule) (*Example, error) {
	if r.rule == nil {
		ar := &txtar.Archive{}
		for _, f := range txtar.Parse(faultsOfText).Files {
			if name, ok := strings.CutPrefix(f.Name, r.ID+"/"); ok {
				ar.Files = append(ar.Files, txtar.File{Name: name, Data: f.Data})
			}
		}
		if len(ar.Files) == 0 {
			return nil, fmt.Errorf("%s: %w", r.ID, ErrNoExample)
		}
		return runCase(r.ID, ar, all)
	}
	b, err := cases.Files.ReadFile(r.ID + ".txtar")
	if err != nil {
		return nil, fmt.Errorf("reading the example of %s: %w", r.ID, err)
	}
	return runCase(r.ID, txtar.Parse(b), all)
}

// mark is what a test file notes behind a line for its test.
var mark = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?m)[ \t]*# (expect|needs) .*$`) })

func runCase(id string, ar *txtar.Archive, all []*check.Rule) (*Example, error) {
	texts := map[string]string{}
	faulty, sound := "", ""
	for _, f := range ar.Files {
		texts[f.Name] = mark().ReplaceAllString(string(f.Data), "")
		switch {
		case strings.HasSuffix(f.Name, ".fixed"):
		case faulty == "" && strings.HasPrefix(f.Name, "fires"):
			faulty = f.Name
		case sound == "" && strings.HasPrefix(f.Name, "silent"):
			sound = f.Name
		}
	}
	x := &Example{About: strings.Join(strings.Fields(string(ar.Comment)), " ")}
	if _, ok := texts[faulty+".fixed"]; ok {
		sound, x.ByTool = faulty+".fixed", true
	}
	if faulty == "" || sound == "" {
		return nil, fmt.Errorf("the example of %s lacks a faulty or a sound plant", id)
	}
	rep := judge(texts, faulty, all)
	lines := strings.Split(strings.TrimSuffix(texts[faulty], "\n"), "\n")
	at := map[int]bool{}
	for i := range rep.Findings {
		f := &rep.Findings[i]
		if f.Rule != id {
			continue
		}
		file := f.File
		if file == nil {
			file = rep.Plant.File
		}
		n, _ := file.Source.Position(f.Span.Start)
		text := ""
		if file == rep.Plant.File && n <= len(lines) {
			at[n-1] = true
			text = strings.TrimSpace(lines[n-1])
		}
		x.Findings = append(x.Findings, Finding{
			Severity: f.Severity.String(), Text: text, Message: f.Message, Found: f.Found, Limit: f.Limit,
			Source: report.SourceText(f.Source), Mend: f.Mend,
		})
	}
	if len(x.Findings) == 0 {
		return nil, fmt.Errorf("the example of %s gives no finding", id)
	}
	x.Lines = changed(lines, strings.Split(strings.TrimSuffix(texts[sound], "\n"), "\n"), at)
	after := judge(texts, sound, all)
	for i := range after.Findings {
		if after.Findings[i].Rule == id {
			x.Left++
		}
	}
	return x, nil
}

// judge runs the rules on one of the texts.
func judge(texts map[string]string, name string, all []*check.Rule) *check.Report {
	bind := func(name, text string) *lang.File {
		f := lang.Parse(lang.NewSource(name, text), lang.NewCache())
		lang.Bind(f, lang.Language())
		return f
	}
	load := func(p string) (*lang.File, error) {
		if text, ok := texts[p]; ok {
			return bind(p, text), nil
		}
		b, err := cases.Files.ReadFile("common/" + path.Base(p))
		if err != nil {
			return nil, errors.New("no such file")
		}
		return bind(p, string(b)), nil
	}
	return check.Run(check.Input{Plant: plant.Resolve(bind(name, texts[name]), load), Rules: all, Today: cases.Today})
}
