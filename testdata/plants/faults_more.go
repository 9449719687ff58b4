package plants

import (
	"fmt"
	"regexp"
	"strings"
)

// inUnits puts a line into the block of the units.
func inUnits(rule, text string, also ...string) Fault {
	return fault(rule, `^(units .*\{\n)`, "$1  "+text+"\n", also...)
}

// inGas puts a line at the head of the gas run.
func inGas(rule, text string, also ...string) Fault {
	return fault(rule, `^(gas-run \{\n)`, "$1  "+text+"\n", also...)
}

// behind puts lines behind the last one.
func behind(rule, text string, also ...string) Fault { return fault(rule, `\z`, text, also...) }

// exchanged is a fault of a plant whose circuits lie behind a plate exchanger.
func exchanged(rule, old, to string, also ...string) Fault {
	f := fault(rule, old, to, also...)
	f.base = behindExchanger
	return f
}

// ventilated is a fault of a plant whose room is supplied by a fan.
func ventilated(rule, old, to string, also ...string) Fault {
	f := fault(rule, old, to, also...)
	f.base = byFan
	return f
}

// cooler is a fault of a plant that works at 70/50 degC.
func cooler(rule, old, to string, also ...string) Fault {
	f := fault(rule, old, to, also...)
	f.base = func(text string) string {
		return regexp.MustCompile(` 75/55 degC`).ReplaceAllString(text, " 70/50 degC")
	}
	return f
}

// moreFaults are those of parts that the plants have only after a sound change, of
// pieces that have a second way to fail, and of the text.
var moreFaults = []Fault{
	// Units.
	fault("output-more-than-input", `^(units .*\{\n +type +Wall-100\n)`, "$1  output 102 kW at 75/55 degC\n  output 118 kW at 50/30 degC\n", "relief-too-small"),
	inUnits("unit-flow-too-small", "flow-least 9 m3/h"),
	inUnits("co2-unusual", "flue-data {\n    co2 14 % at full\n  }"),
	inUnits("flue-too-long", "flue-data {\n    length-limit 1 m bend 1.5 m\n  }"),
	fault("units-oversized", `standby +1 unit((?:.*\n)+?)units U1\.\.U([2-5]) `, "standby 0 unit${1}units U1..U$2 ", "separator-warms-return"),
	fault("starts-too-often", `(safety \{\n(?:.*\n)+? *content) +\d+ l primary((?:.*\n)+?.*swing) 10 K`, "$1 60 l primary$2 1 K"),
	fault("low-water-missing", `^ *low-water .*\n((?:.*\n)+?.*plant-room) ground((?:.*\n)+?) *pressurisation .*\n`, "$1 roof$2", "unknown-name"),
	cooler("return-above-dew-point", `primary 70/50 degC`, "primary 75/55 degC", "output-for-other-temperatures"),
	// Gas.
	inGas("booster-without-inlet-switch", "booster 2 mbar non-return"),
	inGas("regulator-vents-indoors", "regulator Reg   60 mbar inlet 21 mbar outlet vents-to inside slam-shut"),
	inGas("second-protection-missing", "regulator Reg   75 mbar inlet 21 mbar outlet vents-to outside"),
	inGas("stated-gas-rate-contradicts", "section of G1 1 m3/h"),
	inGas("duct-opening-too-small", "duct 0.04 m2 opening 0.02 m2 around G1"),
	fault("gas-fittings-not-counted", `(pipe G2 .*) bends 1 off((?:.*\n)+?) *fitting-allowance 10 %\n`, "$1$2"),
	fault("gas-returns-unproved", `fail-closed manual-reset`, "fail-closed"),
	steps("gas-margin-used-up", `(pipe G1 +steel DN\d+) \S+ m`, "$1 {} m", metres, "purge-too-little", "gas-test-too-short", "test-standard-unfit"),
	steps("gas-too-fast", `(units U1\.\.U[5-8] \{\n(?:.*\n)+? *pipe G1 +steel) DN\d+ \S+ m`, "$1 DN{} 0.3 m", []string{"65", "50", "40", "32", "25", "20"}, "gas-drop-over-limit", "gas-margin-used-up", "unit-gas-pressure-low"),
	// Water.
	steps("pipe-too-fast", `(pipe PF +steel) DN\d+ \S+ m (from .*) bends 3 off`, "$1 DN{} 0.3 m $2", []string{"100", "80", "65", "50", "40", "32", "25"}, "pipe-gradient-high"),
	fault("units-out-of-balance", `branch FB1\.\.FB([3-8]) +(steel) (DN\d+) (1.2 m from) U1\.\.U[3-8] `, "branch FB1 steel DN15 $4 U1 to Flow-H\n  branch FB2..FB$1 $2 $3 $4 U2..U$1 ", "pump-too-weak", "separator-starves-circuits", "unit-flow-too-small"),
	fault("unit-not-on-headers", `(branch RB1)\.\.RB\d+( .* to) U1\.\.U\d+`, "$1$2 U1", "unknown-name"),
	// Behind an exchanger.
	exchanged("exchanger-too-small", `area \S+ m2`, "area 0.5 m2"),
	exchanged("exchanger-temperatures-cross", `primary 75/55 degC secondary 70/50 degC`, "primary 75/55 degC secondary 76/50 degC"),
	exchanged("exchanger-approach-wide", `primary 75/55 degC secondary 70/50 degC`, "primary 75/55 degC secondary 70/40 degC"),
	exchanged("secondary-without-relief", `^ *relief Rel-S .*\n *discharge Dis-S .*\n`, ""),
	// Flue and condensate.
	fault("chimney-approval-missing", `(units U1\.\.U[678] \{\n(?:.*\n)+?) *chimney-approval .*\n`, "$1"),
	fault("flue-class-for-outdoors", `(header Head-F .*class T120-)P1`, "${1}P2"),
	fault("flue-pressure-over-class", `(header Head-F .*class T120-)P1`, "${1}N1"),
	fault("flue-too-hot-for-class", `(header Head-F .*class )T120`, "${1}T80"),
	steps("flue-speed-high", `(riser Riser +polypropylene) DN\d+`, "$1 DN{}", []string{"250", "200", "180", "160", "125", "110"}, "flue-push-too-weak", "flue-pressure-over-class", "trap-seal-too-small"),
	fault("mixed-units-on-flue", `^units U1\.\.U2 \{\n((?:  .*\n)+?)\}`, "units U1 {\n$1}\n\nunits U2 {\n  kind condensing open-flued natural-draught\n$1}"),
	fault("neutraliser-missing", `(units U1\.\.U[4-8] \{\n(?:.*\n)+?) *neutraliser .*\n`, "$1", "unknown-name"),
	fault("drain-may-freeze", `(pipe Cond-main .*)`, "$1 route outside", "caution-missing"),
	// Air.
	ventilated("fan-not-interlocked", `(fan Fan-S .*) proved stops-firing`, "$1"),
	ventilated("room-only-extracted", `fan Fan-S +supply`, "fan Fan-S extract", "supply-too-small", "room-under-pressure"),
	ventilated("supply-too-small", `(fan Fan-S +supply) \d+ m3/h`, "$1 30 m3/h", "room-under-pressure"),
	ventilated("room-under-pressure", `(fan Fan-E +extract) \d+ m3/h`, "$1 9000 m3/h", "supply-too-small"),
	fault("propane-without-floor-opening", `gas             natural 38.9 MJ/m3 gross relative-density 0.6 ratio`, "gas propane 95 MJ/m3 gross relative-density 1.5 ratio", "detector-at-wrong-height", "condenses-too-little"),
	// Electrical.
	fault("damper-unwired", `(damper +)non-return( DN\d+) spring((?:.*\n)+?) *wire \S+\.damper .*\n`, "${1}motorized$2$3"),
	fault("wrong-terminal", `(\.damper .*) X4((?:.*\n)+?.*\.pump .*) X6`, "$1 X6$2 X4"),
	fault("sensor-unwired", `(sensor Sen-P .*) to Pan terminal X20`, "$1"),
	// The text.
	fault("block-missing", `^water-quality \{\n(?:.*\n)+?\}\n`, "water-quality\n"),
	fault("block-not-wanted", `^(caution gas .*)\n`, "$1 {\n}\n"),
	behind("block-too-deep", strings.Repeat("basis {\n", 40)+strings.Repeat("}\n", 40), "unknown-statement", "statement-twice", "statement-missing"),
	behind("brace-astray", "}\n"),
	fault("brace-missing", `^(handover \{\n(?:  .*\n)+)\}\n`, "$1"),
	behind("cannot-read", "require ( <= 1 m because \"x\"\n"),
	fault("circular-use", `(use "catalogue.plant")\n`, "$1\nuse \"circle.plant\"\n"),
	fault("use-too-deep", `(use "catalogue.plant")\n`, "$1\nuse \"chain-1.plant\"\n"),
	fault("use-outside", `(use "catalogue.plant")\n`, "$1\nuse \"/etc/catalogue.plant\"\n"),
	fault("file-missing", `(use "catalogue.plant")\n`, "$1\nuse \"lost.plant\"\n"),
	line("file-kind-missing", `plant "`),
	behind("file-too-large", "#"+strings.Repeat(" x", 2<<20)+"\n", AnyRule),
	behind("too-many-statements", strings.Repeat("a\n", 100_000), AnyRule),
	fault("group-length", `(branch FB1\.\.FB[3-8] .*from) U1\.\.U[3-8]`, "$1 U1..U2", "unit-not-on-headers"),
	fault("name-missing", `pipe G2 `, "pipe "),
	fault("name-reserved", `pipe G2 `, "pipe DN2 "),
	behind("not-text", "# \xff\n"),
	fault("statement-missing", `^basis \{\n(?:  ?\S.*\n)+\}\n`, "", "requirement-not-met", "unknown-name"),
	fault("statement-twice", `^( *altitude .*\n)`, "$1$1"),
	fault("unknown-statement", `altitude `, "altitud "),
	fault("unknown-unit", `(load Heating +\d+) kW`, "$1 kw"),
	fault("value-left-over", `(altitude +\d+ m)`, "$1 20 m"),
	fault("value-missing", `load Heating .*`, "load Heating"),
	fault("value-twice", `(pipe G2 .*)bends 1 off`, "${1}bends 1 off bends 2 off"),
	fault("wrong-form", `(altitude +)\d+ m`, "${1}10..20 m"),
	fault("wrong-part", `^(units .*\{\n +type) +\S+`, "$1 Ring-32-80"),
	fault("wrong-value", `date 2026-01-19`, "date 2026-02-30"),
}

// AnyRule stands in Also for every rule: what is not read at all may be missed by
// any of them.
const AnyRule = "*"

// metres are lengths to try, each a little longer.
var metres = func() (out []string) {
	for m := 6.0; m < 1000; m *= 1.03 {
		out = append(out, fmt.Sprintf("%.1f", m))
	}
	return out
}()

// behindExchanger puts a plate exchanger in the place of the separator, with what
// that asks for on both sides.
func behindExchanger(text string) string {
	for _, e := range []struct{ old, to string }{
		{`secondary       75/55 degC`, "secondary       70/50 degC"},
		{`separator Sep .*`, "exchanger Sep area 90 m2 conductance 3000 W/m2K primary 75/55 degC secondary 70/50 degC insulated"},
		{`  thermometer     on Sep\n`, ""},
		{`(circuit \S+ +\S+ m3/h \d+ kPa) 75/55 degC`, "$1 70/50 degC"},
		{`(  flushing +)\d+ l secondary`, "${1}9000 l secondary"},
		{`(  content) +(\d+) l primary\n`, "$1 250 l primary\n$1 $2 l secondary\n  weakest 6 bar secondary\n  static 0.7 bar secondary\n  fill 1.3 bar secondary\n  vessel Ves-S 900 l precharge 1.0 bar secondary lockable-valve drain rating 6 bar\n  relief Rel-S DN50 3 bar discharges-to Tun-A\n  discharge Dis-S steel DN65 1.8 m from Rel-S to Tun-A elbows 2 off falls 10 mm/m visible\n"},
		{`  discharge +copper`, "  discharge Dis-P copper"},
	} {
		text = regexp.MustCompile(columns.ReplaceAllString(e.old, " +")).ReplaceAllString(text, e.to)
	}
	return text
}

// byFan puts fans in the place of the louvres.
func byFan(text string) string {
	text = regexp.MustCompile(`(?m)^ *opening High .*\n`).ReplaceAllString(text, "  fan Fan-S supply 4000 m3/h proved stops-firing\n")
	return regexp.MustCompile(`(?m)^ *opening Low .*\n`).ReplaceAllString(text, "  fan Fan-E extract 2000 m3/h proved stops-firing\n")
}
