package flue

import (
	"strconv"
	"strings"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Class is a pressure class of a flue.
type Class struct {
	Name         string
	TestPressure float64 // of the leakage test, Pa
	Operating    float64 // greatest operating pressure, Pa; 0: negative pressure only
	Outdoors     bool    // under positive pressure only outdoors
	Leakage      float64 // m3/(s.m2) at the test pressure, 0: not known; source: SourceLeakage
	Source       cite.Source
}

var classes = [...]Class{
	{"N1", 40, 0, false, 2.0e-3, SourceClasses},
	{"N2", 20, 0, false, 0, SourceClasses},
	{"P1", 200, 200, false, 0.006e-3, SourceClasses},
	{"P2", 200, 200, true, 0.120e-3, SourceClasses},
	{"M1", 1500, 1500, false, 0, SourceClassM},
	{"H1", 5000, 5000, false, 0.006e-3, SourceClasses},
	{"H2", 5000, 5000, true, 0, SourceClasses},
}

// Classes returns the table of pressure classes.
func Classes() []Class { return append([]Class(nil), classes[:]...) }

// ClassNamed is the pressure class of that name: "P1".
func ClassNamed(name string) (Class, bool) {
	for i := range classes {
		if classes[i].Name == name {
			return classes[i], true
		}
	}
	return Class{}, false
}

// Holds reports whether the class may stand an operating pressure in Pa. Any
// positive pressure in an N flue is too much: its 40 or 20 Pa are test
// pressures.
func (c Class) Holds(pascal float64) bool {
	return pascal <= c.Operating*(1+1e-9)
}

// Temperature classes of EN 1856-1 in degC. Source: SourceTemperatureClasses.
var temperatureClasses = [...]int{80, 100, 120, 140, 160, 200, 250, 300, 400, 450, 600}

// TemperatureClass is the flue gas temperature in degC that a class like
// "T120" stands.
func TemperatureClass(name string) (celsius float64, ok bool) {
	digits, found := strings.CutPrefix(name, "T")
	if !found {
		return 0, false
	}
	n, err := strconv.Atoi(digits)
	if err != nil {
		return 0, false
	}
	for _, t := range temperatureClasses {
		if t == n {
			return float64(t), true
		}
	}
	return 0, false
}

// TemperatureClassFor is the lowest class that stands a temperature in degC,
// up to 600. Source: SourceTemperatureClasses.
func TemperatureClassFor(celsius float64) (int, error) {
	if err := within.Range("flue gas temperature", celsius, 0, 600, "degC"); err != nil {
		return 0, err
	}
	for _, t := range temperatureClasses {
		if celsius <= float64(t) {
			return t, nil
		}
	}
	return temperatureClasses[len(temperatureClasses)-1], nil
}
