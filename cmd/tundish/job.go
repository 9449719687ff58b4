package main

import (
	"bytes"
	"iter"
	"slices"

	"example.org/tundish/lang"
)

// job is one specification to judge: its name as printed, and where its text lies.
type job struct {
	name string
	from source
}

// source is where the texts of jobs lie: a disk, an archive, standard input.
type source interface {
	// read gives the text of a job.
	read(name string) (string, error)
	// space is where the "use" of a job may move.
	space(name string) (*lintSpace, error)
}

// problemSource is a job without a text: what is wrong with an archive as a
// whole.
type problemSource struct {
	source
	problems []lang.Problem
}

// errorSource is a job that cannot be read; its error is told in its place, and
// the others go on.
type errorSource struct{ err error }

func (s errorSource) read(string) (string, error)      { return "", s.err }
func (s errorSource) space(string) (*lintSpace, error) { return nil, s.err }

// jobList holds the jobs of a run, a million if need be: names one behind the
// other in one block, and nothing that the garbage collector has to follow.
type jobList struct {
	names   []byte
	at      []place
	sources []source
}

type place struct {
	from   uint64
	length uint32
	source uint32
}

// source takes in a source and gives its number.
func (l *jobList) source(s source) uint32 {
	l.sources = append(l.sources, s)
	return uint32(len(l.sources) - 1)
}

func (l *jobList) add(name string, source uint32) {
	l.at = append(l.at, place{uint64(len(l.names)), uint32(len(name)), source})
	l.names = append(l.names, name...)
}

func (l *jobList) len() int { return len(l.at) }

func (l *jobList) name(p place) []byte { return l.names[p.from : p.from+uint64(p.length)] }

// order sorts by name and drops what one source lists twice.
func (l *jobList) order() {
	slices.SortStableFunc(l.at, func(a, b place) int { return bytes.Compare(l.name(a), l.name(b)) })
	l.at = slices.CompactFunc(l.at, func(a, b place) bool { return a.source == b.source && bytes.Equal(l.name(a), l.name(b)) })
}

// shard keeps the k-th of n parts of nearly equal length, neighbors together, so
// that the parts one after the other are the whole.
func (l *jobList) shard(k, n int) {
	total := len(l.at)
	l.at = l.at[(k-1)*total/n : k*total/n]
}

// all gives the jobs in order.
func (l *jobList) all() iter.Seq[job] {
	return func(yield func(job) bool) {
		for _, p := range l.at {
			if !yield(job{string(l.name(p)), l.sources[p.source]}) {
				return
			}
		}
	}
}
