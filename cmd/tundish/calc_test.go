package main

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// reference reads a table of testdata/reference by column name.
func reference(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(root + "/testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, c := range row {
			m[rows[0][i]] = c
		}
		out = append(out, m)
	}
	return out
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// compareTopic answers a table through the command and compares result columns
// with reference columns.
func compareTopic(t *testing.T, topic string, inputs map[string]string, results map[string]string, tolerance map[string]float64, rows []map[string]string) {
	t.Helper()
	var header, keys []string
	for col, cell := range inputs {
		header, keys = append(header, cell), append(keys, col)
	}
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Write(header)
	for _, r := range rows {
		var row []string
		for _, k := range keys {
			row = append(row, r[k])
		}
		w.Write(row)
	}
	w.Flush()
	out, errs, code := tundish(t, b.String(), "calc", topic, "--csv", "-")
	if code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	got, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(got)-1 != len(rows) {
		t.Fatalf("%d rows in, %d out", len(rows), len(got)-1)
	}
	for col, cell := range results {
		at := -1
		for i, h := range got[0] {
			if h == cell {
				at = i
			}
		}
		if at < 0 {
			t.Fatalf("no column %q in %v", cell, got[0])
		}
		for i, r := range rows {
			want, have := num(t, r[col]), num(t, got[i+1][at])
			if math.Abs(have-want) > tolerance[col]*math.Max(math.Abs(want), 1e-12) {
				t.Errorf("row %d: %s = %.12g, the reference has %.12g", i+1, cell, have, want)
			}
		}
	}
}

func TestCalcWaterProperties(t *testing.T) {
	compareTopic(t, "water-properties", map[string]string{"t_degC": "temperature [degC]", "p_bar_abs": "pressure [bar]"},
		map[string]string{"rho_kg_m3": "density [kg/m3]", "mu_Pas": "viscosity [Pa.s]", "cp_kJ_kgK": "specific-heat [kJ/kg.K]", "psat_kPa": "vapour-pressure [kPa]"},
		map[string]float64{"rho_kg_m3": 1e-6, "mu_Pas": 1e-6, "cp_kJ_kgK": 1e-6, "psat_kPa": 1e-6}, reference(t, "water_properties.csv"))
}

func TestCalcFriction(t *testing.T) {
	var laminar, turbulent []map[string]string
	for _, r := range reference(t, "friction_factor.csv") {
		switch re := num(t, r["Re"]); {
		case re <= 2000:
			laminar = append(laminar, r)
		case re >= 4000:
			turbulent = append(turbulent, r)
		}
	}
	in := map[string]string{"Re": "reynolds [-]", "eD": "relative-roughness [-]"}
	compareTopic(t, "friction-factor", in, map[string]string{"f_laminar": "friction-factor [-]"}, map[string]float64{"f_laminar": 1e-9}, laminar)
	compareTopic(t, "friction-factor", in, map[string]string{"f_colebrook_exact": "friction-factor [-]"}, map[string]float64{"f_colebrook_exact": 1e-9}, turbulent)
}

func TestCalcWaterLoss(t *testing.T) {
	var rows []map[string]string
	for _, r := range reference(t, "pipe_drop_water.csv") {
		if r["regime"] != "transition" {
			rows = append(rows, r)
		}
	}
	compareTopic(t, "water-loss", map[string]string{"id_mm": "bore [mm]", "roughness_mm": "roughness [mm]", "m_kg_s": "flow [kg/s]", "t_degC": "temperature [degC]"},
		map[string]string{"v_m_s": "velocity [m/s]", "dp_Pa_m": "gradient [Pa/m]"}, map[string]float64{"v_m_s": 1e-5, "dp_Pa_m": 1e-5}, rows)
}

func TestCalcGasLoss(t *testing.T) {
	var rows []map[string]string
	for _, r := range reference(t, "gas_drop.csv") {
		if re := num(t, r["Re"]); re < 2000 || re > 4000 {
			rows = append(rows, r)
		}
	}
	compareTopic(t, "gas-loss", map[string]string{"d": "relative-density [-]", "mu_Pas": "viscosity [Pa.s]", "id_mm": "bore [mm]", "roughness_mm": "roughness [mm]", "L_m": "length [m]", "p1_mbar_gauge": "inlet-pressure [mbar]", "Q_ref_m3_h": "flow [m3/h]"},
		map[string]string{"dp_isothermal_Pa": "loss [Pa]", "v1_m_s": "velocity [m/s]"}, map[string]float64{"dp_isothermal_Pa": 1e-6, "v1_m_s": 1e-6}, rows)
}

func TestCalcFlue(t *testing.T) {
	compareTopic(t, "flue-draught", map[string]string{"H_m": "height [m]", "t_flue_degC": "flue-temperature [degC]", "t_amb_degC": "outside-temperature [degC]", "alt_m": "altitude [m]"},
		map[string]string{"draught_air_Pa": "draught [Pa]"}, map[string]float64{"draught_air_Pa": 1e-6}, reference(t, "flue_draught.csv"))
	var rows []map[string]string
	for _, r := range reference(t, "flue_friction.csv") {
		if r["regime"] != "transition" {
			rows = append(rows, r)
		}
	}
	compareTopic(t, "flue-loss", map[string]string{"D_mm": "bore [mm]", "roughness_mm": "roughness [mm]", "t_degC": "temperature [degC]", "p_Pa": "pressure [Pa]", "m_g_s": "flow [g/s]"},
		map[string]string{"v_m_s": "velocity [m/s]", "dp_Pa_m": "gradient [Pa/m]"}, map[string]float64{"v_m_s": 1e-6, "dp_Pa_m": 1e-6}, rows)
}

func TestCalcExchangerAndExpansion(t *testing.T) {
	compareTopic(t, "heat-exchanger", map[string]string{"m_h_kg_s": "hot-flow [kg/s]", "cp_h_kJ_kgK": "hot-specific-heat [kJ/kg.K]", "t_h_in": "hot-inlet [degC]", "m_c_kg_s": "cold-flow [kg/s]", "cp_c_kJ_kgK": "cold-specific-heat [kJ/kg.K]", "t_c_in": "cold-inlet [degC]", "UA_W_K": "conductance [W/K]"},
		map[string]string{"eff": "effectiveness [-]", "Q_kW": "duty [kW]", "t_h_out": "hot-outlet [degC]", "t_c_out": "cold-outlet [degC]", "LMTD_K": "lmtd [K]"},
		map[string]float64{"eff": 1e-9, "Q_kW": 1e-9, "t_h_out": 1e-9, "t_c_out": 1e-9, "LMTD_K": 1e-9}, reference(t, "hx.csv"))
	// 3e-5 of the volume is 0.3 % of the smallest expansion of the table.
	compareTopic(t, "expansion", map[string]string{"t_cold_degC": "cold-temperature [degC]", "t_hot_degC": "hot-temperature [degC]", "p_cold_bar_abs": "cold-pressure [bar]", "p_hot_bar_abs": "hot-pressure [bar]"},
		map[string]string{"e_cold": "expansion [-]"}, map[string]float64{"e_cold": 1e-5}, reference(t, "expansion.csv"))
}

// A network by hand: a single pipe, flow given, so the loss is that of the
// topic water-loss plus its loss coefficient. The reference networks are compared
// in check/topics.
func TestCalcNetwork(t *testing.T) {
	const in = "kind,id,from,to,length [m],bore [mm],roughness [mm],loss-coefficient [-],demand [L/s],head [m]\nfixed,S,,,,,,,,30\njunction,A,,,,,,,1.2,\npipe,P,S,A,20,41.9,0.045,1.5,,\n"
	out, errs, code := tundish(t, in, "calc", "water-network", "--csv", "-", "--temperature", "60", "--format", "json")
	var rows []map[string]any
	if err := json.Unmarshal([]byte(out), &rows); err != nil || code != exitClean {
		t.Fatalf("exit %d, %v: %s", code, err, errs)
	}
	// N1_tree, pipe P4 of testdata/reference/network.csv: 0.4820121579 m.
	for _, r := range rows {
		if r["id"] == "P" && math.Abs(r["head-loss [m]"].(float64)/0.4820121579-1) > 1e-4 {
			t.Errorf("head loss %v", r["head-loss [m]"])
		}
		if r["id"] == "A" && math.Abs(r["head [m]"].(float64)-(30-0.4820121579)) > 1e-4 {
			t.Errorf("head %v", r["head [m]"])
		}
	}
	if _, errs, code := tundish(t, strings.Replace(in, "S,A", "S,B", 1), "calc", "water-network", "--csv", "-"); code != exitUse || !strings.Contains(errs, "row 4") {
		t.Errorf("a pipe to nowhere: exit %d, %s", code, errs)
	}
}

// Reference: testdata/reference/units.csv, 1e-9; the therm of 4e-6 where the two
// sources of the table differ themselves.
func TestCalcConvert(t *testing.T) {
	for _, r := range reference(t, "units.csv") {
		want := r["gnu_value"]
		if want == "" {
			want = r["pint_value"]
		}
		out, errs, code := tundish(t, "", "calc", "convert", "--format", "json", "value="+r["value"], "from="+r["from"], "to="+r["to"])
		if code != exitClean {
			t.Errorf("%s %s to %s: %s", r["value"], r["from"], r["to"], errs)
			continue
		}
		var got struct {
			Result float64 `json:"result"`
		}
		if err := json.Unmarshal([]byte(out), &got); err != nil {
			t.Fatal(err)
		}
		tolerance := 1e-9
		if r["from"] == "therm" || r["to"] == "therm" {
			tolerance = 4e-6
		}
		if w := num(t, want); math.Abs(got.Result-w) > tolerance*math.Abs(w)+1e-12 {
			t.Errorf("%s %s is %.12g %s, the table has %s", r["value"], r["from"], got.Result, r["to"], want)
		}
	}
}

// Header units other than the topic's are converted; a bad row says why and
// the others are answered.
func TestCalcTable(t *testing.T) {
	out, _, code := tundish(t, "reynolds [-],relative-roughness [-],note\n1e5,0.0001,a\n-1,0,b\n", "calc", "friction-factor", "--csv", "-")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || code != exitFindings || len(rows) != 3 || rows[0][4] != "not computed" || rows[2][3] != "" || rows[2][4] == "" || rows[1][2] != "a" || rows[1][3] == "" {
		t.Errorf("exit %d, %v, %q", code, err, rows)
	}
	out, _, code = tundish(t, "bore [in],roughness [mm],flow [kg/h],temperature [degF]\n2,0.045,7200,158\n", "calc", "water-loss", "--csv", "-")
	rows, err = csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || code != exitClean || len(rows) != 2 {
		t.Fatalf("exit %d, %v, %q", code, err, rows)
	}
	direct, _, _ := tundish(t, "", "calc", "water-loss", "bore=50.8 mm", "roughness=0.045 mm", "flow=2 kg/s", "temperature=70 degC", "--format", "json")
	if !strings.Contains(direct, `"value": `+rows[1][4]) || !strings.Contains(direct, `"value": `+rows[1][5]) {
		t.Errorf("the table gives %s and %s, the words give %s", rows[1][4], rows[1][5], direct)
	}
}
