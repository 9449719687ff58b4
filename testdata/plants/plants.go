// Package plants makes believable specifications at random: sound ones, and ones
// with a single fault of a known kind. Everything in them is invented. Sizes come
// from rules of thumb that stand here, not from the engine that they test: each
// has a margin over what the engine asks for.
package plants

import (
	_ "embed"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"text/template"
)

//go:embed sound.txt
var soundText string

var soundTemplate = template.Must(template.New("sound").Parse(soundText))

// Catalogue is the name of the catalogue that every plant uses: the one of the
// examples.
const Catalogue = "catalogue.plant"

// unit is what the generator knows of a type of the catalogue.
type unit struct {
	typ, pump           string
	output, input       float64 // kW, at 75/55 degC and net
	products            float64 // kg/h at full fire
	flow                float64 // m3/h at 20 K
	spigot              int     // mm
	gasDrop, waterSize  string
	gasValve, waterStop string
	pitch               float64 // m
	mass                float64 // kg
}

var units = []unit{
	{"Wall-60", "Ring-25-60", 61.2, 61.8, 101, 2.63, 100, "DN25", "DN32", "DN20", "DN32", 0.62, 71},
	{"Wall-100", "Ring-32-80", 102, 103, 169, 4.39, 110, "DN32", "DN40", "DN25", "DN32", 0.65, 94},
}

// values fill the template.
type values struct {
	Name, Building                             string
	Altitude, Outside                          int
	Type, Pump                                 string
	N                                          int
	Units, Connectors, Drops, Flows, Returns   string // spans, or the one name
	List, FlowList                             string
	Load, HotWater, Least, Standby             string
	Arrangement, Rows, Sections, Hang, Fronts  string
	FrameMass, Depth, Offset, Hoist            string
	RoomLong, RoomWide                         string
	Meter, MeterSize, Feeds                    string
	GasSize, GasLength, Rise, ManLength        string
	DropSize, GasValve, WaterStop              string
	Order, HeaderSize, HeaderLength            string
	BranchSize, PF, PR                         string
	SepBody                                    string
	CircuitA, CircuitB                         string
	Content, Total, Vessel                     string
	Discharge                                  string
	Spigot, FlueSize, FlueLength, Riser, Above string
	CondSize, Neutraliser                      string
	High, Low                                  string
	Panel                                      string
	Purge, PurgeRate                           string
	PlantRequire                               string
}

var (
	names = []string{"Alder", "Birch", "Cedar", "Dogwood", "Elder", "Fir", "Gorse", "Hazel", "Ivy", "Juniper", "Larch", "Maple", "Oak", "Pine", "Rowan", "Sorrel", "Teasel", "Willow"}
	kinds = []string{"school", "workshop", "dwellings", "office", "care-home", "hotel"}
)

// Sound gives the text of a sound plant. The same source of random numbers gives
// the same text.
func Sound(r *rand.Rand) string { return write(soundTemplate, draw(r)) }

func write(t *template.Template, v *values) string {
	var b strings.Builder
	if err := t.Execute(&b, v); err != nil {
		panic(err) // the templates are part of this package and tested
	}
	return b.String()
}

// draw draws the values of a plant.
func draw(r *rand.Rand) *values {
	u := units[r.IntN(len(units))]
	n := 1 + r.IntN(8)
	if u.input*float64(n) < 70 {
		n = 2 // smaller plants follow other standards
	}
	v := &values{
		Name: names[r.IntN(len(names))] + " " + kinds[r.IntN(len(kinds))], Building: kinds[r.IntN(len(kinds))],
		Altitude: r.IntN(400), Outside: -2 - r.IntN(6), Type: u.typ, Pump: u.pump, N: n,
		Units: span("U", n), Connectors: span("C", n), Drops: span("GD", n), Flows: span("FB", n), Returns: span("RB", n),
		DropSize: u.gasDrop, BranchSize: u.waterSize, GasValve: u.gasValve, WaterStop: u.waterStop, Spigot: fmt.Sprint(u.spigot),
		Order: [...]string{"direct-return", "reverse-return"}[r.IntN(2)],
	}
	total := float64(n) * u.output
	carried := total // with one unit away for service, where there is more than one
	v.Standby = "0 unit"
	if n > 1 {
		carried, v.Standby = float64(n-1)*u.output, "1 unit"
		v.PlantRequire = "require units.output.total - U1.output >= basis.load because \"one unit may be away for service\"\n"
	}
	load := carried * (0.9 + 0.08*r.Float64())
	hot := load * (0.1 + 0.15*r.Float64())
	v.Load, v.HotWater, v.Least = num(load-hot, 0), num(hot, 0), num(0.24*u.input+4*r.Float64(), 0)
	// Frame.
	backs := n >= 4 && n%2 == 0 && r.IntN(2) == 0
	v.frame(u, n, backs)
	// Gas: sizes for a run of up to 16 m, by the heat that it carries.
	input := float64(n) * u.input
	v.Meter = "40 m3/h least 0.25 m3/h loss 1.22 mbar diaphragm volume 0.067 m3 cyclic-volume 0.02 m3"
	meter := 0.067
	if input/9.7 > 34 {
		v.Meter, meter = "100 m3/h least 0.65 m3/h loss 1.32 mbar diaphragm volume 0.182 m3 cyclic-volume 0.057 m3", 0.182
	}
	v.MeterSize, _, _ = strings.Cut(v.Meter, " ")
	if v.Feeds = v.Units; backs {
		v.Feeds = v.List
	}
	gas := pick(input, 55, 40, 95, 50, 190, 65, 330, 80, 1e9, 100)
	gasLength, man := 5+9*r.Float64(), u.pitch*float64(max(n-1, 1))
	v.GasSize, v.GasLength, v.ManLength = fmt.Sprintf("DN%d", gas), num(gasLength, 1), num(man, 2)
	v.Rise = num(0.5+1.5*r.Float64(), 1)
	volume := math.Pi/4*math.Pow(float64(gas)*1.06e-3, 2)*(gasLength+2+man)*1.2 + meter
	v.Purge, v.PurgeRate = num(2.5*volume+0.2, 1), fmt.Sprint(pick(float64(gas), 50, 6, 80, 12, 1e9, 22))
	// Water.
	v.FlowList = v.List
	if v.Order == "direct-return" { // the first unit on the return is the last on the flow
		list := strings.Split(v.List, ", ")
		slices.Reverse(list)
		v.FlowList = strings.Join(list, ", ")
	}
	flow := float64(n) * u.flow
	header := pick(flow, 5, 65, 11, 80, 19, 100, 29, 125, 1e9, 150)
	v.HeaderSize, v.HeaderLength = fmt.Sprintf("DN%d", header), num(man, 2)
	v.PF, v.PR = num(2+2*r.Float64(), 1), num(2+2*r.Float64(), 1)
	v.SepBody = fmt.Sprint(pick(float64(header), 65, 150, 80, 200, 100, 250, 125, 300, 1e9, 350))
	v.CircuitA, v.CircuitB = num((load-hot)/22.8, 2), num(hot/22.8, 2) // 20 K
	content := total * (5 + 3*r.Float64())
	v.Content, v.Total = num(content, 0), num(content+60+8*float64(n), 0)
	v.Vessel = fmt.Sprint(pick((content+150)*0.14, 50, 50, 80, 80, 140, 140, 200, 200, 300, 300, 400, 400, 500, 500, 600, 600, 800, 800, 1e9, 1000))
	v.Discharge = fmt.Sprint(pick(u.output, 80, 35, 1e9, 42))
	// Flue: about 2.5 m/s, a third more for a header than a riser of this size needs.
	bore := 240 * math.Sqrt(float64(n)*u.products/404)
	v.FlueSize = fmt.Sprint(pick(bore, 125, 125, 150, 150, 160, 160, 180, 180, 200, 200, 225, 225, 250, 250, 300, 300, 350, 350, 400, 400, 450, 450, 1e9, 500))
	v.FlueLength, v.Riser, v.Above = num(man+0.8, 1), num(5+7*r.Float64(), 1), num(1.5+r.Float64(), 1)
	v.CondSize, v.Neutraliser = fmt.Sprint(pick(float64(n), 4, 40, 1e9, 50)), num(10*math.Ceil(input*0.03), 0)
	v.High, v.Low = num(50*math.Ceil(input*2.2/50), 0), num(50*math.Ceil(input*4.4/50), 0)
	v.Panel = fmt.Sprint(pick(float64(n), 2, 20, 5, 40, 1e9, 63))
	return v
}

// frame lays the units out in one row or two.
func (v *values) frame(u unit, n int, backs bool) {
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf("U%d", i+1)
	}
	sections := (n + 1) / 2 // each carries two units
	v.Arrangement, v.Rows, v.Depth, v.Offset = "in-line", "  row Front       "+v.Units+"\n", "0.90 m", "250 mm"
	v.Fronts = "  front Front     1.40 m\n"
	v.RoomLong, v.RoomWide = num(u.pitch*float64(n)+3, 1), "3.8"
	if backs {
		h := n / 2
		v.Arrangement, v.Depth, v.Offset = "back-to-back", "1.64 m", "380 mm"
		v.Rows = fmt.Sprintf("  row Left        U1..U%d\n  row Right       U%d..U%d\n", h, h+1, n)
		v.Fronts = "  front Left      1.20 m\n  front Right     1.20 m\n"
		turn := make([]string, 0, n)
		for i := range h {
			turn = append(turn, list[i], list[h+i])
		}
		list = turn
		v.RoomLong, v.RoomWide = num(u.pitch*float64(h)+4, 1), "5.6"
		sections = max(h, 1)
	}
	v.List, v.Hang = strings.Join(list, ", "), strings.Join(list, ", ")
	v.Sections = "section S1      1.30 m straight steel mass 26 kg"
	if sections > 1 {
		v.Sections = fmt.Sprintf("section S1..S%d  1.30 m straight steel mass 26 kg", sections)
	}
	v.FrameMass, v.Hoist = num(float64(sections)*34+24, 0), num(u.mass+100, 0)
}

func span(head string, n int) string {
	if n == 1 {
		return head + "1"
	}
	return fmt.Sprintf("%s1..%s%d", head, head, n)
}

func num(v float64, digits int) string { return fmt.Sprintf("%.*f", digits, v) }

// pick gives the value behind the first bound that v does not pass.
func pick(v float64, pairs ...float64) int {
	for i := 0; i+1 < len(pairs); i += 2 {
		if v <= pairs[i] {
			return int(pairs[i+1])
		}
	}
	return int(pairs[len(pairs)-1])
}
