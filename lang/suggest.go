package lang

import (
	"sort"
	"strings"
	"sync"
)

// Suggest gives the candidate most like a word that nobody knows; empty when
// none is near enough. Ties go to the first in order of the alphabet.
func Suggest(word string, candidates []string) string {
	list := append([]string(nil), candidates...)
	sort.Strings(list)
	best, bestAt := "", 1+max(1, min(3, len(word)/3))
	low := strings.ToLower(word)
	for _, c := range list {
		if c == word || len(c)-len(word) > bestAt || len(word)-len(c) > bestAt {
			continue
		}
		d := distance(low, strings.ToLower(c), bestAt)
		if strings.EqualFold(word, c) {
			d = 0
		}
		if d < bestAt {
			best, bestAt = c, d
		}
	}
	return best
}

// distance counts insertions, deletions, changes and swaps of neighbors, up to
// a limit.
func distance(a, b string, limit int) int {
	if len(a)-len(b) >= limit || len(b)-len(a) >= limit || len(a) > 64 || len(b) > 64 {
		return limit
	}
	var rows [3][66]int
	prev, cur, before := &rows[0], &rows[1], &rows[2]
	for j := 0; j <= len(b); j++ {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], before[j-2]+1)
			}
		}
		before, prev, cur = prev, cur, before
	}
	return prev[len(b)]
}

// foreignUnits are spellings that people write and the unit they mean.
var foreignUnits = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"C": "degC", "°C": "degC", "℃": "degC", "°F": "degF", "m²": "m2", "m³": "m3", "cm²": "cm2", "mm²": "mm2", "m³/h": "m3/h", "m3h": "m3/h",
		"cbm": "m3", "kw": "kW", "KW": "kW", "Kw": "kW", "mw": "MW", "litres": "l", "liters": "l", "litre": "l", "liter": "l", "ltr": "l", "lt": "l",
		"bars": "bar", "barg": "bar", "mbarg": "mbar", "psig": "psi", "pa": "Pa", "kpa": "kPa", "KPa": "kPa", "KPA": "kPa", "mb": "mbar", "metre": "m", "metres": "m", "meter": "m",
		"meters": "m", "sec": "s", "secs": "s", "seconds": "s", "mins": "min", "minutes": "min", "hr": "h", "hrs": "h", "hours": "h", "day": "d", "days": "d",
		"pcs": "off", "pc": "off", "no": "off", "nos": "off", "nr": "off", "x": "off", "each": "off", "ea": "off", "percent": "%", "pct": "%",
		"degrees": "deg", "°": "deg", "inch": "in", "inches": "in", "feet": "ft", "foot": "ft", "lbs": "lb", "kgs": "kg", "inwc": "inWC", "inH2O": "inWC",
		"wc": "inWC", "ftH2O": "ftWC", "btu/h": "Btu/h", "BTU/h": "Btu/h", "Btuh": "Btu/h", "BTUH": "Btu/h", "kBtu/h": "MBH", "MBtuh": "MBH", "GPM": "gpm",
		"CFM": "cfm", "cfh": "ft3/h", "CFH": "ft3/h", "ft/m": "ft/min", "fpm": "ft/min", "degc": "degC", "degf": "degF", "deltaK": "K", "W/m.K": "W/mK", "W/m2.K": "W/m2K",
		"W/m²K": "W/m2K", "µS/cm": "uS/cm", "μS/cm": "uS/cm", "ohm": "", "dH": "degdH", "°dH": "degdH", "ph": "pH", "PH": "pH", "PPM": "ppm", "LEL": "%LEL", "ls": "l/s", "lps": "l/s",
		"kg/hr": "kg/h", "m3/hr": "m3/h", "l/hr": "l/h", "mm/metre": "mm/m", "MJ/m³": "MJ/m3", "kWh/m³": "kWh/m3", "sqm": "m2", "kn/m2": "kN/m2", "kN/m²": "kN/m2",
	}
})

var unitSymbols = sync.OnceValue(func() []string {
	out := make([]string, len(units))
	for i := range units {
		out[i] = units[i].Symbol
	}
	return out
})

// SuggestUnit gives the unit that a spelling most likely means; with a
// dimension only units of it count.
func SuggestUnit(symbol string, d Dimension) string {
	if s := foreignUnits()[symbol]; s != "" {
		if u, _ := LookupUnit(s); d == NoDimension || u != nil && u.Dim == d {
			return s
		}
	}
	if d == NoDimension {
		return Suggest(symbol, unitSymbols())
	}
	var list []string
	for i := range units {
		if units[i].Dim == d {
			list = append(list, units[i].Symbol)
		}
	}
	return Suggest(symbol, list)
}
