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

// ask runs a topic with defaults filled in and checks the answer against the
// declaration.
func ask(tb testing.TB, name string, in topics.Values) (topics.Values, error) {
	tb.Helper()
	topic, ok := topics.Find(name)
	if !ok {
		tb.Fatalf("no topic %s", name)
	}
	full := topics.Values{}
	for _, d := range topic.Inputs {
		v, given := in[d.Name]
		switch {
		case given:
			full[d.Name] = v
		case d.Default != nil:
			full[d.Name] = *d.Default
		default:
			tb.Fatalf("%s: %s is not given", name, d.Name)
		}
	}
	for given := range in {
		if _, ok := full[given]; !ok {
			tb.Fatalf("%s takes no %s", name, given)
		}
	}
	out, err := topic.Run(full)
	if err == nil {
		if len(out) != len(topic.Outputs) {
			tb.Errorf("%s: %d results, %d declared", name, len(out), len(topic.Outputs))
		}
		for _, d := range topic.Outputs {
			if v, ok := out[d.Name]; !ok || math.IsNaN(v) || math.IsInf(v, 0) {
				tb.Errorf("%s: %s is %g", name, d.Name, v)
			}
		}
	}
	return out, err
}

func close(tb testing.TB, what string, got, want, tolerance float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		tb.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tolerance)
	}
}

// eachRow calls do for every row of a reference table, with a reader of its
// numbers by column.
func eachRow(tb testing.TB, file string, do func(cell func(string) string, number func(string) float64)) {
	tb.Helper()
	text, err := os.ReadFile("../../testdata/reference/" + file)
	if err != nil {
		tb.Fatal(err)
	}
	var kept strings.Builder
	for _, line := range strings.SplitAfter(string(text), "\n") {
		if !strings.HasPrefix(line, "#") {
			kept.WriteString(line)
		}
	}
	records, err := csv.NewReader(strings.NewReader(kept.String())).ReadAll()
	if err != nil || len(records) < 20 {
		tb.Fatalf("%s: %d records, %v", file, len(records), err)
	}
	for _, rec := range records[1:] {
		cell := func(name string) string {
			for i, column := range records[0] {
				if column == name {
					return rec[i]
				}
			}
			tb.Fatalf("%s has no column %s", file, name)
			return ""
		}
		do(cell, func(name string) float64 {
			v, err := strconv.ParseFloat(cell(name), 64)
			if err != nil {
				tb.Fatal(err)
			}
			return v
		})
	}
}

// TestGasFlueTables compares the topics of fixed names with the reference
// tables gas_drop, flue_draught and flue_friction, 1e-6.
func TestGasFlueTables(t *testing.T) {
	eachRow(t, "gas_drop.csv", func(_ func(string) string, number func(string) float64) {
		out, err := ask(t, "gas-loss", topics.Values{
			"relative-density": number("d"), "viscosity": number("mu_Pas"), "bore": number("id_mm"),
			"roughness": number("roughness_mm"), "length": number("L_m"),
			"inlet-pressure": number("p1_mbar_gauge"), "flow": number("Q_ref_m3_h"),
		})
		if err != nil {
			t.Fatal(err)
		}
		close(t, "gas velocity", out["velocity"], number("v1_m_s"), 1e-6)
		if re := number("Re"); re <= 2000 || re >= 4000 {
			close(t, "gas loss", out["loss"], number("dp_isothermal_Pa"), 1e-6)
		}
	})
	eachRow(t, "flue_draught.csv", func(_ func(string) string, number func(string) float64) {
		out, err := ask(t, "flue-draught", topics.Values{
			"height": number("H_m"), "flue-temperature": number("t_flue_degC"),
			"outside-temperature": number("t_amb_degC"), "altitude": number("alt_m"),
		})
		if err != nil {
			t.Fatal(err)
		}
		close(t, "draught", out["draught"], number("draught_air_Pa"), 1e-6)
	})
	eachRow(t, "flue_friction.csv", func(cell func(string) string, number func(string) float64) {
		out, err := ask(t, "flue-loss", topics.Values{
			"bore": number("D_mm"), "roughness": number("roughness_mm"), "temperature": number("t_degC"),
			"pressure": number("p_Pa"), "flow": number("m_g_s"),
		})
		if err != nil {
			t.Fatal(err)
		}
		close(t, "flue velocity", out["velocity"], number("v_m_s"), 1e-6)
		if cell("regime") != "transition" {
			close(t, "flue gradient", out["gradient"], number("dp_Pa_m"), 1e-6)
		}
	})
}

// TestGasAirTopics holds figures of worked/gas-flue-air.csv and hand figures,
// each named beside it.
func TestGasAirTopics(t *testing.T) {
	for _, c := range []struct {
		topic     string
		in        topics.Values
		name      string
		want, tol float64
	}{
		// Row "gas rate", 10 kW at 38.5 MJ/m3.
		{"gas-rate", topics.Values{"heat-input": 10, "calorific-value": 38.5}, "flow", 0.936, 2e-3},
		// By hand: 3.6 x 400/34.02.
		{"gas-rate", topics.Values{"heat-input": 100, "calorific-value": 34.02, "units": 4}, "flow", 42.33, 2e-4},
		// Row "plant-room vent, room-sealed".
		{"ventilation", topics.Values{"net-input": 400}, "low-opening", 800, 1e-9},
		{"ventilation", topics.Values{"net-input": 400, "open-flued": 1, "summer-use": 80}, "low-opening", 2400, 1e-9},
		{"ventilation", topics.Values{"net-input": 400, "enclosure": 1}, "high-opening", 2000, 1e-9},
		{"ventilation", topics.Values{"net-input": 400, "open-flued": 1, "enclosure": 1}, "low-opening", 4000, 1e-9},
		// Row "mechanical vent extract".
		{"ventilation", topics.Values{"net-input": 400}, "fan-extract", 500, 1e-9},
		// By hand: 54.6 degC for methane at 9 %, 51.0 for propane at 11 %.
		{"dew-point", topics.Values{"co2": 9}, "dew-point", 54.6, 1e-3},
		{"dew-point", topics.Values{"co2": 11, "propane": 1}, "dew-point", 51.0, 1e-3},
		// By hand: 0.1616 kg/kWh net.
		{"condensate", topics.Values{"net-input": 400, "flue-temperature": 40, "co2": 9}, "most", 64.6, 1e-3},
		{"condensate", topics.Values{"net-input": 400, "flue-temperature": 60, "co2": 9}, "rate", 0, 0},
		// Row "IFGC schedule 40 capacity", 2 in, 60 ft, 3 in w.c.
		{"us-gas-capacity", topics.Values{"bore": 2.067, "length": 60, "drop": 3}, "capacity", 4020, 0.01},
		// Row "specific gravity multiplier", 0.63.
		{"us-gas-capacity", topics.Values{"bore": 2.067, "length": 60, "drop": 3, "specific-gravity": 1.5}, "capacity", 4020 * 0.63, 0.015},
	} {
		out, err := ask(t, c.topic, c.in)
		if err != nil {
			t.Errorf("%s: %v", c.topic, err)
			continue
		}
		close(t, c.topic+" "+c.name, out[c.name], c.want, c.tol)
	}
	high, err := ask(t, "us-gas-capacity-high", topics.Values{"bore": 1.049, "length": 100, "inlet-pressure": 5, "outlet-pressure": 1.5})
	if err != nil || high["capacity"] < 2000 || high["capacity"] > 6000 {
		t.Errorf("high pressure: %v %v", high, err)
	}
}

// TestGasFlueAirRanges: an input outside its range is an error that names it.
func TestGasFlueAirRanges(t *testing.T) {
	good := map[string]topics.Values{
		"gas-loss": {
			"relative-density": 0.6, "viscosity": 1.1e-5, "bore": 50, "roughness": 0.045, "length": 10,
			"inlet-pressure": 21, "flow": 20,
		},
		"gas-rate":             {"heat-input": 10, "calorific-value": 38, "units": 1},
		"flue-draught":         {"height": 10, "flue-temperature": 60, "outside-temperature": 10, "altitude": 0},
		"flue-loss":            {"bore": 200, "roughness": 1, "temperature": 60, "pressure": 101325, "flow": 100},
		"ventilation":          {"net-input": 400, "open-flued": 0, "enclosure": 0, "summer-use": 0},
		"dew-point":            {"co2": 9, "propane": 0, "altitude": 0},
		"condensate":           {"net-input": 400, "flue-temperature": 40, "co2": 9, "propane": 0, "altitude": 0},
		"us-gas-capacity":      {"bore": 2, "length": 60, "drop": 0.5, "specific-gravity": 0.6},
		"us-gas-capacity-high": {"bore": 2, "length": 60, "inlet-pressure": 5, "outlet-pressure": 2},
	}
	for name, in := range good {
		if _, err := ask(t, name, in); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for input := range in {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9} {
				wrong := topics.Values{}
				for k, v := range in {
					wrong[k] = v
				}
				wrong[input] = bad
				if _, err := ask(t, name, wrong); err == nil || !strings.Contains(err.Error(), input+" is ") {
					t.Errorf("%s: %s = %g: %v", name, input, bad, err)
				}
			}
		}
	}
}
