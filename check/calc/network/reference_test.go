package network_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/tundish/check/calc/network"
)

const referenceDir = "../../../testdata/reference/"

// inp is a network read from one of the reference input files.
type inp struct {
	name   string
	solver *network.Solver
	nodes  map[string]network.Node
	links  map[string]network.Link
}

// readInp reads the sections that the reference networks use.
func readInp(tb testing.TB, name string, viscosity float64) inp {
	tb.Helper()
	text, err := os.ReadFile(referenceDir + "inp/" + name + ".inp")
	if err != nil {
		tb.Fatal(err)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			tb.Fatalf("%s: %v", name, err)
		}
		return v
	}
	solver, err := network.New(viscosity)
	if err != nil {
		tb.Fatal(err)
	}
	net := inp{name, solver, map[string]network.Node{}, map[string]network.Link{}}
	curves := map[string]network.Point{}
	lines := map[string][][]string{}
	section := ""
	for _, line := range strings.Split(string(text), "\n") {
		line, _, _ = strings.Cut(strings.TrimSpace(line), ";")
		switch {
		case line == "":
		case line[0] == '[':
			section = line
		default:
			lines[section] = append(lines[section], strings.Fields(line))
		}
	}
	must := func(err error) {
		if err != nil {
			tb.Fatalf("%s: %v", name, err)
		}
	}
	for _, f := range lines["[JUNCTIONS]"] {
		net.nodes[f[0]], err = solver.AddJunction(number(f[2]) / 1000)
		must(err)
	}
	for _, f := range lines["[RESERVOIRS]"] {
		net.nodes[f[0]], err = solver.AddFixed(number(f[1]))
		must(err)
	}
	for _, f := range lines["[PIPES]"] {
		net.links[f[0]], err = solver.AddPipe(net.nodes[f[1]], net.nodes[f[2]], network.Pipe{
			Length: number(f[3]), Bore: number(f[4]) / 1000, Roughness: number(f[5]) / 1000, Loss: number(f[6]),
		})
		must(err)
	}
	for _, f := range lines["[CURVES]"] {
		curves[f[0]] = network.Point{Flow: number(f[1]) / 1000, Head: number(f[2])}
	}
	for _, f := range lines["[PUMPS]"] {
		net.links[f[0]], err = solver.AddPump(net.nodes[f[1]], net.nodes[f[2]], []network.Point{curves[f[4]]}, true)
		must(err)
	}
	for _, f := range lines["[STATUS]"] {
		if f[1] != "Closed" {
			tb.Fatalf("%s: status %s", name, f[1])
		}
		solver.SetOpen(net.links[f[0]], false)
	}
	return net
}

// referenceRows reads network.csv by net.
func referenceRows(tb testing.TB) (names []string, rows map[string][]map[string]string) {
	tb.Helper()
	file, err := os.Open(referenceDir + "network.csv")
	if err != nil {
		tb.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	rows = map[string][]map[string]string{}
	for _, record := range all[1:] {
		row := map[string]string{}
		for i, cell := range record {
			row[all[0][i]] = cell
		}
		if rows[row["net"]] == nil {
			names = append(names, row["net"])
		}
		rows[row["net"]] = append(rows[row["net"]], row)
	}
	return names, rows
}

// near compares a result with a cell of the table; an empty cell is skipped.
// floor is the absolute error allowed where the value is about 0.
func near(t *testing.T, what string, got float64, cell string, relative, floor float64) int {
	t.Helper()
	if cell == "" {
		return 0
	}
	want, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(got-want) <= relative*math.Abs(want)+floor) {
		t.Errorf("%s: got %.10g, table has %s", what, got, cell)
	}
	return 1
}

// Reference: testdata/reference/network.csv. The columns named colebrook come
// from an independent solver with the same friction law, those named epanet
// from another program with an approximate friction law and g 9.81456.
func TestReferenceNetworks(t *testing.T) {
	names, rows := referenceRows(t)
	if len(names) != 9 {
		t.Fatalf("%d networks in the table, want 9", len(names))
	}
	compared := 0
	for _, name := range names {
		viscosity, err := strconv.ParseFloat(rows[name][0]["nu_m2_s"], 64)
		if err != nil {
			t.Fatal(err)
		}
		net := readInp(t, name, viscosity)
		if err := net.solver.Solve(); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		t.Logf("%s: %d steps", name, net.solver.Steps())
		for _, row := range rows[name] {
			what := name + " " + row["id"]
			if n, ok := net.nodes[row["id"]]; ok {
				got := net.solver.Node(n)
				if !got.Known {
					t.Errorf("%s: head is not known", what)
				}
				compared += near(t, what+" head", got.Head, row["head_colebrook_m"], 1e-6, 1e-7)
				compared += near(t, what+" head, other program", got.Head, row["head_epanet_m"], 7e-3, 0)
				continue
			}
			l, ok := net.links[row["id"]]
			if !ok {
				t.Fatalf("%s is not in the input file", what)
			}
			got := net.solver.Link(l)
			if got.Open == (row["kind"] == "pump_off") {
				t.Errorf("%s: open is %v", what, got.Open)
			}
			compared += near(t, what+" flow", got.Flow*1000, row["Q_colebrook_Lps"], 1e-6, 1e-9)
			compared += near(t, what+" loss", got.Loss, row["headloss_colebrook_m"], 1e-6, 1e-9)
			compared += near(t, what+" flow, other program", got.Flow*1000, row["Q_epanet_Lps"], 7e-4, 1e-6)
			compared += near(t, what+" loss, other program", got.Loss, row["headloss_epanet_m"], 7e-3, 1e-8)
		}
	}
	if compared != 796 { // every filled cell of the table
		t.Errorf("%d values compared, want 796", compared)
	}
}
