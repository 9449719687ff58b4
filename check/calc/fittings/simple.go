package fittings

import (
	"example.org/tundish/check/calc/within"
	"example.org/tundish/check/cite"
)

// Part is a line part as a designer counts it.
type Part uint8

// The line parts.
const (
	Bend      Part = iota + 1 // bend or elbow of 90 degrees
	HalfBend                  // of 45 degrees
	TeeRun                    // tee straight through
	TeeBranch                 // tee turned into or out of the branch
	Union
	BallValve      // open, full bore
	Strainer       // clean
	NonReturn      // swing type; with a spring take the maker's figure
	ButterflyValve // butterfly valve, DN50 and larger
)

// Simple is one row of the table of line parts.
type Simple struct {
	Part   Part
	Name   string
	Bores  float64 // K = Bores fT where above zero
	Fixed  float64 // else K, any size
	Source cite.Source
}

var simple = [...]Simple{
	{Bend, "bend of 90 degrees", 30, 0, SourceCrane},
	{HalfBend, "bend of 45 degrees", 16, 0, SourceCrane},
	{TeeRun, "tee straight through", 20, 0, SourceCrane},
	{TeeBranch, "tee to the branch", 60, 0, SourceCrane},
	{Union, "union", 0, 0.05, SourceUsual},
	{BallValve, "ball valve, full bore, open", 3, 0, SourceCrane},
	{Strainer, "strainer, clean", 0, 3.0, SourcePart},
	{NonReturn, "non-return valve, swing type", 100, 0, SourceCrane},
	{ButterflyValve, "butterfly valve, open", 45, 0, SourceCrane},
}

// Simples returns the table of line parts.
func Simples() []Simple { return append([]Simple(nil), simple[:]...) }

// SimpleOf finds a line part in the table.
func SimpleOf(p Part) (Simple, bool) {
	if p < Bend || int(p) > len(simple) {
		return Simple{}, false
	}
	return simple[p-1], true
}

// K is the loss coefficient of the part on the velocity in its own bore in m,
// 0.008 to 0.21.
//
//	K = n fT, or one figure for all sizes
//
// Source: that of the row.
func (s *Simple) K(bore float64) (float64, error) {
	if err := within.Range("bore", bore, 0.008, 0.21, "m"); err != nil {
		return 0, err
	}
	if s.Bores > 0 {
		return s.Bores * turbulent(bore), nil
	}
	return s.Fixed, nil
}
