package fittings

import (
	"errors"
	"math"

	"example.org/tundish/check/calc/within"
)

// Tee is a tee with a run of one bore and a branch at an angle to it.
type Tee struct {
	Run    float64 // bore of the run, m
	Branch float64 // bore of the branch, m, at most that of the run
	Angle  float64 // of the branch to the run: 30, 45, 60 or 90 degrees
}

// ErrTeeDisputed is returned for a diverging branch where the printed limits
// contradict each other.
var ErrTeeDisputed = errors.New("a diverging branch at 60 degrees, or at 90 degrees with branch over run between 2/3 and sqrt(2/3), is not defined: the printed limits of the method contradict each other")

// ratios checks the tee and gives branch area over run area and branch flow
// over whole flow.
func (t Tee) ratios(run, branch float64) (beta2, q float64, err error) {
	if err = checkBore(t.Run); err != nil {
		return 0, 0, err
	}
	if err = within.Range("branch bore over run bore", t.Branch/t.Run, 0.1, 1, ""); err != nil {
		return 0, 0, err
	}
	switch t.Angle {
	case 30, 45, 60, 90:
	default:
		return 0, 0, &within.Error{Name: "angle of the branch", Value: t.Angle, Low: 30, High: 90, Unit: "deg (only 30, 45, 60 and 90)"}
	}
	if err = within.Range("flow of the run", run, 0, math.MaxFloat64, ""); err != nil {
		return 0, 0, err
	}
	if err = within.Range("flow of the branch", branch, 0, math.MaxFloat64, ""); err != nil {
		return 0, 0, err
	}
	q = branch / (run + branch)
	if err = within.Range("branch flow over whole flow", q, 0, 1, ""); err != nil {
		return 0, 0, err
	}
	beta := t.Branch / t.Run
	return beta * beta, q, nil
}

// anglePart is F of the converging formulas.
func (t Tee) anglePart() float64 {
	switch t.Angle {
	case 30:
		return 1.74
	case 45:
		return 1.41
	case 60:
		return 1
	}
	return 0
}

// ConvergingBranch is K from the branch into the common leg, on the common
// leg's velocity. The flows are those of the run before the tee and of the branch,
// in one unit. It is below zero where the run drags the branch along.
//
//	K = C [1 + (q/b)^2 - 2 (1-q)^2 - F q^2/b],  b = (branch/run bore)^2, q = branch/whole flow
//	C = 1 to b 0.35, else 0.9 (1-q) to q 0.4, else 0.55;  F = 1.74 1.41 1 0 at 30 45 60 90 degrees
//
// Source: SourceCraneTees.
func (t Tee) ConvergingBranch(run, branch float64) (float64, error) {
	b, q, err := t.ratios(run, branch)
	if err != nil {
		return 0, err
	}
	c := 1.0
	if b > 0.35 {
		if c = 0.55; q <= 0.4 {
			c = 0.9 * (1 - q)
		}
	}
	return c * (1 + q*q/(b*b) - 2*(1-q)*(1-q) - t.anglePart()*q*q/b), nil
}

// ConvergingRun is K of the run straight into the common leg, on the common
// leg's velocity; flows as in ConvergingBranch.
//
//	K = 1.55 q - q^2 at 90 degrees;  1 - (1-q)^2 - F q^2/b at 30 45 60 degrees
//
// Source: SourceCraneTees.
func (t Tee) ConvergingRun(run, branch float64) (float64, error) {
	b, q, err := t.ratios(run, branch)
	if err != nil {
		return 0, err
	}
	if t.Angle == 90 {
		return 1.55*q - q*q, nil
	}
	return 1 - (1-q)*(1-q) - t.anglePart()*q*q/b, nil
}

// DivergingBranch is K from the common leg into the branch, on the common leg's
// velocity. The flows are those of the run after the tee and of the branch.
//
//	K = G [1 + H (q/b)^2 - J q/b cos(angle)]
//	H = 1, J = 2 below 60 degrees or to bore ratio 2/3;  H = 0.3, J = 0 at 90 degrees above
//	G below 60 degrees: b to 0.35: 1.1 - 0.7 q to q 0.4, else 0.85;  b above: 1 - 0.6 q to q 0.6, else 0.6
//	G at 90 degrees: 1 to b 2/3, else 1 + 0.3 q^2
//
// In the band that ErrTeeDisputed names there is no answer. Source:
// SourceCraneTees.
func (t Tee) DivergingBranch(run, branch float64) (float64, error) {
	b, q, err := t.ratios(run, branch)
	if err != nil {
		return 0, err
	}
	if t.Angle == 90 {
		switch {
		case b <= 4.0/9:
			return 1 + q*q/(b*b), nil
		case b <= 2.0/3:
			return 0, ErrTeeDisputed
		}
		return (1 + 0.3*q*q) * (1 + 0.3*q*q/(b*b)), nil
	}
	if t.Angle == 60 {
		return 0, ErrTeeDisputed
	}
	var g float64
	switch {
	case b <= 0.35 && q <= 0.4:
		g = 1.1 - 0.7*q
	case b <= 0.35:
		g = 0.85
	case q <= 0.6:
		g = 1 - 0.6*q
	default:
		g = 0.6
	}
	return g * (1 + q*q/(b*b) - 2*q/b*math.Cos(t.Angle*math.Pi/180)), nil
}

// DivergingRun is K of the common leg straight into the run, on the common
// leg's velocity; flows as in DivergingBranch.
//
//	K = M q^2;  M = 0.4 to b 0.4, else 2 (2q-1) to q 0.5, else 0.3 (2q-1)
//
// Source: SourceCraneTees.
func (t Tee) DivergingRun(run, branch float64) (float64, error) {
	b, q, err := t.ratios(run, branch)
	if err != nil {
		return 0, err
	}
	m := 0.3 * (2*q - 1)
	switch {
	case b <= 0.4:
		m = 0.4
	case q <= 0.5:
		m = 2 * (2*q - 1)
	}
	return m * q * q, nil
}
