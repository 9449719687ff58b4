package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
)

// Fingerprint names a finding by what it says and not by where it stands, so
// that moved lines do not make it new.
func Fingerprint(f *JSONFinding) string {
	h := sha256.Sum256([]byte(f.File + "\x00" + f.Rule + "\x00" + f.Part + "\x00" + f.Severity))
	return hex.EncodeToString(h[:12])
}

// Baseline counts the findings of an earlier run by fingerprint.
type Baseline map[string]int

// ReadBaseline reads the JSON output of an earlier lint.
func ReadBaseline(r io.Reader) (Baseline, error) {
	d, err := ReadDocument(r)
	if err != nil {
		return nil, fmt.Errorf("reading the baseline: %w", err)
	}
	b := Baseline{}
	for i := range d.Findings {
		b[Fingerprint(&d.Findings[i])]++
	}
	return b, nil
}

// New tells whether a finding is not covered by the baseline; each finding of
// the baseline covers one.
func (b Baseline) New(f *JSONFinding) bool {
	k := Fingerprint(f)
	if b[k] > 0 {
		b[k]--
		return false
	}
	return true
}
