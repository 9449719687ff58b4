package report

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/steps"
	"example.org/tundish/lang"
)

// StepsCaution closes every printed order of steps.
const StepsCaution = "The order and its numbers answer only for what the file states. Gas, flue products, pressure, heat and lifting can hurt and kill: the work is that of registered and competent people by local code, the makers' instructions and their own assessment of the risk. A hold point is passed by a signature on site, never by this page; it is no permission to build, to lift, to open gas or to fire."

// StepsPage is an order of steps with how far a record says it is.
type StepsPage struct {
	Plant    *plant.Plant
	List     *steps.List
	Record   *plant.Plant     // nil without one
	Progress []steps.Progress // nil without a record; else one for each step
	Faults   []steps.Fault
}

func (d *StepsPage) sys() lang.System {
	if d.Plant.US() {
		return lang.US
	}
	return lang.Metric
}

// item is one thing that a step says.
type item struct {
	kind, text     string
	quantity, unit string // of a part
	at             steps.Ref
}

func at(r steps.Ref) string {
	if r.Line == 0 {
		return ""
	}
	return r.File + ":" + strconv.Itoa(r.Line)
}

// with puts the place behind a text: a line of the specification that the page is
// headed by, or of another file by its name.
func (d *StepsPage) with(text string, r steps.Ref) string {
	switch {
	case r.Line == 0:
		return text
	case r.File == d.Plant.File.Source.Name:
		return text + " (line " + strconv.Itoa(r.Line) + ")"
	}
	return text + " (" + at(r) + ")"
}

// items are what step i says, in the order of print.
func (d *StepsPage) items(i int) []item {
	s, sys := &d.List.Steps[i], d.sys()
	var out []item
	add := func(kind, text string, r steps.Ref) { out = append(out, item{kind: kind, text: text, at: r}) }
	if d.Progress != nil {
		add("progress", d.Progress[i].Text(), steps.Ref{})
		for _, f := range d.faults(s.ID) {
			add("progress", f, steps.Ref{})
		}
	}
	for _, r := range s.Why {
		add("asked by", r.Address, r)
	}
	for _, a := range s.After {
		add("after", a, steps.Ref{})
	}
	for k := range s.Parts {
		p := &s.Parts[k]
		text := strings.TrimSpace(p.Name + "  " + p.Size)
		for o := range s.Parts {
			if o != k && s.Parts[o].Name == p.Name && s.Parts[o].Size == p.Size {
				text += "  (" + p.Package + ")"
				break
			}
		}
		out = append(out, item{kind: "part", text: text, quantity: quantity(p.Quantity), unit: p.Unit})
	}
	for _, t := range s.Tools {
		add("tool", t, steps.Ref{})
	}
	for k := range s.Lifts {
		add("lift", liftText(&s.Lifts[k], sys), s.Lifts[k].From)
	}
	if len(s.Lifts) > 0 {
		src := s.Lifts[0].Source
		add("lift", "who lifts by hand: "+src.String()+" ("+string(src.Read)+"); "+src.Note, steps.Ref{})
	}
	for k := range s.States {
		add("frame", stateText(&s.States[k], sys), steps.Ref{})
	}
	for _, t := range s.Safe {
		add("safe", t, steps.Ref{})
	}
	for _, c := range s.Cautions {
		text := c.Topic + ": " + c.Text
		if c.Missing {
			text += " [called for, not carried by the specification]"
		}
		add("care", text, c.From)
	}
	for _, c := range s.Checks {
		add("check", c.Text+sourceTail(c.Source), c.From)
	}
	for _, h := range s.Holds {
		text := h.Text + "; seen and signed by " + h.Witness
		if len(h.Before) > 0 {
			text += "; until then nobody begins " + strings.Join(h.Before, ", ")
		}
		add("HOLD", text, steps.Ref{})
	}
	for _, g := range s.Open {
		add("not known", g.Needs, g.From)
	}
	return out
}

// faults tells what is wrong with the marks of a step.
func (d *StepsPage) faults(id string) []string {
	var out []string
	for i := range d.Faults {
		f := &d.Faults[i]
		switch {
		case f.Step != id || f.Before == "":
		case f.Late():
			out = append(out, "dated "+f.On.String()+", before "+f.Before+" of "+f.Of.String())
		default:
			out = append(out, "marked before "+f.Before+" is done")
		}
	}
	return out
}

var peopleWords = [...]string{"", "one person", "two people", "three people"}

func liftText(l *steps.Lift, sys lang.System) string {
	if !l.Known() {
		return quantity(l.Count) + " x " + l.What + ": the mass is not stated; it is found out before it is lifted"
	}
	mass := lang.Quantity(l.Mass, lang.Mass, sys)
	out := quantity(l.Count) + " x " + l.What + ", " + mass + " each: "
	hand := lang.Quantity(l.ByHand, lang.Mass, sys)
	if l.People > 0 {
		out += "by hand " + peopleWords[l.People] + " (guide " + hand + ")"
	} else {
		out += "by a lifting machine; three people may lift " + hand + " by hand"
	}
	if l.Stated != "" {
		out += "; stated: " + l.Stated
	}
	return out
}

// sourceTail names a source behind what it asks for.
func sourceTail(c cite.Source) string {
	switch {
	case c.Work == "":
		return ""
	case c.Read == cite.Practice:
		return "; " + string(c.Read)
	}
	return "; " + c.String() + " (" + string(c.Read) + ")"
}

func stateText(s *steps.State, sys lang.System) string {
	most := ""
	if s.Bound {
		most = " or more"
	}
	out := s.Text + ": " + lang.Quantity(s.BuildState.Frame.Mass, lang.Mass, sys) + ", center " + lang.Quantity(s.BuildState.Frame.Offset, lang.Length, sys) + " inside the weakest edge and " + lang.Quantity(s.BuildState.Frame.Height, lang.Length, sys) + " up"
	if s.Bound {
		out += " or lower"
	}
	if s.Angle < 0 {
		out += "; it tips by itself"
	} else {
		out += "; tips at " + lang.Num(s.Angle, 4) + " deg" + most + ", or by " + lang.Quantity(s.Force, lang.Force, sys) + " at its top"
	}
	if s.Floor > 0 {
		unit := "kN/m2"
		if sys == lang.US {
			unit = "psf"
		}
		out += "; " + lang.In(s.Floor, unit) + " on the floor"
	}
	if s.Held {
		out += "; held"
	} else if s.Stage != solve.FilledFrame {
		out += "; nothing holds it"
	}
	return out
}

// StepsText writes the order for people on site.
func StepsText(w io.Writer, d *StepsPage) {
	title := d.Plant.One("plant").Get("title").Word
	if r := d.Plant.One("plant").Get("revision"); r.Known() {
		title += ", revision " + r.Word
	}
	if title != "" {
		fmt.Fprintln(w, title)
	}
	fmt.Fprintf(w, "The order of building %s; line numbers are those of this file.\n", d.Plant.File.Source.Name)
	fmt.Fprintf(w, "%s. A step begins when every step behind \"after\" is done and its hold points are signed.\n", count(len(d.List.Steps), "step", "steps"))
	d.summary(w)
	for i := range d.List.Steps {
		s := &d.List.Steps[i]
		fmt.Fprintf(w, "\n%3d  %s  [%s]\n", i+1, s.Title, s.ID)
		d.stepText(w, d.items(i))
	}
	if len(d.List.Gaps) > 0 {
		gapsText(w, &parts.List{Gaps: d.List.Gaps})
	}
	fmt.Fprintf(w, "\n%s\n", Wrap(StepsCaution, 100))
}

// joined are the items that a list of one line tells better than many lines.
var joined = map[string]bool{"asked by": true, "after": true, "tool": true}

func (d *StepsPage) stepText(w io.Writer, items []item) {
	for i := 0; i < len(items); {
		it := &items[i]
		text := d.with(it.text, it.at)
		if it.kind == "part" {
			text = it.quantity + " " + it.unit + "  " + it.text
		}
		j := i + 1
		if joined[it.kind] {
			for ; j < len(items) && items[j].kind == it.kind; j++ {
				text += ", " + d.with(items[j].text, items[j].at)
			}
		}
		label := it.kind
		if i > 0 && items[i-1].kind == it.kind {
			label = ""
		}
		lines := strings.Split(Wrap(text, 88), "\n")
		if it.kind == "part" {
			lines = []string{text}
		}
		fmt.Fprintf(w, "     %-10s %s\n", label, strings.Join(lines, "\n                "))
		i = j
	}
}

// summary tells how far the work is.
func (d *StepsPage) summary(w io.Writer) {
	if d.Progress == nil {
		return
	}
	by := map[string][]string{}
	for i := range d.Progress {
		p := &d.Progress[i]
		by[p.State] = append(by[p.State], p.ID)
	}
	fmt.Fprintf(w, "By the record %s:\n", d.Record.File.Source.Name)
	for _, st := range [...]string{steps.Done, steps.Begun, steps.Next, steps.Waiting} {
		list := "none"
		if len(by[st]) > 0 {
			list = strings.Join(by[st], ", ")
		}
		fmt.Fprintf(w, "     %-10s %s\n", st, strings.ReplaceAll(Wrap(list, 88), "\n", "\n                "))
	}
	for i := range d.Faults {
		f := &d.Faults[i]
		line, _ := f.Mark.File.Source.Position(f.Mark.Span().Start)
		text := "this plant has no step " + f.Step
		switch {
		case f.Before == "":
		case f.Late():
			text = f.Step + " is dated " + f.On.String() + ", before " + f.Before + " of " + f.Of.String()
		default:
			text = f.Step + " is marked before " + f.Before + " is done"
		}
		fmt.Fprintf(w, "     %-10s %s\n", "wrong", text+" ("+f.Mark.File.Source.Name+":"+strconv.Itoa(line)+")")
	}
}

// StepsCSV writes one line for each thing that a step says.
func StepsCSV(w io.Writer, d *StepsPage) error {
	c := csv.NewWriter(w)
	rows := [][]string{{"number", "step", "title", "what", "text", "quantity", "unit", "where"}}
	for i := range d.List.Steps {
		s := &d.List.Steps[i]
		for _, it := range d.items(i) {
			rows = append(rows, []string{strconv.Itoa(i + 1), s.ID, s.Title, strings.ToLower(it.kind), it.text, it.quantity, it.unit, at(it.at)})
		}
	}
	return c.WriteAll(rows)
}

type stepsDocument struct {
	File       string      `json:"file"`
	Record     string      `json:"record,omitempty"`
	Steps      []stepJSON  `json:"steps"`
	Wrong      []stepWrong `json:"wrong"`
	NotCounted []partsGap  `json:"notCounted"`
	Caution    string      `json:"caution"`
}

type stepJSON struct {
	Step     string        `json:"step"`
	Title    string        `json:"title"`
	AskedBy  []refJSON     `json:"askedBy"`
	After    []string      `json:"after"`
	Parts    []stepPart    `json:"parts"`
	Tools    []string      `json:"tools"`
	Lifts    []stepLift    `json:"lifts"`
	States   []stepState   `json:"states"`
	Safe     []string      `json:"safe"`
	Cautions []stepCaution `json:"cautions"`
	Checks   []stepNote    `json:"checks"`
	Holds    []stepHold    `json:"holds"`
	Unknown  []stepNote    `json:"notKnown"`
	Progress *stepProgress `json:"progress,omitempty"`
}

type refJSON struct {
	Address string `json:"address"`
	File    string `json:"file"`
	Line    int    `json:"line"`
}

type stepPart struct {
	Package  string     `json:"package"`
	Part     string     `json:"part"`
	Size     string     `json:"size"`
	Quantity float64    `json:"quantity"`
	Unit     string     `json:"unit"`
	Why      []partsWhy `json:"why"`
}

type stepLift struct {
	What   string   `json:"what"`
	Count  float64  `json:"count"`
	Mass   *float64 `json:"massKg"` // null: not stated
	People int      `json:"people"` // 0: by a machine, or not known
	ByHand float64  `json:"byHandKg"`
	Stated string   `json:"stated"`
	Source string   `json:"source"`
	Read   string   `json:"read"`
	Where  refJSON  `json:"where"`
}

type stepState struct {
	Frame   string  `json:"frame"`
	State   string  `json:"state"`
	Mass    float64 `json:"massKg"`
	Inside  float64 `json:"insideM"`
	Height  float64 `json:"heightM"`
	Angle   float64 `json:"tipAngleDeg"`
	AtLeast bool    `json:"angleAtLeast"`
	Force   float64 `json:"tipForceN"`
	Floor   float64 `json:"floorPa"` // 0: not known
	Held    bool    `json:"held"`
}

type stepCaution struct {
	Topic   string  `json:"topic"`
	Text    string  `json:"text"`
	Carried bool    `json:"carried"`
	Where   refJSON `json:"where"`
}

type stepNote struct {
	Text   string   `json:"text"`
	Source string   `json:"source,omitempty"`
	Read   string   `json:"read,omitempty"`
	Where  *refJSON `json:"where,omitempty"`
}

type stepHold struct {
	Text    string   `json:"text"`
	Witness string   `json:"witness"`
	Before  []string `json:"before"`
}

type stepProgress struct {
	State string   `json:"state"`
	On    string   `json:"on,omitempty"`
	By    string   `json:"by,omitempty"`
	Units []string `json:"units,omitempty"`
	For   []string `json:"waitsFor,omitempty"`
}

type stepWrong struct {
	Step   string `json:"step"`
	Before string `json:"before,omitempty"`
	On     string `json:"on,omitempty"`
	Of     string `json:"of,omitempty"`
	File   string `json:"file"`
	Line   int    `json:"line"`
}

func noteJSON(text string, r steps.Ref) stepNote {
	n := stepNote{Text: text}
	if r.Line > 0 {
		n.Where = &refJSON{r.Address, r.File, r.Line}
	}
	return n
}

func some[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// StepsJSON writes the order; numbers are in SI units, which the keys name.
func StepsJSON(w io.Writer, d *StepsPage) error {
	doc := stepsDocument{File: d.Plant.File.Source.Name, Steps: []stepJSON{}, Wrong: []stepWrong{}, NotCounted: []partsGap{}, Caution: StepsCaution}
	if d.Record != nil {
		doc.Record = d.Record.File.Source.Name
	}
	for i := range d.List.Steps {
		s := &d.List.Steps[i]
		j := stepJSON{Step: s.ID, Title: s.Title, AskedBy: []refJSON{}, After: some(s.After), Parts: []stepPart{}, Tools: some(s.Tools), Lifts: []stepLift{}, States: []stepState{}, Safe: some(s.Safe), Cautions: []stepCaution{}, Checks: []stepNote{}, Holds: []stepHold{}, Unknown: []stepNote{}}
		for _, r := range s.Why {
			j.AskedBy = append(j.AskedBy, refJSON(r))
		}
		for k := range s.Parts {
			p := &s.Parts[k]
			j.Parts = append(j.Parts, stepPart{p.Package, p.Name, p.Size, p.Quantity, p.Unit, whyJSON(p.Why)})
		}
		for k := range s.Lifts {
			l := &s.Lifts[k]
			x := stepLift{What: l.What, Count: l.Count, People: l.People, ByHand: l.ByHand, Stated: l.Stated, Source: l.Source.Work, Read: string(l.Source.Read), Where: refJSON(l.From)}
			if l.Known() {
				x.Mass = &l.Mass
			}
			j.Lifts = append(j.Lifts, x)
		}
		for k := range s.States {
			t := &s.States[k]
			j.States = append(j.States, stepState{t.Frame.Label(), t.Text, t.BuildState.Frame.Mass, t.BuildState.Frame.Offset, t.BuildState.Frame.Height, t.Angle, t.Bound, t.Force, t.Floor, t.Held})
		}
		for _, c := range s.Cautions {
			j.Cautions = append(j.Cautions, stepCaution{c.Topic, c.Text, !c.Missing, refJSON(c.From)})
		}
		for _, c := range s.Checks {
			n := noteJSON(c.Text, c.From)
			if c.Source.Work != "" {
				n.Source, n.Read = c.Source.String(), string(c.Source.Read)
			}
			j.Checks = append(j.Checks, n)
		}
		for _, h := range s.Holds {
			j.Holds = append(j.Holds, stepHold{h.Text, h.Witness, some(h.Before)})
		}
		for _, g := range s.Open {
			j.Unknown = append(j.Unknown, noteJSON(g.Needs, g.From))
		}
		if d.Progress != nil {
			p := &d.Progress[i]
			j.Progress = &stepProgress{State: p.State, By: p.By, Units: p.Of, For: p.For}
			if !p.On.IsZero() {
				j.Progress.On = p.On.String()
			}
		}
		doc.Steps = append(doc.Steps, j)
	}
	for i := range d.Faults {
		f := &d.Faults[i]
		line, _ := f.Mark.File.Source.Position(f.Mark.Span().Start)
		x := stepWrong{Step: f.Step, Before: f.Before, File: f.Mark.File.Source.Name, Line: line}
		if f.Late() {
			x.On, x.Of = f.On.String(), f.Of.String()
		}
		doc.Wrong = append(doc.Wrong, x)
	}
	for _, g := range d.List.Gaps {
		doc.NotCounted = append(doc.NotCounted, partsGap(g))
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(&doc)
}
