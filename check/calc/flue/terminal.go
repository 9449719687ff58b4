package flue

import (
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Line is a straight line of a distance in m over the net heat input, as trade
// literature draws it through the figures of the work, from 70 to 333 kW net.
type Line struct {
	perKW, base float64 // mm per kW, mm
}

// The lines of IGEM/UP/10. Source: SourceTerminalUP10.
var (
	OpeningRoomSealed = Line{7.232, 93.708} // to an opening or wall beside, room-sealed and fanned
	OpeningOpenFlued  = Line{9.516, 833.9}  // to an opening or wall beside, open-flued and fanned
	AboveRoof         = Line{4.5675, -19.7} // height above the roof
	FacingRoomSealed  = Line{19.32, 647.6}  // to a surface opposite, room-sealed and fanned
	FacingOpenFlued   = Line{23.13, 618.8}  // to a surface opposite, open-flued and fanned
)

// Distance is the least distance in m at a net heat input in W of all grouped
// terminals together. Outside 70 to 333 kW net the line does not hold and
// there is no extrapolation. Source: SourceTerminalUP10.
func (l Line) Distance(netWatts float64) (float64, error) {
	if err := within.Range("net heat input at the terminal", netWatts/1000, 70, 333, "kW"); err != nil {
		return 0, err
	}
	return (l.perKW*netWatts/1000 + l.base) / 1000, nil
}

// Clearance is one least distance of a terminal.
type Clearance struct {
	From   string
	Meters float64
	Source cite.Source
}

// smallTerminals hold for fanned units up to 70 kW net.
var smallTerminals = [...]Clearance{
	{"opening, below, above or beside it", 0.300, SourceTerminalADJ},
	{"gutter or drain above", 0.075, SourceTerminalADJ},
	{"eaves or balcony above", 0.200, SourceTerminalADJ},
	{"vertical drain or soil pipe", 0.150, SourceTerminalADJ},
	{"corner or boundary alongside", 0.300, SourceTerminalADJ},
	{"ground, roof or balcony below", 0.300, SourceTerminalADJ},
	{"surface or boundary it faces", 0.600, SourceTerminalADJ},
	{"terminal it faces", 1.200, SourceTerminalADJ},
	{"terminal above or below", 1.500, SourceTerminalADJ},
	{"terminal beside", 0.300, SourceTerminalADJ},
}

// SmallTerminals returns the least distances of terminals of fanned units up
// to 70 kW net.
func SmallTerminals(netWatts float64) ([]Clearance, error) {
	if err := within.Range("net heat input at the terminal", netWatts/1000, 0, 70, "kW"); err != nil {
		return nil, err
	}
	return append([]Clearance(nil), smallTerminals[:]...), nil
}

const foot = 0.3048 // m, a definition

// usTerminals hold for mechanical draft through the wall in the US.
var usTerminals = [...]Clearance{
	{"forced-air inlet within 10 ft, above it", 3 * foot, SourceTerminalUS},
	{"door, window or gravity inlet, below it", 4 * foot, SourceTerminalUS},
	{"door, window or gravity inlet, beside it", 4 * foot, SourceTerminalUS},
	{"door, window or gravity inlet, above it", 1 * foot, SourceTerminalUS},
	{"grade or snow, above it", 1 * foot, SourceTerminalUS},
	{"walkway, above it", 7 * foot, SourceTerminalUS},
	{"gas meter or regulator", 4 * foot, SourceTerminalUS},
	{"opening, direct vent above 50 000 Btu/h", 1 * foot, SourceTerminalUSDirect},
}

// USTerminals returns the least distances of through-wall terminals in the US.
func USTerminals() []Clearance { return append([]Clearance(nil), usTerminals[:]...) }
