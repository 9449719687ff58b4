// Package treatment holds the limits of the water that fills a heating plant:
// hardness bands, part demineralization, acidity, conductivity and top-up. It
// knows nothing of plants.
//
// Hardness is in mol/m3 of alkaline earths unless a name says otherwise.
package treatment

import (
	"math"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Sources of the formulas and numbers of this package.
var (
	SourceVDI2005 = cite.Source{
		Work: "VDI 2035-1", Edition: "2005", Clause: "table of fill water", Read: cite.Published,
		Note: "as reproduced in public manuals; the content counts on the smallest unit, the row on all units together",
	}
	SourceVDI2021 = cite.Source{
		Work: "VDI 2035-1", Edition: "2021", Clause: "table of fill water", Read: cite.Memory,
	}
	SourceONorm = cite.Source{
		Work: "OENORM H 5195-1", Clause: "tables 1 and 2", Read: cite.Published,
		Note: "units of low water content; as reproduced in public manuals",
	}
	SourceHardness = cite.Source{
		Work: "degrees of hardness", Read: cite.Published, Note: "1 mol/m3 = 5.6 German degrees = 10 French degrees, as VDI 2035-1 rounds them",
	}
	SourceOtherDegrees = cite.Source{
		Work: "degrees of hardness by the mass of CaCO3, 100.09 g/mol", Read: cite.Memory,
		Note: "English degree 14.254 mg/l, US grain in a gallon 17.118 mg/l",
	}
	SourcePart = cite.Source{
		Work: "share of fill water to demineralize", Read: cite.Published, Note: "mixing balance with 0.1 German degrees left, as in a public manual",
	}
	SourceScale = cite.Source{
		Work: "scale that hard water can leave: 100 g of CaCO3 by mol", Read: cite.Memory, Note: "mass balance",
	}
	SourceAcidity = cite.Source{
		Work: "VDI 2035-1", Edition: "2021", Clause: "acidity and conductivity of heating water", Read: cite.Memory,
	}
	SourceTopUpTotal = cite.Source{
		Work: "VDI 2035-1", Read: cite.Published, Note: "fill and top-up together at most three times the content of the plant",
	}
	SourceTopUpYear = cite.Source{
		Work: "top-up of a tight plant in a year", Read: cite.Practice, Note: "10 % of the content",
	}
	SourceChloride = cite.Source{
		Work: "chloride at stainless-steel heat exchangers", Read: cite.Practice,
	}
)

// Degrees of hardness of 1 mol/m3. Sources: SourceHardness for the German and
// French, SourceOtherDegrees for the rest.
const (
	GermanDegrees  = 5.6
	FrenchDegrees  = 10.0
	EnglishDegrees = 100.09 / 14.254
	GrainsInGallon = 100.09 / 17.118 // US
	MgLiterCaCO3   = 100.09
)

const mostHardness = 20.0 // mol/m3; sea water has 60

func checkHardness(name string, v float64) error {
	return within.Range(name, v, 0, mostHardness, "mol/m3")
}

// Edition is a table of fill-water hardness.
type Edition uint8

// The tables.
const (
	VDI2021 Edition = iota + 1
	VDI2005
	ONorm
)

// band is one row: the limits for little, middle and much water per kW.
type band struct {
	mostKW float64
	limits [3]float64 // mol/m3; German degrees in the Austrian table
}

var tables = [...]struct {
	first, second float64 // l/kW that part the columns
	unit          float64 // of the limits, per mol/m3
	rows          [4]band
	source        *cite.Source
}{
	VDI2021: {20, 40, 1, [4]band{
		{50, [3]float64{3.0, 1.5, 0.05}},
		{200, [3]float64{2.0, 1.0, 0.05}},
		{600, [3]float64{1.5, 0.05, 0.05}},
		{math.Inf(1), [3]float64{0.05, 0.05, 0.05}},
	}, &SourceVDI2021},
	VDI2005: {20, 50, 1, [4]band{
		{50, [3]float64{3.0, 2.0, 0.02}},
		{200, [3]float64{2.0, 1.5, 0.02}},
		{600, [3]float64{1.5, 0.02, 0.02}},
		{math.Inf(1), [3]float64{0.02, 0.02, 0.02}},
	}, &SourceVDI2005},
	ONorm: {20, 50, GermanDegrees, [4]band{
		{50, [3]float64{11.2, 5.6, 0.6}},
		{200, [3]float64{5.6, 2.8, 0.6}},
		{600, [3]float64{2.8, 0.6, 0.6}},
		{math.Inf(1), [3]float64{0.6, 0.6, 0.6}},
	}, &SourceONorm},
}

// PerKW is the water content in l/kW that picks the column: the plant's content
// in l, above 0 to 1e6, over the output in kW of the smallest unit, 1 to 1e5.
// Source: SourceVDI2005.
func PerKW(content, smallestUnit float64) (float64, error) {
	if err := within.Range("water content", content, 0.1, 1e6, "l"); err != nil {
		return 0, err
	}
	if err := within.Range("output of the smallest unit", smallestUnit, 1, 1e5, "kW"); err != nil {
		return 0, err
	}
	return content / smallestUnit, nil
}

// Limit is the greatest hardness of the fill water in mol/m3 with its source,
// from the output of all units in kW, above 0 to 1e5, and the content in l/kW
// on the smallest unit, above 0 to 1e5.
//
// Up to 50 kW the row is that of units which hold less than 0.3 l/kW. A content
// that meets a bound belongs to the smaller side. Sources: SourceVDI2021,
// SourceVDI2005, SourceONorm.
func Limit(e Edition, totalKW, litersPerKW float64) (float64, *cite.Source, error) {
	if e < VDI2021 || int(e) >= len(tables) {
		return 0, nil, &within.Error{Name: "table of hardness", Value: float64(e), Low: float64(VDI2021), High: float64(ONorm)}
	}
	if err := within.Range("output of all units", totalKW, 0.1, 1e5, "kW"); err != nil {
		return 0, nil, err
	}
	if err := within.Range("water content by output", litersPerKW, 0.01, 1e5, "l/kW"); err != nil {
		return 0, nil, err
	}
	t := &tables[e]
	column := 2
	if litersPerKW <= t.first {
		column = 0
	} else if litersPerKW <= t.second {
		column = 1
	}
	row := 0
	for totalKW > t.rows[row].mostKW {
		row++
	}
	return t.rows[row].limits[column] / t.unit, t.source, nil
}

// residual is the hardness that demineralized water keeps. Source: SourcePart.
const residual = 0.1 / GermanDegrees

// PartDemineralized is the share of the fill water to demineralize, from the
// hardness of the mains and the greatest allowed, mol/m3, 0.0179 to 20.
//
//	A = 1 - (Cmax-0.1)/(C-0.1), in German degrees; 0 where C is not above Cmax
//
// Source: SourcePart.
func PartDemineralized(mains, most float64) (float64, error) {
	if err := checkHardness("hardness of the mains", mains); err != nil {
		return 0, err
	}
	if err := within.Range("greatest hardness", most, residual, mostHardness, "mol/m3"); err != nil {
		return 0, err
	}
	if mains <= most {
		return 0, nil
	}
	return 1 - (most-residual)/(mains-residual), nil
}

// Scale is the mass in kg of scale that a volume of water in m3, 0 to 1e4, can
// leave.
//
//	m = V C 0.1 kg/mol
//
// Source: SourceScale.
func Scale(volume, hardness float64) (float64, error) {
	if err := within.Range("volume of water", volume, 0, 1e4, "m3"); err != nil {
		return 0, err
	}
	if err := checkHardness("hardness", hardness); err != nil {
		return 0, err
	}
	return volume * hardness * 0.1, nil
}

// Acidity gives the band of the pH of heating water. Source: SourceAcidity.
func Acidity(aluminum bool) (least, most float64) {
	if aluminum {
		return 8.2, 9.0
	}
	return 8.2, 10.0
}

// Conductivity gives the band in uS/cm of heating water, of low salt content or
// not. Source: SourceAcidity.
func Conductivity(lowSalt bool) (least, most float64) {
	if lowSalt {
		return 10, 100
	}
	return 10, 1500
}

// ChlorideMost is the greatest chloride content in mg/l at stainless-steel heat
// exchangers. Source: SourceChloride.
const ChlorideMost = 50.0

// Limits of the water that a plant takes, by its content. Sources:
// SourceTopUpTotal, SourceTopUpYear.
const (
	TotalMost = 3.0 // fill and all top-up over the plant's life
	YearMost  = 0.1 // top-up in a year
)

// TopUp is what the water taken says about a plant.
type TopUp struct {
	Total float64 // fill and top-up over the content
	Year  float64 // top-up of the year over the content
}

// TopUpOf compares the first fill, all top-up since and the top-up of one year,
// all in l and none below 0, with the plant's content in l, 1 to 1e6.
func TopUpOf(content, fill, since, year float64) (TopUp, error) {
	if err := within.Range("water content", content, 1, 1e6, "l"); err != nil {
		return TopUp{}, err
	}
	if err := within.Range("first fill", fill, 0, 1e8, "l"); err != nil {
		return TopUp{}, err
	}
	if err := within.Range("top-up since", since, 0, 1e8, "l"); err != nil {
		return TopUp{}, err
	}
	if err := within.Range("top-up of the year", year, 0, 1e8, "l"); err != nil {
		return TopUp{}, err
	}
	return TopUp{Total: (fill + since) / content, Year: year / content}, nil
}
