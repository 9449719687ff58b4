package topics

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"example.org/tundish/check/calc/network"
)

// NetworkForm is shown by "tundish calc water-network".
const NetworkForm = `One row for each node and link, in any order; the header names the columns.
kind         cells to fill
junction     id, demand [L/s] (0 where nothing is drawn, below 0 where water is fed in)
fixed        id, head [m]
pipe         id, from, to, length [m], bore [mm], roughness [mm], loss-coefficient [-]
check-valve  id, from, to, bore [mm], loss-coefficient [-] above 0; opens from "from" to "to"
pump         id, from, to, demand [L/s] and head [m] of its duty point: H = 4/3 h0 - h0/3 (q/q0)2.
             More rows with the same id are more points of its curve, flow rising, head not;
             then H = a - b q2 between neighbors. A pump alone lets water back: add a check-valve.
A column state holds "closed" for a link that is shut or a pump that is off, else "open" or nothing.
Cells a kind has no use for stay empty or 0.
Results: flow [L/s] from "from" to "to" and head-loss [m] of links (below 0: head gained in a pump),
head [m] of junctions, remark where a value needs one.`

// columns of a network table.
const (
	columnKind = iota
	columnID
	columnFrom
	columnTo
	columnLength
	columnBore
	columnRoughness
	columnLoss
	columnDemand
	columnHead
	columnState
	columnCount
)

var networkColumns = [columnCount]struct{ name, unit string }{
	{"kind", ""},
	{"id", ""},
	{"from", ""},
	{"to", ""},
	{"length", "m"},
	{"bore", "mm"},
	{"roughness", "mm"},
	{"loss-coefficient", "-"},
	{"demand", "L/s"},
	{"head", "m"},
	{"state", ""},
}

// networkNode and networkLink are rows that hold a node or a link.
type networkNode struct {
	row  int
	node network.Node
}

type networkLink struct {
	row  int // of a pump its first
	kind string
	link network.Link
}

// Network solves the water network of a table for water of a kinematic
// viscosity in m2/s and returns the same rows with the results: head [m] of
// junctions in the column head, and the columns flow [L/s], head-loss [m] and
// remark added. NetworkForm says what the rows hold. An error names row
// (1 is the header) and column.
//
// The method and its sources are those of package network.
func Network(rows [][]string, viscosity float64) ([][]string, error) {
	t, err := readNetwork(rows)
	if err != nil {
		return nil, err
	}
	s, err := network.New(viscosity)
	if err != nil {
		return nil, err
	}
	nodes, err := t.addNodes(s)
	if err != nil {
		return nil, err
	}
	links, err := t.addLinks(s, nodes)
	if err != nil {
		return nil, err
	}
	if err := s.Solve(); err != nil {
		return nil, t.explain(err, nodes, links)
	}
	return t.answer(s, nodes, links), nil
}

// explain gives the names of the table to an error of the solver.
func (t *networkTable) explain(err error, nodes map[string]networkNode, links []networkLink) error {
	if errors.Is(err, network.ErrNoFixedHead) {
		return errors.New("the table has no row of kind fixed: without a given head the heads have no level")
	}
	var path *network.PathError
	if errors.As(err, &path) {
		for id, n := range nodes {
			if n.node != path.Node {
				continue
			}
			if path.Closed {
				return fmt.Errorf("row %d, column demand [L/s]: junction %s has a demand, but closed links or check valves cut it off from every fixed head", n.row+1, id)
			}
			return fmt.Errorf("row %d, column id: junction %s is not connected with a fixed head", n.row+1, id)
		}
	}
	var outside *network.RangeError
	if errors.As(err, &outside) {
		for _, l := range links {
			if l.link == outside.Link {
				return fmt.Errorf("row %d, column bore [mm]: the Reynolds number in pipe %s is %.3g; the friction law holds to 1e8", l.row+1, t.cell(l.row, columnID), outside.Reynolds)
			}
		}
	}
	return err
}

// answer appends the results to the rows.
func (t *networkTable) answer(s *network.Solver, nodes map[string]networkNode, links []networkLink) [][]string {
	width := len(t.rows[0])
	out := make([][]string, len(t.rows))
	for i, row := range t.rows {
		out[i] = make([]string, width+3)
		copy(out[i], row)
	}
	copy(out[0][width:], []string{"flow [L/s]", "head-loss [m]", "remark"})
	for _, n := range nodes {
		if t.cell(n.row, columnKind) != "junction" {
			continue
		}
		r := s.Node(n.node)
		if !r.Known {
			out[n.row][t.at[columnHead]] = ""
			out[n.row][width+2] = "cut off from every fixed head by closed links: no head to tell"
			continue
		}
		out[n.row][t.at[columnHead]] = networkNumber(r.Head)
	}
	for _, l := range links {
		r := s.Link(l.link)
		cells := out[l.row][width:]
		cells[0] = networkNumber(r.Flow * 1000)
		if r.Open {
			cells[1] = networkNumber(r.Loss)
		}
		cells[2] = linkRemark(l.kind, r)
	}
	return out
}

func linkRemark(kind string, r network.LinkResult) string {
	switch {
	case r.Held:
		return "held shut by the head behind it"
	case !r.Open:
		return "closed"
	case r.Outside && r.Flow < 0:
		return "runs backwards: head beyond the points of the curve"
	case r.Outside:
		return "flow beyond the points of the curve: head extrapolated"
	case kind == "pipe" && r.Reynolds > 2000 && r.Reynolds < 4000:
		return fmt.Sprintf("Reynolds number %.0f, between laminar and turbulent flow: the loss is uncertain", r.Reynolds)
	}
	return ""
}

// networkNumber prints more digits than the method is exact to.
func networkNumber(v float64) string {
	if math.Abs(v) < 1e-12 {
		v = 0 // rounding of a flow or loss that is none
	}
	return strconv.FormatFloat(v, 'g', 10, 64)
}
