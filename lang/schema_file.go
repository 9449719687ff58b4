package lang

var fileRows = []Row{
	{
		In: in("plant", "catalogue", "record", "project"), Keyword: "language", Times: AtMostOnce, Slots: slots(text("version", "version of the plant language").need()),
		Help: "The version of the plant language in which the file is written. A later tool reads older versions.", Example: `language "1"`,
	},
	{
		In: in("plant"), Keyword: "plant", Times: Once, Slots: slots(text("title", "what the plant is called").need(), code("revision", "revision of the design").by(), date("date", "day of the revision").by()),
		Help: "Says that the file is the design of a plant, and which revision.", Example: `plant "Cooper Lane, boiler room" revision R4 date 2025-10-03`,
	},
	{
		In: in("catalogue"), Keyword: "catalogue", Times: Once, Slots: slots(text("title", "what the catalogue is called").need(), date("issue", "day of issue").by()),
		Help: "Says that the file describes types that plants use.", Example: `catalogue "House types" issue 2025-03-01`,
	},
	{
		In: in("record"), Keyword: "record", Times: Once, Slots: slots(text("title", "what the record is called").need(), date("issue", "day of issue").by()),
		Help: "Says that the file records what was delivered, built, tested, commissioned and logged.", Example: `record "Cooper Lane, as built" issue 2025-10-24`,
	},
	{
		In: in("project"), Keyword: "project", Times: Once, Slots: slots(text("title", "what the project is called").need()),
		Help: "Says that the file holds the settings of a project: gate, units, and limits it replaces.", Example: `project "Office standard"`,
	},
	{
		In: in("plant", "catalogue", "record"), Keyword: "use", Slots: slots(text("file", "path of the catalogue, relative to this file").need()),
		Help: "Takes in the types of a catalogue. The path stays inside the workspace.", Example: `use "catalogue.plant"`,
	},
	{
		In: in("record"), Keyword: "of-plant", Times: Once, Slots: slots(text("file", "path of the plant, relative to this file").need(), code("revision", "revision of the plant that was built").by()),
		Help: "The plant and its revision that the record belongs to.", Example: `of-plant "plant.plant" revision R4`,
	},
	{
		In: in("plant", "record"), Keyword: "person", Name: Defines,
		Slots: slots(choice("role", "what the person answers for", "designer", "checker", "gas-engineer", "commissioning-engineer", "electrician", "fitter", "keeper", "witness").by().need(), text("register", "number in the register of the trade or the site").by()),
		Stage: 15, Help: "A person by code, role and register number; never by name.", Example: `person E1 role gas-engineer register "REG 704418"`,
	},
	{
		In: in("plant", "record"), Keyword: "require", Slots: slots(Slot{Name: "condition", Type: ExprType, Required: true, Help: "what must hold, over computed values"}, text("because", "why the designer wants it").by().need()),
		Help: "A requirement of the designer's own, over computed and stated values.", Example: `require Flow-H.velocity <= 0.8 m/s because "bedrooms over the station"`,
	},
	{
		In: in("plant", "record"), Keyword: "deviation", Stage: 16,
		Slots: slots(word("rule", "id of the rule").need(), parts("on", "parts it holds for").need(), text("because", "why the exception is accepted").by().need(), part("by", "person who accepts it", "person").need(), date("until", "last day it holds").by().need()),
		Help:  "A stated exception to a rule: for which parts, why, by whom and until when.", Example: `deviation insulation-too-thin on Flow-H because "the frame leaves 40 mm" by D1 until 2026-06-30`,
	},
	{
		In: in("plant"), Keyword: "caution", Stage: 17,
		Slots: slots(choice("topic", "what can hurt", "gas", "carbon-monoxide", "flue", "pressure", "hot-surface", "lifting", "tip-over", "height", "electrical", "asbestos", "legionella", "confined-space", "chemicals", "frost", "condensate", "hot-work", "notification").need(), text("text", "the caution as it is printed").need()),
		Help:  "A caution that the specification carries. It never replaces the registered engineer or the local code.", Example: `caution gas "Work on gas by a registered engineer only."`,
	},
}
