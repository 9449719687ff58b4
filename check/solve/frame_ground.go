package solve

import (
	"example.org/tundish/check/calc/stability"
	"example.org/tundish/check/plant"
)

// ground is how a frame stands on the floor: the lines it may tip over, and
// where its own mass and that of each unit are, in m.
type ground struct {
	edges []stability.Edge
	own   stability.Point
	at    map[*plant.Part]stability.Point
}

// weakest is the distance in m from a point to the nearest line of tipping.
func (g *ground) weakest(p stability.Point) float64 {
	d := g.edges[0].Inside(p)
	for i := range g.edges {
		d = min(d, g.edges[i].Inside(p))
	}
	return d
}

// grounds gives every way in which the text may be understood; the worst of them
// counts. needs says what is not stated. depth and offset are known.
func grounds(f *plant.Part, depth, offset float64) (list []ground, needs string) {
	if f.Get("layout").Is("l-shaped") {
		return cornerGrounds(f, depth, offset)
	}
	g := ground{edges: []stability.Edge{
		{Inward: stability.Point{Y: 1}},
		{At: stability.Point{Y: depth}, Inward: stability.Point{Y: -1}},
	}, at: map[*plant.Part]stability.Point{}}
	pitch := f.Child("pitch").First()
	length, unknown := frameLength(f)
	ends := unknown == "" && pitch.Known()
	if ends { // else only the two long lines of feet are looked at
		g.edges = append(
			g.edges,
			stability.Edge{Inward: stability.Point{X: 1}},
			stability.Edge{At: stability.Point{X: length}, Inward: stability.Point{X: -1}},
		)
	}
	g.own = stability.Point{X: length / 2, Y: depth / 2}
	for i, row := range f.Children("row") {
		y := offset
		if f.Get("layout").Is("back-to-back") && i > 0 {
			y = depth - offset
		}
		units := row.Refs("units")
		for k, ref := range units {
			x := length / 2
			if ends {
				x += (float64(k) - float64(len(units)-1)/2) * pitch.Num
			}
			g.at[ref.Part] = stability.Point{X: x, Y: y}
		}
	}
	return []ground{g}, ""
}

// arm is one straight stretch of an l-shaped frame.
type arm struct {
	row    *plant.Part
	length float64 // m
}

// cornerArms reads the two arms of an l-shaped frame and the side of its corner:
// the sections before the corner section carry the first row, those after it the
// second.
func cornerArms(f *plant.Part) (arms [2]arm, corner float64, needs string) {
	rows := f.Children("row")
	if len(rows) != 2 {
		return arms, 0, "two rows of " + f.Label() + ", one on each arm"
	}
	arms[0].row, arms[1].row = rows[0], rows[1]
	i := 0
	for _, s := range f.Children("section") {
		v := s.Get("length")
		switch {
		case !v.Known():
			return arms, 0, "the length of " + s.Label()
		case !s.Get("shape").Is("corner"):
			arms[i].length += v.Num
		case i == 0:
			corner, i = v.Num, 1
		default:
			return arms, 0, "one corner section of " + f.Label()
		}
	}
	if i == 0 || arms[0].length == 0 || arms[1].length == 0 {
		return arms, 0, "the sections of " + f.Label() + " in order: one arm, the corner section, the other arm"
	}
	return arms, corner, ""
}

// cornerGrounds lays the corner at the origin and the arms along the axes. The
// text does not tell which way the units face and from which end a row counts:
// each way is one ground.
func cornerGrounds(f *plant.Part, depth, offset float64) (list []ground, needs string) {
	arms, corner, needs := cornerArms(f)
	pitch := f.Child("pitch").First()
	switch {
	case needs != "":
		return nil, needs
	case !pitch.Known():
		return nil, "the pitch of the units"
	}
	end := [2]float64{corner + arms[0].length, corner + arms[1].length}
	edges, err := stability.Edges([]stability.Point{{}, {X: end[0]}, {X: end[0], Y: depth}, {X: depth, Y: end[1]}, {Y: end[1]}})
	if err != nil {
		return nil, "a frame that the sum covers: " + err.Error()
	}
	mass := corner + arms[0].length + arms[1].length // by length
	own := stability.Point{
		X: (corner*corner/2 + arms[0].length*(corner+end[0])/2 + arms[1].length*depth/2) / mass,
		Y: (corner*corner/2 + arms[1].length*(corner+end[1])/2 + arms[0].length*depth/2) / mass,
	}
	for way := range 8 {
		g := ground{edges: edges, own: own, at: map[*plant.Part]stability.Point{}}
		across := offset
		if way&1 != 0 {
			across = depth - offset
		}
		for i := range arms {
			units := arms[i].row.Refs("units")
			for k, ref := range units {
				along := (float64(k) - float64(len(units)-1)/2) * pitch.Num
				if way&(2<<i) != 0 {
					along = -along
				}
				along += corner + arms[i].length/2
				if i == 0 {
					g.at[ref.Part] = stability.Point{X: along, Y: across}
				} else {
					g.at[ref.Part] = stability.Point{X: across, Y: along}
				}
			}
		}
		list = append(list, g)
	}
	return list, ""
}

// frameLength is the length of the frame along its units in m: of one arm where
// two stand back to back, of both arms with the corner where they make an L.
func frameLength(f *plant.Part) (length float64, needs string) {
	sections := f.Children("section")
	for _, s := range sections {
		v := s.Get("length")
		if !v.Known() {
			return 0, "the length of " + s.Label()
		}
		length += v.Num
	}
	if len(sections) == 0 {
		return 0, "the sections of " + f.Label()
	}
	if rows := f.Children("row"); f.Get("layout").Is("back-to-back") && len(rows) > 1 {
		length /= float64(len(rows))
	}
	return length, ""
}
