package topics

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/tundish/check/calc/network"
)

// networkTable is a table whose header has been understood.
type networkTable struct {
	rows [][]string
	at   [columnCount]int // where each column stands, -1: absent
}

// readNetwork finds the columns and checks the shape of the table.
func readNetwork(rows [][]string) (*networkTable, error) {
	if len(rows) < 2 {
		return nil, fmt.Errorf("the table needs a header and rows; it has %d rows", len(rows))
	}
	t := &networkTable{rows: rows}
	for c := range t.at {
		t.at[c] = -1
	}
	for i, cell := range rows[0] {
		name, unit := headerCell(cell)
		c := 0
		for c < columnCount && networkColumns[c].name != name {
			c++
		}
		switch {
		case c == columnCount:
			return nil, fmt.Errorf("row 1, column %q: not a column of this table; there are %s", cell, columnNames())
		case t.at[c] >= 0:
			return nil, fmt.Errorf("row 1, column %s: stands there twice", columnTitle(c))
		case unit != networkColumns[c].unit && (unit != "" || networkColumns[c].unit != "-"):
			return nil, fmt.Errorf("row 1, column %q: the header must read %s", cell, columnTitle(c))
		}
		t.at[c] = i
	}
	for c, i := range t.at {
		if i < 0 && c != columnState {
			return nil, fmt.Errorf("row 1: column %s is missing", columnTitle(c))
		}
	}
	for i, row := range rows {
		if len(row) > len(rows[0]) {
			return nil, fmt.Errorf("row %d has %d cells, the header %d", i+1, len(row), len(rows[0]))
		}
	}
	return t, nil
}

// headerCell splits "name [unit]".
func headerCell(cell string) (name, unit string) {
	cell = strings.TrimSpace(strings.TrimPrefix(cell, "\ufeff")) // some editors mark the begin of a file
	name, unit, found := strings.Cut(cell, "[")
	if found {
		unit = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(unit), "]"))
	}
	return strings.TrimSpace(name), unit
}

func columnTitle(c int) string {
	if u := networkColumns[c].unit; u != "" {
		return networkColumns[c].name + " [" + u + "]"
	}
	return networkColumns[c].name
}

func columnNames() string {
	names := make([]string, columnCount)
	for c := range names {
		names[c] = columnTitle(c)
	}
	return strings.Join(names, ", ")
}

// cell is the text of a cell, "" where the row or the table ends before it.
func (t *networkTable) cell(row, column int) string {
	if i := t.at[column]; i >= 0 && i < len(t.rows[row]) {
		return strings.TrimSpace(t.rows[row][i])
	}
	return ""
}

func (t *networkTable) empty(row int) bool {
	for _, cell := range t.rows[row] {
		if strings.TrimSpace(cell) != "" {
			return false
		}
	}
	return true
}

func (t *networkTable) fault(row, column int, format string, args ...any) error {
	return fmt.Errorf("row %d, column %s: %s %s %s", row+1, columnTitle(column),
		t.cell(row, columnKind), t.cell(row, columnID), fmt.Sprintf(format, args...))
}

// number reads a cell that must be filled.
func (t *networkTable) number(row, column int) (float64, error) {
	text := t.cell(row, column)
	if text == "" {
		hint := ""
		if column == columnDemand || column == columnLoss || column == columnRoughness {
			hint = "; write 0 where it is none"
		}
		return 0, t.fault(row, column, "has no %s%s", networkColumns[column].name, hint)
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, t.fault(row, column, "has %q, which is not a number", text)
	}
	return v, nil
}

// unused refuses cells that the kind has no use for: a value in one is
// misplaced, or meant for another kind.
func (t *networkTable) unused(row int, columns ...int) error {
	for _, c := range columns {
		text := t.cell(row, c)
		if v, err := strconv.ParseFloat(text, 64); text != "" && (err != nil || v != 0) {
			return t.fault(row, c, "has %s %s, which this kind has no use for", networkColumns[c].name, text)
		}
	}
	return nil
}

// addNodes adds the junctions and fixed heads.
func (t *networkTable) addNodes(s *network.Solver) (map[string]networkNode, error) {
	nodes := make(map[string]networkNode)
	for row := 1; row < len(t.rows); row++ {
		if t.empty(row) {
			continue
		}
		var column int
		var add func(float64) (network.Node, error)
		kind, id := t.cell(row, columnKind), t.cell(row, columnID)
		switch kind {
		case "junction":
			column, add = columnDemand, func(v float64) (network.Node, error) { return s.AddJunction(v / 1000) }
		case "fixed":
			column, add = columnHead, s.AddFixed
		case "pipe", "pump", "check-valve":
			continue
		default:
			return nil, fmt.Errorf("row %d, column kind: %q is not a kind; there are pipe, junction, fixed, pump, check-valve", row+1, kind)
		}
		if id == "" {
			return nil, fmt.Errorf("row %d, column id: a %s without id", row+1, kind)
		}
		if n, twice := nodes[id]; twice {
			return nil, fmt.Errorf("row %d, column id: node %s stands already in row %d", row+1, id, n.row+1)
		}
		other := columnDemand + columnHead - column
		if err := t.unused(row, columnFrom, columnTo, columnLength, columnBore, columnRoughness, columnLoss, other, columnState); err != nil {
			return nil, err
		}
		v, err := t.number(row, column)
		if err != nil {
			return nil, err
		}
		n, err := add(v)
		if err != nil {
			return nil, t.fault(row, column, "is refused: %v", err)
		}
		nodes[id] = networkNode{row, n}
	}
	return nodes, nil
}

// addLinks adds pipes, check valves and pumps.
func (t *networkTable) addLinks(s *network.Solver, nodes map[string]networkNode) ([]networkLink, error) {
	var links []networkLink
	seen := make(map[string]int) // id -> row
	for row := 1; row < len(t.rows); row++ {
		kind, id := t.cell(row, columnKind), t.cell(row, columnID)
		if kind == "" || kind == "junction" || kind == "fixed" {
			continue
		}
		if id == "" {
			return nil, fmt.Errorf("row %d, column id: a %s without id", row+1, kind)
		}
		if first, twice := seen[id]; twice {
			if kind == "pump" && t.cell(first, columnKind) == "pump" {
				continue // one more point, read with the first row
			}
			return nil, fmt.Errorf("row %d, column id: link %s stands already in row %d", row+1, id, first+1)
		}
		seen[id] = row
		from, err := t.end(row, columnFrom, nodes)
		if err != nil {
			return nil, err
		}
		to, err := t.end(row, columnTo, nodes)
		if err != nil {
			return nil, err
		}
		if from == to {
			return nil, t.fault(row, columnTo, "leads from node %s to itself", t.cell(row, columnTo))
		}
		var l network.Link
		switch kind {
		case "pipe":
			l, err = t.addPipe(s, row, from, to)
		case "check-valve":
			l, err = t.addCheckValve(s, row, from, to)
		default:
			l, err = t.addPump(s, row, from, to)
		}
		if err != nil {
			return nil, err
		}
		switch state := t.cell(row, columnState); state {
		case "", "open":
		case "closed":
			s.SetOpen(l, false)
		default:
			return nil, t.fault(row, columnState, "has state %q; there are open and closed", state)
		}
		links = append(links, networkLink{row, kind, l})
	}
	return links, nil
}

// end finds the node at one end of a link.
func (t *networkTable) end(row, column int, nodes map[string]networkNode) (network.Node, error) {
	id := t.cell(row, column)
	if id == "" {
		return 0, t.fault(row, column, "has no node here")
	}
	n, ok := nodes[id]
	if !ok {
		return 0, t.fault(row, column, "names node %s, which no row of kind junction or fixed holds", id)
	}
	return n.node, nil
}

func (t *networkTable) addPipe(s *network.Solver, row int, from, to network.Node) (network.Link, error) {
	var v [columnCount]float64
	var err error
	for _, c := range []int{columnLength, columnBore, columnRoughness, columnLoss} {
		if v[c], err = t.number(row, c); err != nil {
			return 0, err
		}
	}
	if err := t.unused(row, columnDemand, columnHead); err != nil {
		return 0, err
	}
	for _, c := range []int{columnLength, columnBore} {
		if v[c] <= 0 {
			return 0, t.fault(row, c, "has %s %g; it must be above 0", networkColumns[c].name, v[c])
		}
	}
	if v[columnRoughness] < 0 || v[columnRoughness] > 0.05*v[columnBore] {
		return 0, t.fault(row, columnRoughness, "has roughness %g mm; the friction law holds from 0 to 0.05 of the bore, %.4g mm", v[columnRoughness], 0.05*v[columnBore])
	}
	if v[columnLoss] < 0 {
		return 0, t.fault(row, columnLoss, "has loss-coefficient %g; it must be 0 or more", v[columnLoss])
	}
	l, err := s.AddPipe(from, to, network.Pipe{
		Length: v[columnLength], Bore: v[columnBore] / 1000, Roughness: v[columnRoughness] / 1000, Loss: v[columnLoss],
	})
	if err != nil {
		return 0, t.fault(row, columnID, "is refused: %v", err)
	}
	return l, nil
}

func (t *networkTable) addCheckValve(s *network.Solver, row int, from, to network.Node) (network.Link, error) {
	if err := t.unused(row, columnLength, columnRoughness, columnDemand, columnHead); err != nil {
		return 0, err
	}
	var v [columnCount]float64
	var err error
	for _, c := range []int{columnBore, columnLoss} {
		if v[c], err = t.number(row, c); err != nil {
			return 0, err
		}
		if v[c] <= 0 {
			return 0, t.fault(row, c, "has %s %g; it must be above 0", networkColumns[c].name, v[c])
		}
	}
	l, err := s.AddFitting(from, to, v[columnBore]/1000, v[columnLoss], true)
	if err != nil {
		return 0, t.fault(row, columnID, "is refused: %v", err)
	}
	return l, nil
}

// addPump gathers the points of a pump from its rows.
func (t *networkTable) addPump(s *network.Solver, first int, from, to network.Node) (network.Link, error) {
	var points []network.Point
	for row := first; row < len(t.rows); row++ {
		if t.cell(row, columnKind) != "pump" || t.cell(row, columnID) != t.cell(first, columnID) {
			continue
		}
		for _, c := range []int{columnFrom, columnTo, columnState} {
			if text := t.cell(row, c); text != "" && text != t.cell(first, c) {
				return 0, t.fault(row, c, "has %q here, in row %d %q", text, first+1, t.cell(first, c))
			}
		}
		if err := t.unused(row, columnLength, columnBore, columnRoughness, columnLoss); err != nil {
			return 0, err
		}
		flow, err := t.number(row, columnDemand)
		if err != nil {
			return 0, err
		}
		head, err := t.number(row, columnHead)
		if err != nil {
			return 0, err
		}
		points = append(points, network.Point{Flow: flow / 1000, Head: head})
	}
	l, err := s.AddPump(from, to, points, false)
	if err != nil {
		return 0, t.fault(first, columnHead, "is refused: %v", err)
	}
	return l, nil
}
