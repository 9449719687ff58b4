package topics_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/check/topics"
)

const networkHeader = "kind,id,from,to,length [m],bore [mm],roughness [mm],loss-coefficient [-],demand [L/s],head [m],state"

// table splits lines of cells.
func table(tb testing.TB, text string) [][]string {
	tb.Helper()
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	return rows
}

// inpTable turns a reference input file into the table of the topic. The
// pumps of the reference have a non-return valve; none of them runs backwards.
func inpTable(tb testing.TB, name string) [][]string {
	tb.Helper()
	text, err := os.ReadFile("../../testdata/reference/inp/" + name + ".inp")
	if err != nil {
		tb.Fatal(err)
	}
	sections := map[string][][]string{}
	section := ""
	for _, line := range strings.Split(string(text), "\n") {
		line, _, _ = strings.Cut(strings.TrimSpace(line), ";")
		switch {
		case line == "":
		case line[0] == '[':
			section = line
		default:
			sections[section] = append(sections[section], strings.Fields(line))
		}
	}
	rows := table(tb, networkHeader)
	for _, f := range sections["[PIPES]"] {
		rows = append(rows, []string{"pipe", f[0], f[1], f[2], f[3], f[4], f[5], f[6], "", "", ""})
	}
	points := map[string][]string{}
	for _, f := range sections["[CURVES]"] {
		points[f[0]] = f[1:]
	}
	state := map[string]string{}
	for _, f := range sections["[STATUS]"] {
		state[f[0]] = strings.ToLower(f[1])
	}
	for _, f := range sections["[PUMPS]"] {
		p := points[f[4]]
		rows = append(rows, []string{"pump", f[0], f[1], f[2], "", "", "", "", p[0], p[1], state[f[0]]})
	}
	for _, f := range sections["[JUNCTIONS]"] {
		rows = append(rows, []string{"junction", f[0], "", "", "", "", "", "", f[2], "", ""})
	}
	for _, f := range sections["[RESERVOIRS]"] {
		rows = append(rows, []string{"fixed", f[0], "", "", "", "", "", "", "", f[1], ""})
	}
	return rows
}

// networkAnswer is an answered table by column and id.
func networkAnswer(rows [][]string) map[string]map[string]string {
	out := map[string]map[string]string{}
	for _, row := range rows[1:] {
		cells := map[string]string{}
		for i, cell := range row {
			cells[rows[0][i]] = cell
		}
		out[cells["id"]] = cells
	}
	return out
}

// Reference: testdata/reference/network.csv, tolerance 1e-4 (what is about 0:
// 1e-7 L/s and m); against the other program 7e-4 in flow, 0.7 % in loss.
func TestNetworkAgainstReference(t *testing.T) {
	file, err := os.Open("../../testdata/reference/network.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	answers := map[string]map[string]map[string]string{}
	compared := 0
	for _, record := range all[1:] {
		want := map[string]string{}
		for i, cell := range record {
			want[all[0][i]] = cell
		}
		name := want["net"]
		if answers[name] == nil {
			viscosity, err := strconv.ParseFloat(want["nu_m2_s"], 64)
			if err != nil {
				t.Fatal(err)
			}
			rows, err := topics.Network(inpTable(t, name), viscosity)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			answers[name] = networkAnswer(rows)
		}
		got := answers[name][want["id"]]
		for _, c := range []struct {
			column, reference string
			relative, floor   float64
		}{
			{"flow [L/s]", "Q_colebrook_Lps", 1e-4, 1e-7},
			{"head-loss [m]", "headloss_colebrook_m", 1e-4, 1e-7},
			{"head [m]", "head_colebrook_m", 1e-4, 1e-7},
			{"flow [L/s]", "Q_epanet_Lps", 7e-4, 1e-6},
			{"head-loss [m]", "headloss_epanet_m", 7e-3, 1e-7},
			{"head [m]", "head_epanet_m", 7e-3, 0},
		} {
			if want[c.reference] == "" {
				continue
			}
			w, err := strconv.ParseFloat(want[c.reference], 64)
			if err != nil {
				t.Fatal(err)
			}
			g, err := strconv.ParseFloat(got[c.column], 64)
			if err != nil || math.Abs(g-w) > c.relative*math.Abs(w)+c.floor {
				t.Errorf("%s %s: %s is %q, table has %s = %g", name, want["id"], c.column, got[c.column], c.reference, w)
			}
			compared++
		}
	}
	if compared != 796 {
		t.Errorf("%d values compared, want 796", compared)
	}
}

// Invented data: two pumps, one too weak for the valve behind it.
const twoPumps = networkHeader + `
fixed,base,,,,,,,,10,
pump,strong,base,a,,,,,1,6,
pump,weak,base,b,,,,,0,1,
pump,weak,,,,,,,0.5,0.8,
pump,weak,,,,,,,1,0.2,
check-valve,flap,b,a,,36,,4,,,
pipe,p1,a,base,10,27.3,0.045,9,,,
pipe,p2,c,a,2,27.3,0.045,0,,,closed
junction,a,,,,,,,0,,
junction,b,,,,,,,0,,
junction,c,,,,,,,0,,
`

func TestNetworkRemarks(t *testing.T) {
	in := table(t, twoPumps)
	rows, err := topics.Network(in, 4e-7)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(in) || strings.Join(rows[0], ",") != networkHeader+",flow [L/s],head-loss [m],remark" {
		t.Errorf("%d rows, header %v", len(rows), rows[0])
	}
	got := networkAnswer(rows)
	if c := got["flap"]; c["flow [L/s]"] != "0" || c["head-loss [m]"] != "" || !strings.Contains(c["remark"], "held shut") {
		t.Errorf("check valve: %v", c)
	}
	if c := got["p2"]; c["flow [L/s]"] != "0" || c["remark"] != "closed" {
		t.Errorf("closed pipe: %v", c)
	}
	if c := got["c"]; c["head [m]"] != "" || !strings.Contains(c["remark"], "cut off") {
		t.Errorf("junction behind the closed pipe: %v", c)
	}
	if c := got["b"]; c["head [m]"] != "11" { // the head of the pump at no flow
		t.Errorf("junction before the check valve: %v", c)
	}
	if in[9][9] != "" {
		t.Error("the rows given were changed")
	}
	// The strong pump off: the weak one opens the valve.
	rows, err = topics.Network(table(t, strings.Replace(twoPumps, "1,6,", "1,6,closed", 1)), 4e-7)
	if err != nil {
		t.Fatal(err)
	}
	if q, err := strconv.ParseFloat(networkAnswer(rows)["flap"]["flow [L/s]"], 64); err != nil || q < 0.1 {
		t.Errorf("check valve: %g L/s, %v", q, err)
	}
	// More drawn than the curve has points for.
	rows, err = topics.Network(table(t, strings.Replace(twoPumps, "junction,a,,,,,,,0", "junction,a,,,,,,,9", 1)), 4e-7)
	if err != nil {
		t.Fatal(err)
	}
	if c := networkAnswer(rows)["strong"]; !strings.Contains(c["remark"], "extrapolated") {
		t.Errorf("pump beyond its curve: %v", c)
	}
}

func TestNetworkFaults(t *testing.T) {
	const plain = networkHeader + `
fixed,base,,,,,,,,10,
junction,end,,,,,,,1,,
pipe,p1,base,end,10,27.3,0.045,9,,,
`
	for _, c := range []struct{ name, old, new, want string }{
		{"unknown node", "base,end", "base,ende", "row 4, column to: pipe p1 names node ende"},
		{"no node", "base,end", ",end", "row 4, column from: pipe p1 has no node"},
		{"to itself", "base,end", "end,end", "row 4, column to: pipe p1 leads from node end to itself"},
		{"missing bore", "27.3", "", "row 4, column bore [mm]: pipe p1 has no bore"},
		{"bore of 0", "27.3", "0", "row 4, column bore [mm]: pipe p1 has bore 0"},
		{"missing loss", "0.045,9", "0.045,", "write 0 where it is none"},
		{"too rough", "0.045", "2", "row 4, column roughness [mm]: pipe p1 has roughness 2 mm; the friction law holds from 0 to 0.05 of the bore, 1.365 mm"},
		{"gain", "0.045,9", "0.045,-9", "row 4, column loss-coefficient [-]"},
		{"word for number", "27.3", "DN25", `row 4, column bore [mm]: pipe p1 has "DN25", which is not a number`},
		{"not a number", "27.3", "NaN", "row 4, column bore [mm]"},
		{"node twice", "junction,end", "junction,base", "row 3, column id: node base stands already in row 2"},
		{"link twice", "9,,,\n", "9,,,\npipe,p1,end,base,1,20,0,0,,,\n", "row 5, column id: link p1 stands already in row 4"},
		{"no fixed head", "fixed,base,,,,,,,,10", "junction,base,,,,,,,0,", "no row of kind fixed"},
		{"unconnected", "9,,,\n", "9,,,\njunction,far,,,,,,,0,,\n", "row 5, column id: junction far is not connected"},
		{"demand cut off", "9,,,\n", "9,,,closed\n", "row 3, column demand [L/s]: junction end has a demand, but closed links"},
		{"no demand", ",1,,", ",,,", "row 3, column demand [L/s]: junction end has no demand"},
		{"head of a junction", ",1,,", ",1,3,", "row 3, column head [m]: junction end has head 3, which this kind has no use for"},
		{"kind", "pipe,p1", "tube,p1", `row 4, column kind: "tube" is not a kind`},
		{"no id", "pipe,p1", "pipe,", "row 4, column id: a pipe without id"},
		{"state", "9,,,\n", "9,,,shut\n", `row 4, column state: pipe p1 has state "shut"`},
		{"unit", "bore [mm]", "bore [m]", `row 1, column "bore [m]": the header must read bore [mm]`},
		{"column", "bore [mm]", "width [mm]", `row 1, column "width [mm]": not a column`},
		{"column gone", "bore [mm],", "", "row 1: column bore [mm] is missing"},
		{"column twice", "state", "bore [mm]", "row 1, column bore [mm]: stands there twice"},
		{"rising pump", "9,,,\n", "9,,,\npump,u,base,end,,,,,0,3,\npump,u,,,,,,,1,4,\n", "row 5, column head [m]: pump u is refused"},
		{"pump elsewhere", "9,,,\n", "9,,,\npump,u,base,end,,,,,0,3,\npump,u,end,,,,,,1,2,\n", "row 6, column from: pump u has"},
		{"too much", ",1,,", ",100000,,", "row 4, column bore [mm]: the Reynolds number in pipe p1"},
		{"long row", "9,,,\n", "9,,,,,\n", "row 4 has 13 cells, the header 11"},
	} {
		text := strings.Replace(plain, c.old, c.new, 1)
		if text == plain {
			t.Fatalf("%s: nothing replaced", c.name)
		}
		rows, err := topics.Network(table(t, text), 4e-7)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error is %v, want %q", c.name, err, c.want)
		}
		if rows != nil {
			t.Errorf("%s: rows beside an error", c.name)
		}
	}
	if _, err := topics.Network(table(t, plain), 4e-7); err != nil {
		t.Errorf("the plain table: %v", err)
	}
	if _, err := topics.Network(nil, 4e-7); err == nil {
		t.Error("no table is taken")
	}
}

// Columns may stand in any order, a row may end early, blank rows are skipped.
func TestNetworkShapeOfTheTable(t *testing.T) {
	rows, err := topics.Network([][]string{
		{"\ufeffid", "kind", "head [m]", "demand[L/s]", "to", "from", "loss-coefficient", "roughness [mm]", "bore [mm]", " length [m] "},
		{"end", "junction", "", "0.5"},
		{"", ""},
		{"base", "fixed", "10"},
		{"p1", "pipe", "", "", "end", "base", "1", "0.045", "27.3", "5"},
	}, 4e-7)
	if err != nil {
		t.Fatal(err)
	}
	if got := rows[4][10]; got != "0.5" {
		t.Errorf("flow is %s L/s", got)
	}
}
