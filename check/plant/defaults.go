package plant

import (
	"sync"

	"example.org/tundish/lang"
)

var defaults sync.Map // *lang.Slot -> Value

// slotDefault reads the sourced default of a slot once; a slot without one
// gives silence.
func slotDefault(s *lang.Slot) Value {
	if s.Default == "" {
		return Value{}
	}
	if v, ok := defaults.Load(s); ok {
		return v.(Value)
	}
	v := Value{Given: true, State: lang.Known, Slot: s, Origin: Default, Word: s.Default}
	if s.Type == lang.QuantityType {
		num, num2, _, unit, err := lang.ParseQuantity(s.Default)
		if err != nil || unit == nil {
			return Value{} // the schema's own test reports a default that cannot be read
		}
		v.Num, v.Num2 = lang.ToSI(num, unit), lang.ToSI(num2, unit)
	}
	defaults.Store(s, v)
	return v
}
