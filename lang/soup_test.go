package lang

import (
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"
)

// pieces are what texts consist of, and what readers stumble over.
var pieces = []string{
	"\n", "\n", "\n", "\r\n", "\r", " ", " ", "  ", "\t", "{", "}", "{\n", "}\n", " {\n", "\n}\n", "(", ")", "\"", "\"a b\"", "# c", " # c\n", ",", ", ", "..", ".", "-", " - ", " + ", "*", "/", " <= ", "<", ">=",
	"1", "12", "0.5", "-1", "1/4", "80/60", "1 1/4 in", "17.5..25 mbar", "22 mm", "75 degC", "8 off", "10 %", " m", " kW", "degC", "in", "%", "\u00b0C", "\u00b5S/cm", "U1", "U8", "U1..U8", "Flow-H", "Flow-H.velocity", "DN80", "M16", "DN", "2026-01-02", "1974-01",
	"plant", "plant \"x\"", "use \"c.plant\"", "catalogue \"c\"", "record \"r\"", "project \"p\"", "basis {\n", "units U1..U8 {\n", "gas-run {\n", "pipe G1 steel DN50 16 m", "from", "to", "bends 2 off", "require", "because", "deviation", "load Heating", "limiter", "trap", "unknown", "none", "steel",
	"person D1 role designer\n", "altitude 84 m\n", "require U1.output >= (basis.load + 2 kW) because \"x\"\n", "caution gas \"x\"\n", "\ufeff", "\u00e9", "\u0085", "\u00a0", "\u2028", "\x00", "_", "`", "@", "\U000c58ae", "\x0b", "\x0c",
}

func soup(r *rand.Rand) string {
	var b strings.Builder
	for range 1 + r.IntN(24) {
		b.WriteString(pieces[r.IntN(len(pieces))])
		if r.IntN(3) == 0 {
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// Texts thrown together from the pieces of the language break no reader and lose
// nothing when they are formatted. TUNDISH_SOUP sets another number of them.
func TestSoup(t *testing.T) {
	n := 20000
	if s := os.Getenv("TUNDISH_SOUP"); s != "" {
		var err error
		if n, err = strconv.Atoi(s); err != nil {
			t.Fatal(err)
		}
	}
	cache := NewRepeatCache(256 << 10)
	checkFormat(t, "\nfrom (steel\n17.5\r\r\n\u00b0C")
	checkFormat(t, "\r\ufeff8 off")
	for seed := range uint64(n) {
		text := soup(rand.New(rand.NewPCG(seed, uint64(n))))
		checkFormat(t, text)
		checkParse(t, cache, text)
	}
}
