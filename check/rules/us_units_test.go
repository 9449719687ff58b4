package rules

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// What a plant in US units is told is in US units: the example, spoilt in one
// place at a time, brings no metric number but sizes that are metric by name.
func TestPlantsInUSUnitsAreToldInThem(t *testing.T) {
	raw, err := os.ReadFile("../../examples/us-units.plant")
	if err != nil {
		t.Fatal(err)
	}
	judge := newRandomPlants(t).judge
	metric := regexp.MustCompile(`\d (mm|cm|m|m2|cm2|m3|l|kg|degC|K|kW|Pa|kPa|mbar|bar|l/h|l/s|m3/h|m/s|mm/m|W/m|kN|mmol/l)\b`)
	for _, c := range []struct{ from, to, rule string }{
		{"seal 5 in", "seal 1 in", "trap-seal-too-small"},
		{"steel-40 4 in 60 ft", "steel-40 2 in 60 ft", "gas-drop-over-limit"},
		{"steel-40 5 in 6.5 ft upper", "steel-40 2 in 6.5 ft upper", "header-too-fast"},
		{"polypropylene DN300", "polypropylene DN150", "flue-push-too-weak"},
		{"polypropylene DN300", "polypropylene DN150", "flue-speed-high"},
		{"polypropylene DN300", "polypropylene DN150", "flue-pressure-over-class"},
		{"vessel Ves-A    80 gal", "vessel Ves-A    8 gal", "vessel-too-small"},
		{"rating 125 psi", "rating 40 psi", "relief-set-over-rating"},
		{"weakest         80 psi", "weakest         40 psi", "relief-set-over-rating"},
		{"3/4 in 50 psi unit-side", "3/4 in 120 psi unit-side", "relief-set-over-rating"},
		{"high 45 psi stops-firing", "high 50 psi stops-firing", "cut-outs-out-of-order"},
		{"precharge 15 psi", "precharge 3 psi", "precharge-too-low"},
		{"precharge 15 psi", "precharge 48 psi", "precharge-leaves-no-room"},
		{"fill            18 psi", "fill            9 psi", "fill-pressure-unfit"},
		{"Neut 22 gal/h", "Neut 2 gal/h", "neutraliser-too-small"},
		{"falls 9/16 in/ft", "falls 1/16 in/ft", "drain-falls-too-little"},
		{"polypropylene 2 in 14 ft", "polypropylene 1/2 in 14 ft", "drain-too-small"},
		{"2 in 0.27", "1/4 in 0.27", "insulation-too-thin"},
		{"420 in2 free", "42 in2 free", "opening-too-small"},
		{"limiter         200 degF", "limiter         260 degF", "limiter-missing"},
		{"load Heating    900 MBH", "load Heating    1900 MBH", "units-too-small"},
		{"from Meter to Shut-1 bends 4 off sleeves 1 off crossings 1 off support 10 ft", "from Meter to Shut-1 bends 4 off sleeves 1 off crossings 1 off support 30 ft", "gas-supports-far"},
		{"hardness 0.3 gr/gal", "hardness 30 gr/gal", "fill-water-too-hard"},
		{"allows 150 psf", "allows 15 psf", "floor-overloaded"},
	} {
		text := strings.Replace(string(raw), c.from, c.to, -1)
		if text == string(raw) {
			t.Errorf("the example has no %q", c.from)
			continue
		}
		rep := judge(text)
		found := false
		for _, x := range rep.Findings {
			found = found || x.Rule == c.rule
			texts := []string{x.Message, x.Found, x.Limit, x.Mend}
			for _, r := range x.Related {
				texts = append(texts, r.Message)
			}
			for _, fix := range x.Fixes {
				texts = append(texts, fix.Title)
			}
			for _, s := range texts {
				if m := metric.FindString(s); m != "" {
					t.Errorf("%s: %q speaks of %q", x.Rule, s, m)
				}
			}
		}
		if !found {
			t.Errorf("%q does not bring %s", c.to, c.rule)
		}
		for _, u := range rep.Unknowns {
			if m := metric.FindString(u.Needs); m != "" {
				t.Errorf("%s: %q speaks of %q", u.Rule, u.Needs, m)
			}
		}
	}
}
