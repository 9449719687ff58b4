package lang

var fileRows = []Entry{
	{
		In: []string{"plant", "catalogue", "record", "project"}, Keyword: "language", Times: AtMostOnce,
		Help: "The version of the plant language in which the file is written. A later tool reads older versions.", Example: `language "1"`,
		Slots: []*Slot{
			{Name: "version", Type: TextType, Required: true, Help: "version of the plant language"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "plant", Times: Once,
		Help: "Says that the file is the design of a plant, and which revision.", Example: `plant "Cooper Lane, boiler room" revision R4 date 2025-10-03`,
		Slots: []*Slot{
			{Name: "title", Type: TextType, Required: true, Help: "what the plant is called"},
			{Name: "revision", Label: "revision", Type: CodeType, Help: "revision of the design"},
			{Name: "date", Label: "date", Type: DateType, Help: "day of the revision"},
		},
	},
	{
		In: []string{"catalogue"}, Keyword: "catalogue", Times: Once,
		Help: "Says that the file describes types that plants use.", Example: `catalogue "House types" issue 2025-03-01`,
		Slots: []*Slot{
			{Name: "title", Type: TextType, Required: true, Help: "what the catalogue is called"},
			{Name: "issue", Label: "issue", Type: DateType, Help: "day of issue"},
		},
	},
	{
		In: []string{"record"}, Keyword: "record", Times: Once,
		Help: "Says that the file records what was delivered, built, tested, commissioned and logged.", Example: `record "Cooper Lane, as built" issue 2025-10-24`,
		Slots: []*Slot{
			{Name: "title", Type: TextType, Required: true, Help: "what the record is called"},
			{Name: "issue", Label: "issue", Type: DateType, Help: "day of issue"},
		},
	},
	{
		In: []string{"project"}, Keyword: "project", Times: Once,
		Help: "Says that the file holds the settings of a project: gate, units, and limits it replaces.", Example: `project "Office standard"`,
		Slots: []*Slot{
			{Name: "title", Type: TextType, Required: true, Help: "what the project is called"},
		},
	},
	{
		In: []string{"plant", "catalogue", "record"}, Keyword: "use",
		Help: "Takes in the types of a catalogue. The path stays inside the workspace.", Example: `use "catalogue.plant"`,
		Slots: []*Slot{
			{Name: "file", Type: TextType, Required: true, Help: "path of the catalogue, relative to this file"},
		},
	},
	{
		In: []string{"record"}, Keyword: "of-plant", Times: Once,
		Help: "The plant and its revision that the record belongs to.", Example: `of-plant "plant.plant" revision R4`,
		Slots: []*Slot{
			{Name: "file", Type: TextType, Required: true, Help: "path of the plant, relative to this file"},
			{Name: "revision", Label: "revision", Type: CodeType, Help: "revision of the plant that was built"},
		},
	},
	{
		In: []string{"plant", "record"}, Keyword: "person", Name: Defines, Stage: 15,
		Help: "A person by code, role and register number; never by name.", Example: `person E1 role gas-engineer register "REG 704418"`,
		Slots: []*Slot{
			{Name: "role", Label: "role", Type: ChoiceType, Required: true, Choices: []string{"designer", "checker", "gas-engineer", "commissioning-engineer", "electrician", "fitter", "keeper", "witness"}, Help: "what the person answers for"},
			{Name: "register", Label: "register", Type: TextType, Help: "number in the register of the trade or the site"},
		},
	},
	{
		In: []string{"plant", "record"}, Keyword: "require",
		Help: "A requirement of the designer's own, over computed and stated values.", Example: `require Flow-H.velocity <= 0.8 m/s because "bedrooms over the station"`,
		Slots: []*Slot{
			{Name: "condition", Type: ExprType, Required: true, Help: "what must hold, over computed values"},
			{Name: "because", Label: "because", Type: TextType, Required: true, Help: "why the designer wants it"},
		},
	},
	{
		In: []string{"plant", "record"}, Keyword: "deviation", Stage: 16,
		Help: "A stated exception to a rule: for which parts, why, by whom and until when.", Example: `deviation insulation-too-thin on Flow-H because "the frame leaves 40 mm" by D1 until 2026-06-30`,
		Slots: []*Slot{
			{Name: "rule", Type: WordType, Required: true, Help: "id of the rule"},
			{Name: "on", Label: "on", Type: PartsType, List: true, Required: true, Help: "parts it holds for"},
			{Name: "because", Label: "because", Type: TextType, Required: true, Help: "why the exception is accepted"},
			{Name: "by", Label: "by", Type: PartType, Required: true, Refers: []string{"person"}, Help: "person who accepts it"},
			{Name: "until", Label: "until", Type: DateType, Required: true, Help: "last day it holds"},
		},
	},
	{
		In: []string{"plant"}, Keyword: "caution", Stage: 17,
		Help: "A caution that the specification carries. It never replaces the registered engineer or the local code.", Example: `caution gas "Work on gas by a registered engineer only."`,
		Slots: []*Slot{
			{Name: "topic", Type: ChoiceType, Required: true, Choices: []string{"gas", "carbon-monoxide", "flue", "pressure", "hot-surface", "lifting", "tip-over", "height", "electrical", "asbestos", "legionella", "confined-space", "chemicals", "frost", "condensate", "hot-work", "notification"}, Help: "what can hurt"},
			{Name: "text", Type: TextType, Required: true, Help: "the caution as it is printed"},
		},
	},
}
