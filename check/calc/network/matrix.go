package network

import "math/bits"

// matrix is a symmetric positive matrix with its factors L D L', held sparse.
// order finds, once for a network, which node to eliminate when (the one with
// the fewest neighbors left) and where every product of the elimination goes;
// factor and solve then only run through lists.
type matrix struct {
	n       int
	words   int
	near    []uint64 // bit rows of neighbors while ordering
	degree  []int32
	place   []int32 // junction -> place in the order
	who     []int32 // place -> junction
	first   []int32 // column -> first entry, n+1 of them
	row     []int32 // entry -> row
	target  []int32 // products in the order of elimination -> entry
	locate  []int32 // column*n+row -> entry, read only where written
	diag    []float64
	entry   []float64
	inverse []float64
}

// begin clears the matrix for n unknowns.
func (m *matrix) begin(n int) {
	m.n, m.words = n, (n+63)/64
	m.near = resize(m.near, n*m.words)
	clear(m.near)
	m.degree = resize(m.degree, n)
	m.place = resize(m.place, n)
	m.who = resize(m.who, n)
	m.first = resize(m.first, n+1)
	m.locate = resize(m.locate, n*n)
	m.diag = resize(m.diag, n)
	m.inverse = resize(m.inverse, n)
	m.row, m.target = m.row[:0], m.target[:0]
}

// join says that the junctions a and b share a link.
func (m *matrix) join(a, b int32) {
	m.near[int(a)*m.words+int(b>>6)] |= 1 << (b & 63)
	m.near[int(b)*m.words+int(a>>6)] |= 1 << (a & 63)
}

// order plans the elimination.
func (m *matrix) order() {
	const gone = 1 << 30
	n, w := m.n, m.words
	for v := range n {
		m.degree[v] = int32(count(m.near[v*w : v*w+w]))
	}
	for k := range n {
		v, least := 0, int32(gone)
		for u, d := range m.degree {
			if d < least {
				v, least = u, d
			}
		}
		m.degree[v] = gone
		m.place[v], m.who[k] = int32(k), int32(v)
		m.first[k] = int32(len(m.row))
		mine := m.near[v*w : v*w+w]
		for i, word := range mine {
			for ; word != 0; word &= word - 1 {
				u := i<<6 + bits.TrailingZeros64(word)
				m.row = append(m.row, int32(u))
				theirs := m.near[u*w : u*w+w]
				for j := range theirs {
					theirs[j] |= mine[j]
				}
				theirs[u>>6] &^= 1 << (u & 63)
				theirs[v>>6] &^= 1 << (v & 63)
				m.degree[u] = int32(count(theirs))
			}
		}
	}
	m.first[n] = int32(len(m.row))
	for e, v := range m.row {
		m.row[e] = m.place[v]
	}
	for k := range n {
		for e := m.first[k]; e < m.first[k+1]; e++ {
			m.locate[k*n+int(m.row[e])] = e
		}
	}
	for k := range n {
		rows := m.row[m.first[k]:m.first[k+1]]
		for i, r := range rows {
			for _, c := range rows[:i] {
				m.target = append(m.target, m.at(r, c))
			}
		}
	}
	m.entry = resize(m.entry, len(m.row))
}

// at is the entry between two places that are neighbors in the factor.
func (m *matrix) at(a, b int32) int32 {
	if a > b {
		a, b = b, a
	}
	return m.locate[int(a)*m.n+int(b)]
}

// factor turns the matrix in diag and entry into L and 1/D. The matrix must be
// positive, which links with a rising loss law and a pinned node in each part
// guarantee; it reports whether it was.
func (m *matrix) factor() bool {
	t := 0
	for k := range m.n {
		d := m.diag[k]
		if !(d > 0) {
			return false
		}
		inverse := 1 / d
		m.inverse[k] = inverse
		low, high := m.first[k], m.first[k+1]
		rows, values := m.row[low:high], m.entry[low:high]
		for i, value := range values {
			scaled := value * inverse
			m.diag[rows[i]] -= scaled * value
			for j := range i {
				// values[:i] are already divided by D.
				m.entry[m.target[t]] -= value * values[j]
				t++
			}
			values[i] = scaled
		}
	}
	return true
}

// solve replaces the right side b by the solution.
func (m *matrix) solve(b []float64) {
	for k := range m.n {
		v := b[k]
		for e := m.first[k]; e < m.first[k+1]; e++ {
			b[m.row[e]] -= m.entry[e] * v
		}
	}
	for k := m.n - 1; k >= 0; k-- {
		v := b[k] * m.inverse[k]
		for e := m.first[k]; e < m.first[k+1]; e++ {
			v -= m.entry[e] * b[m.row[e]]
		}
		b[k] = v
	}
}

func count(row []uint64) int {
	c := 0
	for _, word := range row {
		c += bits.OnesCount64(word)
	}
	return c
}

// resize returns a slice of that length, using the old memory where it does.
func resize[T any](old []T, n int) []T {
	if cap(old) >= n {
		return old[:n]
	}
	return make([]T, n, n+n/2)
}
