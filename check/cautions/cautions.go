// Package cautions holds what a specification must warn of and what in a plant
// calls for it. It knows no formula, no rule and no disk.
package cautions

import (
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Trigger is one caution and what calls for it.
type Trigger struct {
	Topic    string        // a choice of the statement caution
	Severity lang.Severity // where it is missing
	Because  string        // "The plant has ..."
	Text     string        // offered as its text
	Source   cite.Source
	Part     func(*plant.Plant) *plant.Part // the part that calls for it; nil: not needed
}

// manualLift is what one person lifts close in at waist height, kg: INDG143,
// from memory.
const manualLift = 25

// Triggers are the cautions that a plant can call for. A caution never replaces
// the registered engineer or the local code.
var Triggers = []Trigger{
	{
		"gas", lang.Error, "gas units", "Work on gas by a registered engineer only.",
		cite.Source{Work: "Gas Safety (Installation and Use) Regulations 1998", Clause: "regulation 26", Read: cite.Published},
		firstUnit,
	},
	{
		"carbon-monoxide", lang.Error, "units and flues that make products of combustion", "Keep ventilation openings and flues free; leave the room when the detector sounds.",
		cite.Source{Work: "EN 50291 and BS 6644", Read: cite.Published},
		firstUnit,
	},
	{
		"flue", lang.Warning, "a flue that units share", "Products can enter a stopped unit. Check each damper yearly. Wet seals with water-based lubricant only.",
		cite.Source{Work: "practice of seal suppliers for push-fit flues", Read: cite.Practice},
		func(pl *plant.Plant) *plant.Part {
			for _, fl := range pl.ByKind("flue") {
				if len(fl.Children("connector")) > 1 {
					return fl
				}
			}
			return nil
		},
	},
	{
		"pressure", lang.Warning, "a sealed circuit", "Do not open the circuit hot. Put safety valves back after the strength test.",
		cite.Source{Work: "work on sealed hot-water circuits", Read: cite.Practice},
		func(pl *plant.Plant) *plant.Part { return pl.One("vessel") },
	},
	{
		"hot-surface", lang.Warning, "pipes above 60 degC", "Pipes and casings are hot.",
		cite.Source{Work: "EN ISO 13732", Read: cite.Memory},
		func(pl *plant.Plant) *plant.Part {
			b := pl.Block("basis")
			if v := b.Get("primary"); v.Known() && v.Num > 60 {
				return b
			}
			return nil
		},
	},
	{
		"lifting", lang.Error, "units over 25 kg", "Lift each unit with a hoist or the stated number of persons.",
		cite.Source{Work: "LOLER 1998 and Manual Handling Operations Regulations 1992", Read: cite.Published, Note: "25 kg from INDG143, from memory"},
		func(pl *plant.Plant) *plant.Part {
			for _, u := range pl.Units() {
				if m := u.Child("mass").First(); m.Known() && m.Num > manualLift {
					return u
				}
			}
			return nil
		},
	},
	{
		"tip-over", lang.Error, "a frame that units hang on before it is piped", "The frame is anchored or tied before the first unit is hung.",
		cite.Source{Work: "stability of a free-standing frame", Read: cite.Practice},
		func(pl *plant.Plant) *plant.Part { return pl.One("frame") },
	},
	{
		"height", lang.Warning, "work at headers and flues above head height", "Work on headers and flues from a platform.",
		cite.Source{Work: "Work at Height Regulations 2005", Read: cite.Memory},
		func(pl *plant.Plant) *plant.Part { return pl.One("flue") },
	},
	{
		"electrical", lang.Error, "electrical work", "Isolate, lock off and prove dead before opening a casing or the panel.",
		cite.Source{Work: "Electricity at Work Regulations 1989", Read: cite.Published},
		func(pl *plant.Plant) *plant.Part { return pl.One("electrical") },
	},
	{
		"asbestos", lang.Error, "a building or circuits from before 2000", "Refurbishment survey for asbestos before any work.",
		cite.Source{Work: "Control of Asbestos Regulations 2012", Clause: "regulation 5", Read: cite.Memory},
		func(pl *plant.Plant) *plant.Part {
			old := func(part *plant.Part, slot string) bool {
				d, ok := lang.ParseDate(part.Get(slot).Word)
				return ok && d.Year < 2000
			}
			if b := pl.Block("basis").Child("building"); b != nil && old(b, "built") {
				return b
			}
			if o := pl.Block("separation").Child("old-circuits"); o != nil && old(o, "since") {
				return o
			}
			return nil
		},
	},
	{
		"legionella", lang.Error, "a hot-water load", "Store hot water at 60 degC and check the outlets.",
		cite.Source{Work: "HSG274 part 2", Clause: "hot water", Read: cite.Published},
		func(pl *plant.Plant) *plant.Part {
			for _, l := range pl.ByKind("load") {
				if l.Get("use").Is("hot-water") {
					return l
				}
			}
			return nil
		},
	},
	{
		"chemicals", lang.Warning, "an inhibitor or antifreeze", "Read the data sheet, wear gloves and glasses, ask before draining to a sewer.",
		cite.Source{Work: "Control of Substances Hazardous to Health Regulations 2002", Read: cite.Published},
		func(pl *plant.Plant) *plant.Part {
			if i := pl.Block("water-quality").Child("inhibitor"); i != nil && i.First().Known() {
				return i
			}
			if g := pl.Block("separation").Child("glycol"); g != nil && g.First().Known() {
				return g
			}
			return nil
		},
	},
	{
		"frost", lang.Warning, "a condensate pipe outdoors", "The outdoor condensate pipe can freeze; check it in frost.",
		cite.Source{Work: "condensate drains outdoors", Read: cite.Practice},
		func(pl *plant.Plant) *plant.Part {
			for _, c := range pl.ByKind("condensate-pipe") {
				if c.Get("route").Is("outside") {
					return c
				}
			}
			return nil
		},
	},
	{
		"confined-space", lang.Error, "a plant room in an enclosure or compartment", "Assess the space before entry; drain-down with inert gas makes it deadly.",
		cite.Source{Work: "Confined Spaces Regulations 1997", Read: cite.Published},
		func(pl *plant.Plant) *plant.Part {
			if k := pl.Block("room").Child("kind"); k != nil && (k.Get("kind").Is("enclosure") || k.Get("kind").Is("compartment")) {
				return k
			}
			return nil
		},
	},
}

func firstUnit(pl *plant.Plant) *plant.Part {
	if u := pl.Units(); len(u) > 0 {
		return u[0]
	}
	return nil
}
