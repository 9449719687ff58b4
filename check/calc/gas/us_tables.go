package gas

import (
	"errors"

	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Size numbers the sizes of schedule 40 steel pipe from 1/2 in.
type Size uint8

// The sizes of the US tables.
const (
	Half Size = iota
	ThreeQuarter
	One
	OneQuarter
	OneHalf
	Two
	TwoHalf
	Three
	Four
	sizes
)

var (
	sizeNames = [sizes]string{"1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"}
	// Bores of schedule 40 pipe in inches: outside diameter less twice the wall.
	sizeBores = [sizes]float64{0.622, 0.824, 1.049, 1.380, 1.610, 2.067, 2.469, 3.068, 4.026}
)

// String is the size in inches as the tables print it.
func (s Size) String() string {
	if s >= sizes {
		return "no size"
	}
	return sizeNames[s]
}

// BoreIn is the bore of schedule 40 pipe in inches, 0 for no size.
func (s Size) BoreIn() float64 {
	if s >= sizes {
		return 0
	}
	return sizeBores[s]
}

type row struct {
	length   float64 // ft
	capacity [sizes]float64
	read     cite.Source
}

// Table is a printed table of capacities of schedule 40 steel pipe in ft3/h of
// natural gas of specific gravity 0.60 for one drop.
type Table struct {
	DropInWC float64
	Source   cite.Source
	rows     []row
}

var (
	sourceThreeInch = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table 402.4(3)", Read: cite.Published,
		Note: "lengths 10, 20 and 60 ft",
	}
	sourceThreeInchMemory = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table 402.4(3)", Read: cite.Memory,
		Note: "lengths other than 10, 20 and 60 ft; 3 in at 80 ft read in print",
	}
	sourceHalfInch = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table 402.4(2)", Read: cite.Memory,
		Note: "every row lies up to 2.5 % under the low-pressure equation; the row of 10 ft is that of 60 ft in the 3 in table",
	}
	sourceHalfInchScaled = cite.Source{
		Work: "International Fuel Gas Code", Edition: "2018", Clause: "Table 402.4(3), row of 60 ft: the same drop per foot as 0.5 in w.c. in 10 ft", Read: cite.Published,
	}
)

// HalfInch is the table for a drop of 0.5 in w.c.; the inlet minus the drop
// must also reach the lowest pressure of the unit.
var HalfInch = &Table{DropInWC: 0.5, Source: sourceHalfInch, rows: []row{
	{10, [sizes]float64{172, 360, 678, 1390, 2090, 4020, 6400, 11300, 23100}, sourceHalfInchScaled},
	{20, [sizes]float64{118, 247, 466, 957, 1430, 2760, 4400, 7780, 15900}, sourceHalfInch},
	{30, [sizes]float64{95, 199, 374, 768, 1150, 2220, 3530, 6250, 12700}, sourceHalfInch},
	{40, [sizes]float64{81, 170, 320, 657, 985, 1900, 3020, 5350, 10900}, sourceHalfInch},
	{50, [sizes]float64{72, 151, 284, 583, 873, 1680, 2680, 4740, 9660}, sourceHalfInch},
	{60, [sizes]float64{65, 137, 257, 528, 791, 1520, 2430, 4290, 8760}, sourceHalfInch},
	{70, [sizes]float64{60, 126, 237, 486, 728, 1400, 2230, 3950, 8050}, sourceHalfInch},
	{80, [sizes]float64{56, 117, 220, 452, 677, 1300, 2080, 3670, 7490}, sourceHalfInch},
	{90, [sizes]float64{52, 110, 207, 424, 635, 1220, 1950, 3450, 7030}, sourceHalfInch},
	{100, [sizes]float64{50, 104, 195, 400, 600, 1160, 1840, 3260, 6640}, sourceHalfInch},
	{125, [sizes]float64{44, 92, 173, 355, 532, 1020, 1630, 2890, 5890}, sourceHalfInch},
	{150, [sizes]float64{40, 83, 157, 322, 482, 928, 1480, 2610, 5330}, sourceHalfInch},
	{175, [sizes]float64{37, 77, 144, 296, 443, 854, 1360, 2410, 4910}, sourceHalfInch},
	{200, [sizes]float64{34, 71, 134, 275, 412, 794, 1270, 2240, 4560}, sourceHalfInch},
	{250, [sizes]float64{30, 63, 119, 244, 366, 704, 1120, 1980, 4050}, sourceHalfInch},
	{300, [sizes]float64{27, 57, 108, 221, 331, 638, 1020, 1800, 3670}, sourceHalfInch},
}}

// ThreeInch is the table for a drop of 3.0 in w.c., for supplies of 8 in w.c.
// and more; the inlet minus the drop must also reach the lowest pressure of
// the unit.
var ThreeInch = &Table{DropInWC: 3, Source: sourceThreeInch, rows: []row{
	{10, [sizes]float64{454, 949, 1790, 3670, 5500, 10600, 16900, 29800, 60800}, sourceThreeInch},
	{20, [sizes]float64{312, 652, 1230, 2520, 3780, 7280, 11600, 20500, 41800}, sourceThreeInch},
	{30, [sizes]float64{250, 524, 986, 2030, 3030, 5840, 9310, 16500, 33600}, sourceThreeInchMemory},
	{40, [sizes]float64{214, 448, 844, 1730, 2600, 5000, 7970, 14100, 28700}, sourceThreeInchMemory},
	{50, [sizes]float64{190, 397, 748, 1540, 2300, 4430, 7060, 12500, 25500}, sourceThreeInchMemory},
	{60, [sizes]float64{172, 360, 678, 1390, 2090, 4020, 6400, 11300, 23100}, sourceThreeInch},
	{70, [sizes]float64{158, 331, 624, 1280, 1920, 3690, 5890, 10400, 21200}, sourceThreeInchMemory},
	{80, [sizes]float64{147, 308, 580, 1190, 1790, 3440, 5480, 9690, 19800}, sourceThreeInchMemory},
	{90, [sizes]float64{138, 289, 544, 1120, 1670, 3230, 5140, 9090, 18500}, sourceThreeInchMemory},
	{100, [sizes]float64{131, 273, 514, 1060, 1580, 3050, 4860, 8580, 17500}, sourceThreeInchMemory},
	{125, [sizes]float64{116, 242, 456, 936, 1400, 2700, 4300, 7610, 15500}, sourceThreeInchMemory},
	{150, [sizes]float64{105, 219, 413, 848, 1270, 2450, 3900, 6890, 14100}, sourceThreeInchMemory},
	{175, [sizes]float64{96, 202, 380, 780, 1170, 2250, 3590, 6340, 12900}, sourceThreeInchMemory},
	{200, [sizes]float64{90, 188, 353, 726, 1090, 2090, 3340, 5900, 12000}, sourceThreeInchMemory},
	{250, [sizes]float64{80, 166, 313, 643, 964, 1860, 2960, 5230, 10700}, sourceThreeInchMemory},
	{300, [sizes]float64{72, 151, 284, 583, 873, 1680, 2680, 4740, 9660}, sourceThreeInchMemory},
}}

// find is the row of a length or of the next longer one: the tables are read
// on the safe side.
func (t *Table) find(lengthFt float64) (*row, error) {
	for i := range t.rows {
		if lengthFt <= t.rows[i].length*(1+1e-9) && lengthFt > 0 {
			return &t.rows[i], nil
		}
	}
	return nil, &within.Error{
		Name: "length", Value: lengthFt, Low: 0, High: t.rows[len(t.rows)-1].length, Unit: "ft",
	}
}

// Capacity is the printed capacity in ft3/h of a size at a length in feet, read
// at the length or the next longer one of the table, with the source of that
// row.
func (t *Table) Capacity(size Size, lengthFt float64) (float64, cite.Source, error) {
	if size >= sizes {
		return 0, cite.Source{}, ErrSize
	}
	r, err := t.find(lengthFt)
	if err != nil {
		return 0, cite.Source{}, err
	}
	return r.capacity[size], r.read, nil
}

// ErrSize is returned when no size of the table passes a load.
var ErrSize = errors.New("no size of the table passes this load; the largest is 4 in")

// Size is the smallest size that passes a load in ft3/h at a length in feet.
func (t *Table) Size(loadFt3H, lengthFt float64) (Size, error) {
	if err := within.Range("load", loadFt3H, 0, 1e6, "ft3/h"); err != nil {
		return sizes, err
	}
	r, err := t.find(lengthFt)
	if err != nil {
		return sizes, err
	}
	for i := range r.capacity {
		if loadFt3H <= r.capacity[i]*(1+1e-9) {
			return Size(i), nil
		}
	}
	return sizes, ErrSize
}
