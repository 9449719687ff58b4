package plants

import (
	"regexp"
	"strings"
)

// Fault is one thing to break in a sound plant.
type Fault struct {
	Rule string // the rule that must find it
	// Also are rules that may speak too, because the same fault breaks what they
	// watch: a pipe too thin is fast as well.
	Also []string
	base func(string) string // a sound change that makes room for the fault
	old  *regexp.Regexp
	new  []string // ways to break it, the next where the one before is too mild
}

// Break puts the fault into the text of a sound plant; ok is false where the
// plant has nothing of the kind.
func (f *Fault) Break(text string) (broken string, ok bool) {
	text = f.Base(text)
	at := f.old.FindStringSubmatchIndex(text)
	if at == nil {
		return text, false
	}
	return f.put(text, at, f.new[0]), true
}

// Base is the sound text that the fault is put into.
func (f *Fault) Base(text string) string {
	if f.base != nil {
		return f.base(text)
	}
	return text
}

// Breaks gives the text with the fault in each degree, from the mildest; none
// where the plant has nothing of the kind.
func (f *Fault) Breaks(text string) []string {
	text = f.Base(text)
	at := f.old.FindStringSubmatchIndex(text)
	if at == nil {
		return nil
	}
	out := make([]string, len(f.new))
	for i, to := range f.new {
		out[i] = f.put(text, at, to)
	}
	return out
}

func (f *Fault) put(text string, at []int, to string) string {
	return text[:at[0]] + string(f.old.ExpandString(nil, to, text, at)) + text[at[1]:]
}

// fault makes an entry. The patterns count in lines: "^" and "$" are ends of a
// line. Columns are a matter of taste: several blanks stand for any number.
func fault(rule, old, to string, also ...string) Fault {
	return Fault{Rule: rule, Also: also, old: regexp.MustCompile("(?m)" + columns.ReplaceAllString(old, " +")), new: []string{to}}
}

// steps makes an entry with a fault in several degrees, which stand for "{}".
func steps(rule, old, to string, degrees []string, also ...string) Fault {
	f := fault(rule, old, "", also...)
	f.new = nil
	for _, d := range degrees {
		f.new = append(f.new, strings.ReplaceAll(to, "{}", d))
	}
	return f
}

var columns = regexp.MustCompile(` {2,}`)

// line takes a whole line out.
func line(rule, start string, also ...string) Fault {
	return fault(rule, `^ *`+start+`.*\n`, "", also...)
}

// Faults are the kinds of fault, by the rule that must find each.
var Faults = append([]Fault{
	// Basis and capacity.
	fault("units-too-small", `load Heating .*`, "load Heating 990 kW heating", "reserve-not-met", "requirement-not-met"),
	fault("reserve-not-met", `standby .*`, "standby 7 unit", "separator-starves-circuits"),
	fault("margins-compounded", `(  load-least.*)`, "$1\n  margin          emitters 10 % units 15 %", "units-too-small", "reserve-not-met", "requirement-not-met"),
	fault("least-load-not-reached", `load-least .*`, "load-least 4 kW summer", "starts-too-often"),
	fault("switching-points-close", `release         last 35 %`, "release         last 50 %"),
	fault("release-not-reached", `release         last 35 %`, "release         last 10 %"),
	fault("condenses-too-little", `primary         75/55 degC((?:.*\n)+? *load-curve )`, "primary         84/74 degC$1", "output-for-other-temperatures", "requirement-not-met", "units-too-small", "reserve-not-met", "separator-starves-circuits", "separator-warms-return", "pump-too-weak", "pipe-too-fast", "pipe-gradient-high", "header-too-fast", "separator-too-fast", "units-out-of-balance"),
	fault("diversity-below-one", `(  fitting-allowance 10 %)`, "$1\n  diversity       0.8 ratio"),
	fault("standards-do-not-fit", `standard        "BS 6644", "IGEM/UP/2", "IGEM/UP/10"`, `standard "BS 6798"`),
	fault("requirement-not-met", `(require Flow-H.velocity <= )0.7`, "${1}0.1"),
	// Frame and room.
	fault("hung-one-sided", `(row Left        U1..U[2-4]\n(?:.*\n)*?  standing        )\S+ held before-hanging((?:.*\n)*?  hang-order      ).*`, "${1}free${2}U1, U2", "frame-may-tip", "caution-missing"),
	fault("flushing-too-little", `(flushing        )\d+ l secondary`, "${1}90 l secondary"),
	fault("escape-too-narrow", `(escape          ).*`, "${1}0.3 m"),
	fault("row-longer-than-frame", `(section S1.*  )1.30 m`, "${1}0.50 m", "floor-overloaded"),
	fault("lift-plan-missing", `(lifting .*) planned`, "$1"),
	fault("frame-not-leveled", `(feet .*) locked`, "$1"),
	fault("strength-test-too-weak", `water 6 bar 2 h`, "water 3.5 bar 2 h"),
	fault("strength-test-over-rating", `(water 6 bar 2 h relief-isolated) units-isolated`, "$1"),
	// Units.
	line("limiter-missing", "limiter"),
	line("relief-missing", "relief ", "relief-undrained", "unknown-name"),
	fault("relief-set-over-rating", `(relief          DN20 )3 bar`, "${1}9 bar"),
	fault("relief-can-be-shut-off", `unit-side`, "system-side"),
	line("trap-missing", "trap            seal"),
	fault("trap-seal-too-small", `(trap            seal )150 mm`, "${1}30 mm"),
	line("damper-missing", "damper ", "damper-unwired", "damper-check-missing", "flue-push-too-weak", "unknown-name"),
	line("unit-without-gas-valve", "gas-valve"),
	fault("unit-not-isolated", `^ *water-valve .*\n`, ""),
	fault("non-return-missing", `(pump            \S+) non-return isolating`, "$1 isolating"),
	fault("pump-too-weak", `(branch FB\S+ steel) DN\d+ 1.2 m`, "$1 DN15 1.2 m", "pipe-too-fast", "pipe-gradient-high", "units-out-of-balance", "separator-starves-circuits"),
	fault("output-for-other-temperatures", `primary         75/55 degC`, "primary         60/40 degC", "requirement-not-met", "units-too-small", "separator-starves-circuits"),
	// Gas.
	fault("gas-drop-over-limit", `(pipe G1         steel) DN\d+`, "$1 DN25", "gas-too-fast", "unit-gas-pressure-low", "gas-margin-used-up", "purge-too-little"),
	fault("meter-too-small", `meter Meter     \d+ m3/h`, "meter Meter     2 m3/h"),
	fault("meter-too-coarse", `(meter Meter .*)least \S+ m3/h`, "${1}least 9 m3/h"),
	fault("regulator-too-small", `^(gas-run \{\n)`, "${1}  regulator Reg   60 mbar inlet 21 mbar outlet vents-to outside slam-shut most 2 m3/h\n"),
	fault("regulator-too-coarse", `^(gas-run \{\n)`, "${1}  regulator Reg   60 mbar inlet 21 mbar outlet vents-to outside slam-shut least 9 m3/h\n"),
	line("emergency-valve-missing", "valve Shut-1", "unknown-name", "gas-end-open", "detector-not-linked", "fire-alarm-not-linked", "exit-without-stop"),
	fault("gas-supports-far", `(pipe G1 .*)support 2.4 m`, "${1}support 9 m"),
	line("gas-end-open", `blank           DN\d+ dead-end of Man-A`),
	line("dead-end-not-purged", "purge-point", "unknown-name"),
	fault("sleeve-missing", `sleeves 1 off crossings 1 off`, "crossings 2 off"),
	fault("blank-without-gasket", `(dead-end of Flow-H) gasket`, "$1"),
	fault("gas-test-too-short", `20 min water-gauge`, "1 min water-gauge"),
	fault("test-standard-unfit", `standard "IGEM/UP/1A"`, `standard "IGEM/UP/1B"`),
	fault("lock-up-too-high", `^(gas-run \{\n)`, "${1}  regulator Reg   60 mbar inlet 21 mbar outlet vents-to outside slam-shut lock-up 30 mbar\n"),
	fault("pump-shut-in", `(  circuit Rad     .*) mixed weather-led\n  circuit Hws     (.*) constant`, "$1 throttled\n  circuit Hws     $2 throttled\n  pump Sec-P      on SF constant flow 99 m3/h head 60 kPa"),
	fault("purge-too-little", `(purge gas-run   )\S+ m3`, "${1}0.01 m3"),
	fault("stated-volume-contradicts", `(  fitting-allowance 10 %)`, "$1\n  volume          9 m3"),
	fault("unit-gas-pressure-low", `supply          21 mbar`, "supply          17.6 mbar"),
	fault("unit-gas-pressure-high", `supply          21 mbar at Meter band 19..23 mbar`, "supply          60 mbar at Meter", "test-standard-unfit"),
	fault("unit-not-on-gas-run", `(drop GD1)(\.\.GD\d+)?( .* to) U\d+(\.\.U\d+)?`, "$1 $3 U1", "group-length"),
	// Frame and room.
	fault("frame-may-tip", `(standing        )\S+ held before-hanging((?:.*\n)*?.*offset          )\S+ mm`, "${1}free${2}-300 mm", "caution-missing"),
	fault("floor-overloaded", `(floor           concrete allows) \S+ kN/m2`, "$1 0.5 kN/m2"),
	fault("clearance-too-small", `(  above           )\S+ m$`, "${1}0.1 m"),
	fault("lift-unfit", `(lifting         hoist) \S+ kg`, "$1 50 kg"),
	fault("water-supports-far", `(pipe PF .*support) \S+ m`, "$1 6.0 m"),
	line("isolator-missing", "isolator        lockable"),
	fault("gas-test-point-missing", `(gas-valve       .* union) test-point`, "$1"),
	fault("strainer-missing", `^ *strainer        DN\d+ return\n((?:.*\n)*?) *strainer        DN\d+ on PR\n((?:.*\n)*?) *filter Mag .*\n`, "$1$2"),
	fault("glycol-thin", `^(separation \{\n)`, "${1}  glycol          propylene 15 %\n", "caution-missing", "vessel-too-small", "fill-pressure-unfit", "precharge-leaves-no-room"),
	fault("opening-at-wrong-height", `(opening Low .* free)`, "$1 1.6 m up"),
	// Headers and water.
	fault("header-too-fast", `(header Flow-H   steel) DN\d+`, "$1 DN40", "units-out-of-balance", "pump-too-weak", "pipe-too-fast", "pipe-gradient-high", "requirement-not-met", "separator-starves-circuits"),
	fault("pipe-gradient-high", `(pipe PF         steel) DN\d+`, "$1 DN32", "pipe-too-fast", "pump-too-weak", "units-out-of-balance", "separator-starves-circuits"),
	line("header-undrained", `drain-cock      DN25`),
	fault("header-unvented", `vent            DN15 high-end of Flow-H automatic\n((?:.*\n){1,3}) *air-separator .*\n`, "$1"),
	line("header-end-open", `blank           DN\d+ dead-end of Flow-H`),
	fault("take-off-order-contradicts", `(take-off Flow-H )(U\d+), (U\d+)`, "$1$3, $2"),
	fault("spare-not-capped", `(  thermometer     on Flow-H, Return-H)`, "  spare           DN20 1 off on Return-H open\n$1"),
	fault("old-circuits-not-separated", `separator Sep   .*\n`, "old-circuits    since 1974-01 contaminated\n", "unknown-name", "caution-missing"),
	fault("separator-too-fast", `separator Sep   DN\d+`, "separator Sep   DN40"),
	fault("separator-starves-circuits", `circuit Rad     \S+ m3/h`, "circuit Rad     90 m3/h", "pipe-too-fast", "pipe-gradient-high", "separator-too-fast"),
	fault("separator-warms-return", `circuit Rad     \S+ m3/h`, "circuit Rad     0.5 m3/h", "condenses-too-little"),
	// Safety.
	line("vessel-missing", "vessel Ves-A"),
	fault("vessel-can-be-shut-off", `lockable-valve drain`, "plain-valve drain"),
	fault("mains-link-permanent", `mains-link      temporary break-tank`, "mains-link      permanent check-valve"),
	fault("cut-outs-out-of-order", `pressurisation  low 0.9 bar high 2.7 bar`, "pressurisation  low 2.8 bar high 2.7 bar"),
	fault("relief-undrained", `(unit-side) discharges-to Tun-A((?:.*\n)*) *discharge .*\n`, "$1$2"),
	fault("vessel-too-small", `vessel Ves-A    \d+ l`, "vessel Ves-A    20 l"),
	fault("precharge-too-low", `precharge 1.0 bar`, "precharge 0.5 bar", "fill-pressure-unfit"),
	fault("precharge-leaves-no-room", `precharge 1.0 bar`, "precharge 2.6 bar"),
	fault("fill-pressure-unfit", `fill            1.3 bar`, "fill            2.4 bar"),
	fault("relief-too-small", `relief          DN20 3 bar`, "relief          DN15 3 bar"),
	fault("discharge-too-small", `discharge       copper \d+ mm`, "discharge       copper 22 mm"),
	fault("flow-unproved", `( isolating) flow-proving((?:.*\n)*) *interlock U\S+.pump .*\n`, "$1$2"),
	line("thermometer-missing", `thermometer     flow, return`),
	line("unit-undrained", `vent            DN15 automatic`),
	// Insulation and water quality.
	fault("insulation-too-thin", `mineral-wool 50 mm`, "mineral-wool 10 mm"),
	fault("insulation-missing", `PF, PR, SF mineral-wool`, "PF, PR mineral-wool"),
	fault("fill-water-too-hard", `hardness 0.05 mmol/l`, "hardness 4 mmol/l"),
	fault("acidity-unfit", `8.2..9.5 pH`, "6.5..9.5 pH"),
	fault("chloride-high", `chloride 5 mg/l`, "chloride 120 mg/l"),
	fault("top-up-high", `(  inhibitor       none)`, "$1\n  top-up          900 l"),
	// Flue and condensate.
	fault("flue-push-too-weak", `(header Head-F   polypropylene) DN\d+`, "$1 DN80", "flue-speed-high", "flue-pressure-over-class", "trap-seal-too-small", "damper-missing"),
	fault("flue-falls-too-little", `(header Head-F .*falls) 3 deg`, "$1 20 mm/m"),
	fault("flue-falls-away", `(header Head-F .*)falls 3 deg towards Trap-F`, "${1}falls 3 deg towards Riser"),
	fault("flue-fall-not-stated", `(header Head-F .*)falls 3 deg towards Trap-F `, "$1"),
	fault("flue-not-wet", `(riser Riser .*class T120-P1-)W`, "${1}D"),
	fault("flue-supports-far", `support         1.0 m at-bends`, "support         3.0 m at-bends"),
	fault("flue-speed-low", `(riser Riser     polypropylene) DN\d+`, "$1 DN700"),
	line("flue-end-open", `blank           DN\d+ dead-end of Head-F`),
	line("flue-undrained", "trap Trap-F", "unknown-name", "flue-falls-away"),
	fault("terminal-too-near", `(units U1\.\.U[23] \{(?:.*\n)+?.*)from-window 6.0 m`, "${1}from-window 0.6 m"),
	fault("horizontal-terminal-unapproved", `(units U1\.\.U[3-8] \{(?:.*\n)+?.*)terminal Term   roof \S+ m above`, "${1}terminal Term   wall"),
	fault("wrong-lubricant", `lubricant       water-based`, "lubricant       grease"),
	fault("firing-case-missing", `all-full, one-low, one-alone`, "all-full"),
	fault("bend-not-inspectable", `(on Riser) inspection`, "$1 concealed"),
	fault("unit-without-flue", `(connector C1)(\.\.C\d+)?( .* from) U\d+(\.\.U\d+)?( to Head-F .*towards) U\d+(\.\.U\d+)?`, "$1 $3 U1 $5 U1", "unknown-name", "group-length", "flue-speed-low"),
	fault("condensate-to-rain-drain", `gully Gully     foul-drain`, "gully Gully     rain-drain"),
	fault("drain-eaten-by-condensate", `pipe Cond-main  polypropylene`, "pipe Cond-main  copper"),
	fault("drain-falls-too-little", `falls 46 mm/m`, "falls 10 mm/m"),
	fault("drain-too-small", `(pipe Cond-main  polypropylene) \d+ mm`, "$1 19 mm"),
	fault("neutraliser-too-small", `neutraliser Neut \S+ l/h`, "neutraliser Neut 1 l/h"),
	fault("trap-shared", `(trap Trap-F     seal 200 mm from Head-F)`, "$1, U1"),
	// Air.
	fault("opening-too-small", `(opening Low     low-level louvre) \d+ cm2 free`, "$1 60 cm2 free"),
	fault("opening-can-be-closed", `(opening High .*)non-closable`, "${1}closable"),
	line("opening-missing", "opening Low"),
	fault("free-area-not-stated", `(opening Low     low-level louvre \d+ cm2) free`, "$1 gross", "opening-too-small"),
	line("carbon-monoxide-detector-missing", "detector Det-C"),
	fault("detector-at-wrong-height", `natural-gas ceiling`, "natural-gas floor"),
	fault("detector-levels-reversed", `alarm 10 %LEL trip 20 %LEL`, "alarm 25 %LEL trip 20 %LEL"),
	fault("detector-not-linked", `(detector Det-G .*) closes Shut-1 sounds`, "$1 sounds"),
	fault("fire-alarm-not-linked", `fire-alarm      closes Shut-1 cuts-power`, "fire-alarm      cuts-power"),
	line("exit-without-stop", "stop Stop-1"),
	// Electrical and controls.
	line("pump-unwired", `wire U\S+.pump`),
	fault("wired-to-another-unit", `wire U1\.\.(U\d+).pump to U1\.\.U\d+ terminal X6`, "wire U1.pump to $1 terminal X6", "pump-unwired", "terminal-taken-twice"),
	fault("terminal-taken-twice", `(\.damper .* X4\n *wire U\S+.pump to U\S+ terminal) X6`, "$1 X4"),
	fault("low-water-not-interlocked", `^ *interlock U\S+.low-water .*\n`, ""),
	fault("no-sequence", `^ *lead .*\n`, ""),
	// Handover and cautions.
	fault("register-number-missing", `gas-engineer register "REG 2"`, "gas-engineer"),
	fault("damper-check-missing", `yearly          dampers, `, "yearly          "),
	fault("caution-missing", `^caution electrical .*\n`, ""),
	fault("caution-missing", `^caution tip-over .*\n`, ""),
	fault("deviation-expired", `\z`, "deviation flue-speed-high on Riser because \"old\" by D1 until 2025-01-01\n", "deviation-unused"),
	fault("deviation-from-unknown-rule", `\z`, "deviation flue-too-loud on Riser because \"old\" by D1 until 2027-01-01\n"),
	fault("deviation-unused", `\z`, "deviation flue-speed-high on Riser because \"old\" by D1 until 2027-01-01\n"),
	// The text itself.
	fault("unknown-word", `reverse-return|direct-return`, "reversed-return", "value-missing"),
	fault("wrong-unit", `altitude        (\d+) m`, "altitude        $1 kW"),
	fault("unit-missing", `height          1.90 m`, "height          1.90"),
	fault("unknown-name", `\) from Meter|from Meter to Shut-1`, "from Metre to Shut-1"),
	fault("name-twice", `(  pipe G2 )`, "  pipe G1 steel DN50 1 m from Meter to Shut-1 bends 1 off\n$1"),
	fault("implausible-value", `altitude        \d+ m`, "altitude        99000 m"),
}, moreFaults...)

// Names lists the rules that have a fault of their own.
func Names() []string {
	seen := map[string]bool{}
	var out []string
	for i := range Faults {
		if !seen[Faults[i].Rule] {
			seen[Faults[i].Rule] = true
			out = append(out, Faults[i].Rule)
		}
	}
	return out
}

// Allowed reports whether a finding of a rule fits the fault.
func (f *Fault) Allowed(rule string) bool {
	if rule == f.Rule {
		return true
	}
	for _, a := range f.Also {
		if a == rule || a == AnyRule {
			return true
		}
	}
	return false
}

// String names the fault in a test.
func (f *Fault) String() string {
	return f.Rule + " by " + strings.TrimPrefix(f.old.String(), "(?m)")
}
