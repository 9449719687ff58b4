package main

import (
	"encoding/csv"
	"math"
	"os"
	"strings"
	"testing"
)

// pumpPoints reads the duty points of the pumps of a reference network from its
// input file: by pump the flow in L/s and the head in m.
func pumpPoints(t *testing.T, net string) map[string][2]string {
	t.Helper()
	b, err := os.ReadFile(root + "/testdata/reference/inp/" + net + ".inp")
	if err != nil {
		t.Fatal(err)
	}
	curves, out, section := map[string][2]string{}, map[string][2]string{}, ""
	for pass := range 2 {
		for line := range strings.Lines(string(b)) {
			f := strings.Fields(line)
			switch {
			case len(f) == 0 || f[0][0] == ';':
			case f[0][0] == '[':
				section = f[0]
			case section == "[CURVES]" && pass == 0:
				curves[f[0]] = [2]string{f[1], f[2]}
			case section == "[PUMPS]" && pass == 1:
				out[f[0]] = curves[f[4]]
			}
		}
	}
	return out
}

// The reference networks through the command: trees, loops, headers of four and
// eight units with direct and reverse return, and four units with pumps of which
// all or two run. Reference: testdata/reference/network.csv, flows, losses and
// heads 1e-4, against the independent solver 7e-4 in flow.
func TestCalcReferenceNetworks(t *testing.T) {
	nets := map[string][]map[string]string{}
	var names []string
	for _, r := range reference(t, "network.csv") {
		if nets[r["net"]] == nil {
			names = append(names, r["net"])
		}
		nets[r["net"]] = append(nets[r["net"]], r)
	}
	if len(names) != 9 {
		t.Fatalf("%d networks: %v", len(names), names)
	}
	compared := 0
	for _, name := range names {
		points := pumpPoints(t, name)
		var b strings.Builder
		w := csv.NewWriter(&b)
		w.Write([]string{"kind", "id", "from", "to", "length [m]", "bore [mm]", "roughness [mm]", "loss-coefficient [-]", "demand [L/s]", "head [m]", "state"})
		for _, r := range nets[name] {
			switch r["kind"] {
			case "pipe":
				w.Write([]string{"pipe", r["id"], r["node1"], r["node2"], r["L_m"], r["D_mm"], r["roughness_mm"], r["K"], "", "", ""})
			case "pump_on", "pump_off", "pump_closed":
				state := "open"
				if r["kind"] != "pump_on" {
					state = "closed"
				}
				p := points[r["id"]]
				w.Write([]string{"pump", r["id"], r["node1"], r["node2"], "", "", "", "", p[0], p[1], state})
			case "reservoir":
				w.Write([]string{"fixed", r["id"], "", "", "", "", "", "", "", r["head_epanet_m"], ""})
			case "node":
				w.Write([]string{"junction", r["id"], "", "", "", "", "", "", r["demand_Lps"], "", ""})
			default:
				t.Fatalf("%s: kind %q", name, r["kind"])
			}
		}
		w.Flush()
		out, errs, code := tundish(t, b.String(), "calc", "water-network", "--csv", "-", "--temperature", nets[name][0]["t_degC"])
		if code != exitClean {
			t.Fatalf("%s: exit %d: %s", name, code, errs)
		}
		rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if err != nil || len(rows) != len(nets[name])+1 {
			t.Fatalf("%s: %d rows, %v", name, len(rows), err)
		}
		at := map[string]int{}
		for i, h := range rows[0] {
			at[h] = i
		}
		for i, r := range nets[name] {
			for _, c := range []struct {
				column, reference string
				tolerance         float64
			}{
				{"flow [L/s]", "Q_colebrook_Lps", 1e-4},
				{"head-loss [m]", "headloss_colebrook_m", 1e-4},
				{"head [m]", "head_colebrook_m", 1e-4},
				{"flow [L/s]", "Q_epanet_Lps", 7e-4},
			} {
				if r[c.reference] == "" {
					continue
				}
				want, got := num(t, r[c.reference]), num(t, rows[i+1][at[c.column]])
				// What is about nothing (a pump that is off): 1e-6.
				if math.Abs(got-want) > c.tolerance*math.Abs(want)+1e-6 {
					t.Errorf("%s %s: %s %.8g, %s %.8g", name, r["id"], c.column, got, c.reference, want)
				}
				compared++
			}
		}
	}
	if compared < 500 {
		t.Errorf("only %d values compared", compared)
	}
}
