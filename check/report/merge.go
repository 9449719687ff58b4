package report

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"sort"
)

// Shard says which part of a run a document is: the K-th of N, from 1.
type Shard struct {
	K int `json:"k"`
	N int `json:"n"`
}

// ReadDocument reads the JSON form of a lint run.
func ReadDocument(r io.Reader) (*Document, error) {
	d := NewDocument(Tool{})
	if err := json.NewDecoder(r).Decode(d); err != nil {
		return nil, fmt.Errorf("it is not the JSON output of lint: %w", err)
	}
	if d.Tool.Name == "" {
		return nil, errors.New("it is not the JSON output of lint: it names no tool")
	}
	return d, nil
}

// Merge joins the parts of one run to the document that one run would have
// given. Parts that are missing, stand twice or come from other versions of the
// tool are an error.
func Merge(docs []*Document) (*Document, error) {
	docs = append([]*Document(nil), docs...)
	for i, d := range docs {
		if d.Shard == nil {
			return nil, fmt.Errorf("part %d was not made by lint --shard", i+1)
		}
	}
	sort.SliceStable(docs, func(i, j int) bool { return docs[i].Shard.K < docs[j].Shard.K })
	n := docs[0].Shard.N
	out := NewDocument(docs[0].Tool)
	for i, d := range docs {
		switch {
		case d.Tool != out.Tool:
			return nil, fmt.Errorf("the parts come from %s %s and %s %s", out.Tool.Name, out.Tool.Version, d.Tool.Name, d.Tool.Version)
		case d.Shard.N != n:
			return nil, fmt.Errorf("one part is of %d, another of %d", n, d.Shard.N)
		case d.Shard.K < i+1:
			return nil, fmt.Errorf("part %d of %d stands twice", d.Shard.K, n)
		case d.Shard.K > i+1:
			return nil, fmt.Errorf("part %d of %d is missing", i+1, n)
		}
		out.Files += d.Files
		out.Findings = append(out.Findings, d.Findings...)
		out.NotEvaluated = append(out.NotEvaluated, d.NotEvaluated...)
	}
	if len(docs) != n {
		return nil, fmt.Errorf("part %d of %d is missing", len(docs)+1, n)
	}
	return out, nil
}

// Fails reports whether the document reaches a gate: error, warning, note or
// unknown. Findings of rules on trial do not count.
func (d *Document) Fails(gate string) bool {
	rank := map[string]int{"note": 1, "warning": 2, "error": 3}
	least, ok := rank[gate]
	if !ok {
		least = 1 // "unknown" counts everything
		if len(d.NotEvaluated) > 0 {
			return true
		}
	}
	for i := range d.Findings {
		if f := &d.Findings[i]; !f.OnTrial && rank[f.Severity] >= least {
			return true
		}
	}
	return false
}
