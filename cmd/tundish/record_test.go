package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check/report"
)

// recordFaults are small edits of the complete record of the examples; each must
// be found by its rule and by no other.
var recordFaults = []struct{ rule, old, new string }{
	{"reading-missing", "  low-fire        co2 8.7 % o2 5.4 % co 15 ppm flue 44 degC gas-rate 2.11 m3/h inlet 20.9 mbar air 21 degC air-o2 20.9 %\n", ""},
	{"reading-missing", "co2 9.1 % o2 4.7 % co 58 ppm flue", "co2 9.1 % o2 4.7 % flue"},
	{"co-ratio-high", "co 15 ppm", "co 440 ppm"},
	{"co-high", "co 58 ppm", "co 130 ppm"},
	{"co2-outside", "co2 9.1 % o2 4.7 % co 58 ppm", "co2 9.6 % o2 3.8 % co 58 ppm"},
	{"reading-impossible", "co2 9.1 % o2 4.7 % co 58 ppm", "co2 40 % o2 4.7 % co 58 ppm"},
	{"reading-impossible", "co2 9.1 % o2 4.7 % co 58 ppm", "co2 9.1 % o2 7.0 % co 58 ppm"},
	{"serial-twice", "W100-26-04114", "W100-26-04107"},
	{"unit-not-commissioned", `commissioned U8 serial "W100-26-04156" 2026-06-16 by E1 with An-1 {`, ""},
	{"unit-commissioned-twice", "commissioned U8 serial", "commissioned U7 serial"},
	{"unknown-name", "commissioned U8 serial", "commissioned U9 serial"},
	{"engineer-not-registered", "2026-06-15 by E1 with An-1 {", "2026-06-15 by F1 with An-1 {"},
	{"calibration-expired", `"AN 7702" calibrated 2026-01-12`, `"AN 7702" calibrated 2025-01-12`},
	{"calibration-expired", `"GG 0451" calibrated 2025-11-03`, `"GG 0451" calibrated 2026-06-20`},
	{"inlet-under-design", "  inlet U8        20.2 mbar", "  inlet U8        18.4 mbar"},
	{"inlet-outside", "inlet 20.6 mbar static 21.0 mbar", "inlet 17.0 mbar static 21.0 mbar"},
	{"gas-rate-off", "gas-rate 10.52 m3/h", "gas-rate 9.4 m3/h"},
	{"meter-rate-off", "meter           84.2 m3/h", "meter           77.0 m3/h"},
	{"water-rise-off", "return 55.1 degC", "return 64.0 degC"},
	{"water-rise-off", "flow 75 degC return 55.1 degC", "flow 55 degC return 75.1 degC"},
	{"water-flow-off", "rate 4.45 m3/h", "rate 3.1 m3/h"},
	{"flue-hotter-than-design", "co 58 ppm flue 62 degC", "co 58 ppm flue 92 degC"},
	{"damper-not-proved", "  damper          closes-when-stopped\n", ""},
	{"damper-not-proved", "damper          closes-when-stopped", "damper          sticks"},
	{"safety-chain-unproved", "safety-chain    limiter, low-water, ", "safety-chain    limiter, "},
	{"flue-leaks-into-air", "air-o2 20.9 %", "air-o2 20.1 %"},
	{"room-co-high", "room-co         0 ppm", "room-co         18 ppm"},
	{"setting-off", "precharge Ves-P 1.3 bar", "precharge Ves-P 0.9 bar"},
	{"setting-off", "fill            1.8 bar secondary", "fill            2.0 bar secondary"},
	{"setting-off", "set-point       75 degC", "set-point       82 degC"},
	{"content-off", "system-volume   6790 l", "system-volume   5200 l"},
	{"test-not-passed", "20 mbar 20 min fell 0 mbar with", "20 mbar 20 min fell 1.4 mbar with"},
	{"test-not-passed", "2026-05-18 passed relief-isolated", "2026-05-18 failed relief-isolated"},
	{"test-under-design", "water 6 bar 2 h", "water 4 bar 2 h"},
	{"test-under-design", "air 20 mbar 20 min", "air 20 mbar 5 min"},
	{"test-under-design", "purge gas-run   1.3 m3", "purge gas-run   0.4 m3"},
	{"test-under-design", "flushing        6400 l secondary", "flushing        2400 l secondary"},
	{"test-missing", "  flushing        6400 l secondary by F1 2026-05-20 passed\n", ""},
	{"strength-test-over-rating", "water 6 bar 2 h", "water 9 bar 2 h"},
	{"test-missing", "  tightness gas-run air 20 mbar 20 min fell 0 mbar with Ga-1 by E1 2026-05-26 passed\n", ""},
	{"work-out-of-order", "by E1 2026-06-08 passed", "by E1 2026-06-16 passed"},
	{"date-impossible", "by F1 2026-05-20 passed", "by F1 2025-05-20 passed"},
	{"date-impossible", "signed K1       2026-06-22", "signed K1       2029-06-22"},
	{"sample-unfit", "acidity 8.6 pH", "acidity 6.9 pH"},
	{"sample-unfit", "hardness 0.03 mmol/l", "hardness 1.2 mmol/l"},
	{"handover-incomplete", "operating-manual, log-book, ", "operating-manual, "},
	{"handover-incomplete", "  signed K1       2026-06-22\n", ""},
	{"record-of-other-revision", "revision R5", "revision R4"},
	{"analyzer-missing", "2026-06-15 by E1 with An-1 {", "2026-06-15 by E1 {"},
	{"analyzer-missing", "2026-06-15 by E1 with An-1 {", "2026-06-15 by E1 with Ga-1 {"},
	{"heat-balance-off", "return 55.1 degC rate 4.45 m3/h", "return 53.2 degC rate 4.85 m3/h"},
	{"reading-incomplete", " gas-rate 10.52 m3/h", ""},
	{"reading-incomplete", " rate 4.45 m3/h", ""},
	{"reading-impossible", "flue 62 degC gas-rate 10.52", "flue 12 degC gas-rate 10.52"},
	{"inlet-under-design", "inlet 20.6 mbar static 21.0 mbar", "inlet 18.5 mbar static 21.0 mbar"},
	{"signed-before-commissioned", "signed K1       2026-06-22", "signed K1       2026-06-12"},
	{"date-impossible", "log 2028-06-12", "log 2028-12-12"},
	{"calibration-expired", `"AN 8015" calibrated 2028-02-07`, `"AN 8015" calibrated 2027-02-07`},
	{"log-incomplete", "  reading U5      low-fire co2 8.8 % co 21 ppm flue 45 degC inlet 20.9 mbar\n", ""},
	{"log-incomplete", "dampers, traps, strainers, combustion, relief, vessel", "traps, strainers, combustion, relief, vessel"},
	{"log-top-up-high", "top-up          120 l", "top-up          1200 l"},
	{"cold-pressure-drifts", "pressure        1.6 bar primary", "pressure        1.3 bar primary"},
	{"reading-drifts", "reading U3      high-fire co2 9.2 % co 71 ppm flue 63 degC inlet 20.5 mbar", "reading U3      high-fire co2 9.2 % co 71 ppm flue 74 degC inlet 20.5 mbar"},
	{"co-ratio-high", "reading U3      high-fire co2 9.2 % co 71 ppm flue 63 degC inlet 20.5 mbar", "reading U3      high-fire co2 9.2 % co 790 ppm flue 63 degC inlet 20.5 mbar"},
	{"unknown-name", "reading U8      high-fire", "reading U9      high-fire"},
	{"as-built-breaks-rule", "changed G1      length 22.4 m", "changed Head-F  falls 1 deg"},
	{"as-built-breaks-rule", "changed G1      length 22.4 m", "changed G1      size DN65"},
	{"register-number-missing", "instrument An-1 analyser", "person E2 role gas-engineer\n\ninstrument An-1 analyser"},
	{"setting-missing", "  precharge Ves-S 1.5 bar\n", ""},
	{"setting-missing", "  room-co         0 ppm\n", ""},
	{"setting-missing", "water-sample 2026-06-15 by E1 acidity 8.6 pH conductivity 42 uS/cm hardness 0.03 mmol/l primary\n", ""},
	{"step-out-of-order", "  step            supports done 2026-04-21 by F1\n", ""},
	{"step-out-of-order", "units done 2026-04-24", "units done 2026-04-18"},
	{"step-out-of-order", "frame done 2026-04-20", "frame not-started"},
	{"step-out-of-order", "dampers done 2026-05-07", "dampers part-done 2026-05-07 U1..U7"},
	{"step-out-of-order", "main-pipes done 2026-05-12", "main-pipes done 2026-05-22"},
	{"step-not-in-plant", "  step            wiring done", "  step            gas-strength-test done 2026-05-21 by E1\n  step            wiring done"},
	{"simultaneous-missing", "simultaneous all-full 2026-06-17 by E1 {", ""},
}

// A complete record passes; each fault in it is found, and nothing else.
func TestRecord(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"back-to-back.plant", "catalogue.plant"} {
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		write(t, dir, name, string(b))
	}
	b, err := os.ReadFile("../../examples/back-to-back-record.plant")
	if err != nil {
		t.Fatal(err)
	}
	sound := string(b)
	lint := func(text string) *report.Document {
		p := write(t, dir, "record.plant", text)
		out, errs, _ := tundish(t, "", "lint", "--today", "2028-07-01", "--format", "json", p)
		var d report.Document
		if err := json.Unmarshal([]byte(out), &d); err != nil {
			t.Fatalf("%v: %s", err, errs)
		}
		return &d
	}
	if d := lint(sound); len(d.Findings) > 0 || len(d.NotEvaluated) > 0 {
		t.Fatalf("the complete record: %+v %+v", d.Findings, d.NotEvaluated)
	}
	for _, f := range recordFaults {
		name := f.rule + " " + strings.TrimSpace(f.new)
		if !strings.Contains(sound, f.old) {
			t.Errorf("%s: the record lacks %q", name, f.old)
			continue
		}
		text := strings.Replace(sound, f.old, f.new, 1)
		if f.new == "" && strings.HasSuffix(f.old, "{") { // the whole block
			at := strings.Index(sound, f.old)
			end := at + strings.Index(sound[at:], "\n}\n") + 3
			text = sound[:at] + sound[end:]
		}
		found := 0
		for _, g := range lint(text).Findings {
			if g.Rule == f.rule {
				found++
				continue
			}
			t.Errorf("%s: also %s: %s", name, g.Rule, g.Message)
		}
		if found == 0 {
			t.Errorf("%s: not found", name)
		}
	}
}

// A record whose plant is not to be had says so, and judges nothing by it.
func TestRecordWithoutPlant(t *testing.T) {
	dir := t.TempDir()
	b, err := os.ReadFile("../../examples/back-to-back-record.plant")
	if err != nil {
		t.Fatal(err)
	}
	p := write(t, dir, "record.plant", string(b))
	out, _, code := tundish(t, "", "lint", "--today", "2028-07-01", "--format", "json", p)
	var d report.Document
	if err := json.Unmarshal([]byte(out), &d); err != nil || code != exitFindings {
		t.Fatalf("exit %d, %v", code, err)
	}
	missing := false
	for _, f := range d.Findings {
		missing = missing || f.Rule == "file-missing"
		if f.Rule == "inlet-under-design" || f.Rule == "gas-rate-off" || f.Rule == "internal-fault" {
			t.Errorf("judged without the plant: %s", f.Message)
		}
	}
	if !missing {
		t.Errorf("the missing plant is not told: %+v", d.Findings)
	}
}

// A folder is read with its records, each together with its plant; without a
// date what depends on it is said to be open.
func TestRecordInFolder(t *testing.T) {
	const record = "back-to-back-record.plant"
	out, errs, _ := tundish(t, "", "lint", "--format", "json", "--today", "2028-01-01", "examples")
	var d report.Document
	if err := json.Unmarshal([]byte(out), &d); err != nil {
		t.Fatalf("%v: %s", err, errs)
	}
	of := map[string]int{}
	for _, f := range d.Findings {
		if strings.HasSuffix(f.File, record) {
			of[f.Rule]++
		}
	}
	if len(of) != 1 || of["date-impossible"] != 1 { // the second log is later than that day
		t.Errorf("findings on the record in the folder: %v", of)
	}
	out, _, code := tundish(t, "", "lint", "--fail-on", "unknown", "examples/"+record)
	if code != exitFindings || !strings.Contains(out, "--today") {
		t.Errorf("without a date: exit %d\n%s", code, out)
	}
}

// A record that refers to itself, to another record in a circle, or to a
// catalogue says so and does not hang.
func TestRecordOfNoPlant(t *testing.T) {
	dir := t.TempDir()
	head := "record \"Test, invented\" issue 2026-01-01\nof-plant "
	write(t, dir, "a.plant", head+"\"b.plant\" revision R1\n")
	write(t, dir, "b.plant", head+"\"a.plant\" revision R1\n")
	write(t, dir, "c.plant", "catalogue \"Test, invented\" issue 2026-01-01\n")
	write(t, dir, "of-c.plant", head+"\"c.plant\" revision R1\ncommissioned U1 serial \"S\" 2026-02-02 by E1 {\n}\n")
	own := write(t, dir, "own.plant", head+"\"own.plant\" revision R1\n")
	for _, p := range []string{own, filepath.Join(dir, "a.plant"), filepath.Join(dir, "of-c.plant")} {
		out, _, code := tundish(t, "", "lint", p)
		if code != exitFindings || !strings.Contains(out, "not-a-plant") {
			t.Errorf("%s: exit %d\n%s", p, code, out)
		}
	}
}
