package solve

import (
	"math"

	"example.org/tundish/check/calc/network"
	"example.org/tundish/check/plant"
)

// curvePoints is a curve of a catalogue: loss or head in Pa over flow in m3/s.
type curvePoints struct {
	block    *plant.Part
	flow, pa []float64
	points   []network.Point
	rho      float64 // of points
}

var noCurve curvePoints

// curve reads the points of a curve block in order; units of one type share it.
func (h *hydraulics) curve(block *plant.Part) *curvePoints {
	if block == nil {
		return &noCurve
	}
	for _, c := range h.curves {
		if c.block == block {
			return c
		}
	}
	c := h.newCurve()
	c.block = block
	for _, pt := range block.Children("point") {
		f, p := pt.Get("flow"), pt.Get("pressure")
		if f.Known() && p.Known() {
			c.flow, c.pa = append(c.flow, f.Num), append(c.pa, p.Num)
		}
	}
	return c
}

// newCurve takes an empty curve, one of the plant before where there is one.
func (h *hydraulics) newCurve() *curvePoints {
	n := len(h.curves)
	if n == cap(h.curves) || h.curves[:n+1][n] == nil {
		h.curves = append(h.curves, &curvePoints{})
		return h.curves[n]
	}
	h.curves = h.curves[:n+1]
	c := h.curves[n]
	*c = curvePoints{flow: c.flow[:0], pa: c.pa[:0], points: c.points[:0]}
	return c
}

// heads are the points in m of water of a density in kg/m3.
func (c *curvePoints) heads(rho float64) []network.Point {
	if c.rho != rho || len(c.points) != len(c.flow) {
		c.rho, c.points = rho, c.points[:0]
		for i := range c.flow {
			c.points = append(c.points, network.Point{Flow: c.flow[i], Head: network.Head(c.pa[i], rho)})
		}
	}
	return c.points
}

// lost is the loss in Pa of an apparatus at a flow: with the square of the flow
// up to the first point, then along a + b q2 through neighboring points, beyond
// the last as before it. 0 without points.
func (c *curvePoints) lost(flow float64) float64 {
	n := len(c.flow)
	if n == 0 || c.flow[0] <= 0 {
		return 0
	}
	k := 0
	for k < n-1 && flow > c.flow[k] {
		k++
	}
	var q0, p0 float64
	if k > 0 {
		q0, p0 = c.flow[k-1], c.pa[k-1]
	}
	return p0 + (c.pa[k]-p0)*(flow*flow-q0*q0)/(c.flow[k]*c.flow[k]-q0*q0)
}

// at is the head in Pa of a pump at a flow, along parabolas between its points; ok
// is false outside them, for the maker gives no head there.
func (c *curvePoints) at(flow float64) (pa float64, ok bool) {
	n := len(c.flow)
	if n < 2 || flow < c.flow[0]-1e-12 || flow > c.flow[n-1]*(1+1e-9) {
		return math.NaN(), false
	}
	k := 0
	for k < n-2 && c.flow[k+1] < flow {
		k++
	}
	a, b := c.piece(k)
	return a - b*flow*flow, true
}

// piece is the parabola a - b q2 from point k to the next.
func (c *curvePoints) piece(k int) (a, b float64) {
	q0, q1 := c.flow[k]*c.flow[k], c.flow[k+1]*c.flow[k+1]
	b = (c.pa[k] - c.pa[k+1]) / (q1 - q0)
	return c.pa[k] + b*q0, b
}

// meets is the flow in m3/s at which a pump of two points or more, at a speed as
// a part of full speed, gives the head r q2 in Pa, r above 0. Beyond its ends the
// outer parabolas go on.
func (c *curvePoints) meets(r, speed float64) float64 {
	last := len(c.flow) - 2
	for k := 0; ; k++ {
		a, b := c.piece(k)
		q := speed * math.Sqrt(a/(b+r))
		if k == last || q <= c.flow[k+1]*speed {
			return q
		}
	}
}
