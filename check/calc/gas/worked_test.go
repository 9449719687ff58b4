package gas_test

import (
	"strings"
	"testing"

	"example.org/tundish/check/calc/gas"
)

// The fuel of the published UK capacity tables, as the worked table states it.
func tableSection(bore, rough, length float64) gas.Section {
	return gas.Section{RelativeDensity: 0.6, Viscosity: 1.1e-5, Bore: bore, Roughness: rough, Length: length, Inlet: 0}
}

// worked holds one function for each row of worked/gas-flue-air.csv that this
// package answers, by topic and the start of the row's inputs. The function
// returns our number in the unit of the printed answer.
var worked = map[string]func(tb testing.TB) float64{
	"gas rate|P=10 kW": func(tb testing.TB) float64 {
		return 3600 * rate(tb, 10e3, 38.5e6)
	},
	"gas rate|P=24+7 kW": func(tb testing.TB) float64 {
		return 3600 * rate(tb, 31e3, 39.5e6)
	},
	"gas rate (US)|input=760000": func(tb testing.TB) float64 {
		return usRate(tb, 760000, 500)
	},
	"gas rate|boiler input=750 kW": func(tb testing.TB) float64 {
		return 1000 * rate(tb, 750e3, 39e6)
	},
	"US gas rate|150000": func(tb testing.TB) float64 {
		return usRate(tb, 150000, 1100)
	},
	"allowable gradient|run=34 m": func(tb testing.TB) float64 {
		g, err := gas.Gradient(75, 34, 0.25)
		no(tb, err)
		return g
	},
	"Spitzglass|d=0.622": func(tb testing.TB) float64 {
		q, err := gas.Spitzglass(0.60, 0.622, 100, 0.5)
		no(tb, err)
		return q
	},
	"IFGC schedule 40 capacity|pipe 2 in":     lowPressure(gas.Two, 60),
	"IFGC schedule 40 capacity|pipe 1 in":     lowPressure(gas.One, 10),
	"IFGC schedule 40 capacity|pipe 3 in":     lowPressure(gas.Three, 80),
	"IFGC schedule 40 capacity|pipe 1-1/4 in": lowPressure(gas.OneQuarter, 60),
	"fitting equivalent length|2 in sch 40 (2.067 in), 90": func(tb testing.TB) float64 {
		return elbowFt(tb, "90 deg elbow, screwed")
	},
	"fitting equivalent length|2 in sch 40, screwed tee": func(tb testing.TB) float64 {
		return elbowFt(tb, "tee to the branch, screwed")
	},
	"specific gravity multiplier|SG=1.50": multiplier(1.5),
	"specific gravity multiplier|SG=0.75": multiplier(0.75),
	"calorific value G20 gross|CH4":       func(tb testing.TB) float64 { return fuel(tb, "G20").Gross / 1e6 },
	"calorific value G20 net|as":          func(tb testing.TB) float64 { return fuel(tb, "G20").Net / 1e6 },
	"calorific value G31 gross|C3H8":      func(tb testing.TB) float64 { return fuel(tb, "G31").Gross / 1e6 },
	"calorific value G31 net|C3H8":        func(tb testing.TB) float64 { return fuel(tb, "G31").Net / 1e6 },
	"gross:net ratio natural gas|G20": func(tb testing.TB) float64 {
		return fuel(tb, "G20").Gross / fuel(tb, "G20").Net
	},
	"gross:net ratio propane|G31": func(tb testing.TB) float64 {
		return fuel(tb, "G31").Gross / fuel(tb, "G31").Net
	},
	"installation volume|meter G4/U6": func(tb testing.TB) float64 { return smallInstallation(tb) },
	"purge volume|IV as above": func(tb testing.TB) float64 {
		v, err := gas.PurgeVolume(smallInstallation(tb), 0)
		no(tb, err)
		return v
	},
	"steel gas pipe capacity|DN50":  capacityPerMeter(53.1, 5),
	"steel gas pipe capacity|DN65":  capacityPerMeter(68.9, 1.5),
	"steel gas pipe capacity|DN80":  capacityPerMeter(80.9, 2.5),
	"steel gas pipe capacity|DN100": capacityPerMeter(105.3, 5),
	"steel gas pipe capacity|DN40":  capacityPerMeter(41.9, 10),
	"steel gas pipe capacity|DN25":  capacityPerMeter(27.3, 10),
	"steel gas pipe capacity|DN150": capacityPerMeter(155.2, 10),

	"copper gas pipe capacity|22 x 0.9 mm (bore 20.2); L=6":  copper(20.2, 6),
	"copper gas pipe capacity|28 x 0.9 mm (bore 26.2); L=15": copper(26.2, 15),
	"copper gas pipe capacity|28 x 0.9 mm (bore 26.2); L=30": copper(26.2, 30),
	"copper gas pipe capacity|22 x 0.9 mm (bore 20.2); L=12": copper(20.2, 12),
}

func rate(tb testing.TB, watts, cv float64) float64 {
	q, err := gas.Rate(gas.HeatInput{Watts: watts, Basis: gas.Gross}, gas.CalorificValue{JPerM3: cv, Basis: gas.Gross})
	no(tb, err)
	return q
}

// usRate is Rate with Btu/h and Btu/ft3, answered in ft3/h.
func usRate(tb testing.TB, btuH, btuFt3 float64) float64 {
	const btu, ft3 = 1055.05585262, 0.028316846592
	return rate(tb, btuH*btu/3600, btuFt3*btu/ft3) * 3600 / ft3
}

func fuel(tb testing.TB, name string) *gas.Fuel {
	f, ok := gas.FuelNamed(name)
	if !ok {
		tb.Fatalf("no fuel %s", name)
	}
	return f
}

func lowPressure(size gas.Size, length float64) func(testing.TB) float64 {
	return func(tb testing.TB) float64 {
		q, err := gas.LowPressureCapacity(gas.USNatural, size.BoreIn(), length, 3)
		no(tb, err)
		return q
	}
}

func elbowFt(tb testing.TB, fitting string) float64 {
	for _, r := range gas.Ratios() {
		if r.Fitting == fitting {
			l, err := gas.EquivalentLength(r.Bores, gas.Two.BoreIn())
			no(tb, err)
			return l / 12
		}
	}
	tb.Fatalf("no fitting %s", fitting)
	return 0
}

func multiplier(sg float64) func(testing.TB) float64 {
	return func(tb testing.TB) float64 {
		m, err := gas.GravityMultiplier(sg)
		no(tb, err)
		return m
	}
}

func smallInstallation(tb testing.TB) float64 {
	pipe, ok := gas.VolumePrinted("copper", "15 mm")
	if !ok {
		tb.Fatal("no printed volume of 15 mm copper")
	}
	v, err := gas.InstallationVolume(9*pipe.PerMeter, 0.008)
	no(tb, err)
	return v
}

func capacityPerMeter(boreMM, gradient float64) func(testing.TB) float64 {
	return func(tb testing.TB) float64 {
		s := tableSection(boreMM/1000, 0.046e-3, 1)
		q, err := s.Capacity(gradient)
		no(tb, err)
		return 1000 * q
	}
}

func copper(boreMM, length float64) func(testing.TB) float64 {
	return func(tb testing.TB) float64 {
		s := tableSection(boreMM/1000, 0.0015e-3, length)
		q, err := s.Capacity(100)
		no(tb, err)
		return 3600 * q
	}
}

// TestWorked compares with the published answers of worked/gas-flue-air.csv;
// each row names its source and how it was read.
func TestWorked(t *testing.T) {
	answered := map[string]bool{}
	for _, row := range readTable(t, "worked/gas-flue-air.csv") {
		for key, answer := range worked {
			topic, start, _ := strings.Cut(key, "|")
			if row["topic"] != topic || !strings.HasPrefix(row["inputs"], start) {
				continue
			}
			answered[key] = true
			want := num(t, strings.Fields(row["expected"])[0])
			got := answer(t)
			switch kind, amount, _ := strings.Cut(row["tolerance"], " "); kind {
			case "rel":
				near(t, key, got, want, num(t, amount))
			case "abs":
				near(t, key, got, want, num(t, amount)/want)
			case "exact":
				near(t, key, got, want, 0)
			default:
				t.Errorf("%s: tolerance %q", key, row["tolerance"])
			}
		}
	}
	for key := range worked {
		if !answered[key] {
			t.Errorf("no row answers to %s", key)
		}
	}
}

// TestWorkedSizing holds the two worked examples of the longest-length method:
// rows "IFGC longest length" (International Fuel Gas Code 2018, Example A.6.1)
// and "UPC/NFPA longest length" (NFPA 54, 6.1.1) of worked/gas-flue-air.csv.
func TestWorkedSizing(t *testing.T) {
	rows := map[string]map[string]string{}
	for _, row := range readTable(t, "worked/gas-flue-air.csv") {
		rows[row["topic"]] = row
	}
	for topic, loads := range map[string][]float64{
		"IFGC longest length":     {35, 75, 110, 135, 245},
		"UPC/NFPA longest length": {32, 35, 94, 230},
	} {
		var sizes []string
		for _, load := range loads {
			s, err := gas.HalfInch.Size(load, 60)
			no(t, err)
			sizes = append(sizes, s.String())
		}
		if got, want := strings.Join(sizes, ","), rows[topic]["expected"]; got != want {
			t.Errorf("%s: got %s, want %s", topic, got, want)
		}
	}
}
