package main

import (
	"bufio"
	_ "embed"
	"fmt"
	"os"
	"strconv"
	"strings"
	"text/template"

	"example.org/tundish/lang"
)

//go:embed new.txt
var newText string

var _ = register(command{
	name: "new", args: "",
	summary: "start a specification from a few answers or flags; what is open is written as unknown",
	run:     runNew,
})

// question is one thing that a new specification needs to know.
type question struct {
	flag, ask, usual string
	words            []string // empty: a number
	answer           *string
}

// newPlant fills the template.
type newPlant struct {
	Title, Jurisdiction, Standards, Building string
	Primary, Load, Output, Standby           string
	N                                        int
	Units, Drops, Flows, Returns, Connectors string
	List, Layout, Rows                       string
}

func runNew(args []string, s std) int {
	fs := flags("new", s)
	out := fs.StringP("output", "o", "", "the file to write; it must not exist yet (default: standard output)")
	ask := fs.Bool("ask", false, "ask for what the flags do not say")
	questions := []*question{
		{flag: "title", ask: "What is the plant called", usual: "New plant"},
		{flag: "jurisdiction", ask: "Whose code holds", usual: "UK", words: []string{"UK", "EU", "US"}},
		{flag: "building", ask: "What is the building used for", usual: "other", words: []string{"school", "hospital", "care-home", "dwellings", "office", "hotel", "sports-hall", "swimming-hall", "workshop", "other"}},
		{flag: "units", ask: "How many units, 1 to 8", usual: "4"},
		{flag: "kw", ask: "Output of a unit in kW", usual: "100"},
		{flag: "load", ask: "Design load in kW", usual: "300"},
		{flag: "layout", ask: "How the units stand", usual: "in-line", words: []string{"in-line", "back-to-back", "l-shaped"}},
	}
	for _, q := range questions {
		q.answer = fs.String(q.flag, "", strings.ToLower(q.ask[:1])+q.ask[1:]+hint(q))
	}
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() > 0 {
		return badUse(s, "new takes flags only")
	}
	in := bufio.NewReader(s.in)
	for _, q := range questions {
		if *q.answer == "" && *ask {
			fmt.Fprintf(s.err, "%s%s: ", q.ask, hint(q))
			line, err := in.ReadString('\n')
			if err != nil && line == "" {
				return failed(s, fmt.Errorf("the answers end before the questions do"))
			}
			*q.answer = strings.TrimSpace(line)
		}
		if *q.answer == "" {
			*q.answer = q.usual
		}
		if len(q.words) > 0 {
			if err := oneOf(q.flag, *q.answer, q.words...); err != nil {
				return badUse(s, err.Error())
			}
		}
	}
	text, err := newSpecification(questions)
	if err != nil {
		return badUse(s, err.Error())
	}
	if *out == "" {
		fmt.Fprint(s.out, text)
		return exitClean
	}
	f, err := os.OpenFile(*out, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return failed(s, fmt.Errorf("making %s: %w", *out, cause(err)))
	}
	_, err = f.WriteString(text)
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		return failed(s, fmt.Errorf("writing %s: %w", *out, cause(err)))
	}
	return exitClean
}

// hint shows what may be answered and what holds without an answer.
func hint(q *question) string {
	if len(q.words) > 0 {
		return " (" + strings.Join(q.words, ", ") + "; " + q.usual + " if not said)"
	}
	return " (" + q.usual + " if not said)"
}

// newSpecification writes the text of the answers.
func newSpecification(questions []*question) (string, error) {
	a := map[string]string{}
	for _, q := range questions {
		a[q.flag] = *q.answer
	}
	if strings.ContainsAny(a["title"], "\"\n\r") || a["title"] == "" {
		return "", fmt.Errorf("--title takes one line without quotation marks")
	}
	n, err := strconv.Atoi(a["units"])
	if err != nil || n < 1 || n > 8 {
		return "", fmt.Errorf("--units takes a number from 1 to 8, not %q", a["units"])
	}
	kw, err1 := strconv.ParseFloat(a["kw"], 64)
	load, err2 := strconv.ParseFloat(a["load"], 64)
	switch {
	case err1 != nil || !(kw >= 1 && kw <= 2000):
		return "", fmt.Errorf("--kw takes a number from 1 to 2000, not %q", a["kw"])
	case err2 != nil || !(load >= 1 && load <= 20000):
		return "", fmt.Errorf("--load takes a number from 1 to 20000, not %q", a["load"])
	case a["layout"] != "in-line" && n < 2:
		return "", fmt.Errorf("one unit stands in-line")
	}
	p := newPlant{
		Title: a["title"], Jurisdiction: a["jurisdiction"], Standards: `"BS 6644", "IGEM/UP/2"`, Building: a["building"], Primary: "75/55 degC",
		Load: lang.Num(load, 6) + " kW", Output: lang.Num(kw, 6) + " kW", Standby: "0 unit", N: n, Layout: a["layout"],
		Units: spanOf("U", 1, n), Drops: spanOf("GD", 1, n), Flows: spanOf("FB", 1, n), Returns: spanOf("RB", 1, n), Connectors: spanOf("C", 1, n),
	}
	switch p.Jurisdiction {
	case "EU":
		p.Standards = `"EN 12828", "EN 13384-2"`
	case "US":
		p.Standards, p.Primary = `"IFGC", "IMC"`, "160/130 degF"
		p.Load, p.Output = lang.Num(load*3.412141633, 4)+" MBH", lang.Num(kw*3.412141633, 4)+" MBH"
	}
	if n > 1 && float64(n-1)*kw >= load {
		p.Standby = "1 unit"
	}
	list := make([]string, n)
	for i := range list {
		list[i] = "U" + strconv.Itoa(i+1)
	}
	p.List = strings.Join(list, ", ")
	switch h := (n + 1) / 2; p.Layout {
	case "in-line":
		p.Rows = "  row Front       " + p.Units + "\n"
	case "back-to-back":
		p.Rows = "  row Left        " + spanOf("U", 1, h) + "\n  row Right       " + spanOf("U", h+1, n) + "\n"
	default:
		p.Rows = "  row Long        " + spanOf("U", 1, h) + "\n  row Short       " + spanOf("U", h+1, n) + "\n"
	}
	var b strings.Builder
	if err := template.Must(template.New("new").Parse(newText)).Execute(&b, p); err != nil {
		return "", err
	}
	f := lang.Parse(lang.NewSource("new.plant", b.String()), nil)
	lang.Bind(f, lang.Language())
	return lang.Format(f), nil
}

func spanOf(head string, from, to int) string {
	if from == to {
		return head + strconv.Itoa(from)
	}
	return head + strconv.Itoa(from) + ".." + head + strconv.Itoa(to)
}
