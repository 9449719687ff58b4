package tables

import (
	"crypto/sha256"
	"encoding/hex"
)

// Hash is the SHA-256 of the tables, hexadecimal: two runs with the same hash
// held their values against the same limits.
func Hash() string {
	h := sha256.New()
	for _, text := range []string{limitsCSV, sizesCSV, flangesCSV} {
		h.Write([]byte(text))
		h.Write([]byte{0})
	}
	return hex.EncodeToString(h.Sum(nil))
}
