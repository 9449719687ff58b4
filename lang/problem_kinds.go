package lang

// ProblemKind explains one kind of fault of the text.
type ProblemKind struct {
	ID       string
	Severity Severity
	Summary  string
	Why      string
	Mend     string
}

// ProblemKinds lists every kind of fault that reading, binding and resolving a
// text can report.
var ProblemKinds = []ProblemKind{
	{"cannot-read", Error, "A statement cannot be read.", "What cannot be read is not checked, and what depends on it is not evaluated.", "complete the statement"},
	{"not-text", Error, "The file is not plain UTF-8 text.", "Other readers of the file would see other characters.", "save it as UTF-8"},
	{"file-too-large", Error, "The file is larger than a specification can be.", "It is most likely not a specification.", "cut it into a plant and catalogues"},
	{"archive-broken", Error, "An archive cannot be read to its end.", "What stands behind the break is not checked.", "pack it anew"},
	{"archive-too-large", Error, "An archive unpacks to more than a run takes.", "It is most likely not an archive of specifications; a few bytes can unpack to fill a disk.", "pack the specifications alone"},
	{"member-outside", Error, "A member of an archive leads out of it.", "A path with \"..\", an absolute path or a link would read or name files of this machine.", "pack it with plain relative paths"},
	{"not-finished", Error, "The tool broke down on a file and decided nothing about it.", "The fault is in the tool, not in the plant; the file is not checked.", "report this with the file"},
	{"too-many-statements", Error, "The file holds more statements than a specification can.", "It is most likely not a specification.", "cut the file"},
	{"block-too-deep", Error, "Blocks stand too deep in each other.", "Nobody can read such a file.", "take blocks out of each other"},
	{"brace-missing", Error, "A block lacks one of its braces.", "The place of the statements behind it is a guess from their indentation.", "write the brace"},
	{"brace-astray", Error, "A brace belongs to no block.", "The place of the statements around it is a guess.", "take it out"},
	{"unknown-statement", Error, "A statement starts with a word that its block does not know.", "An unknown statement is not checked.", "use a word of the list"},
	{"unknown-word", Error, "A word in a statement has no meaning there.", "What it was to say is lost.", "use one of the words of the statement"},
	{"unknown-unit", Error, "A unit is not known.", "A number without a known unit cannot be calculated with.", "use a unit of the list"},
	{"wrong-unit", Error, "A quantity has a unit of another kind than its place wants.", "It would be taken for something else.", "give the quantity in a fitting unit"},
	{"unit-missing", Error, "A number has no unit.", "Every number carries its unit, so that nobody has to guess.", "write the unit behind the number"},
	{"wrong-form", Error, "A range or pair stands where one number is wanted, or the other way about.", "It cannot be calculated with.", "write one number, a range a..b or a pair a/b as wanted"},
	{"wrong-value", Error, "A value is of another kind than its place wants.", "It cannot be used.", "write what the place wants"},
	{"value-missing", Error, "A label or a statement lacks its value.", "What depends on it is not evaluated.", "write the value"},
	{"value-twice", Error, "A value stands twice in a statement.", "Only one of them can be meant.", "take one out"},
	{"value-left-over", Error, "A value stands in a statement that has no place for it.", "What it was to say is lost.", "give it its label, or take it out"},
	{"statement-missing", Error, "A block lacks a statement that it must hold.", "What depends on it is not evaluated.", "add the statement"},
	{"statement-twice", Error, "A statement that may stand once stands twice in its block.", "Only one of them can be meant.", "take one out"},
	{"implausible-value", Warning, "A value lies outside what is physically likely.", "It is most likely a slip of the pen or of the unit.", "check number and unit"},
	{"name-missing", Error, "A statement lacks the name of its part.", "Other statements cannot refer to it.", "write a name that starts with a capital letter"},
	{"name-reserved", Error, "A part has a name that reads as a size.", "DN1 or M1 would be taken for a size.", "choose another name"},
	{"block-missing", Error, "A statement lacks its block.", "What it is about is not stated.", "open a block behind it"},
	{"block-not-wanted", Error, "A block follows a statement that has none.", "What stands in it is not read.", "take the braces out"},
	{"file-kind-missing", Error, "The file does not say what it is.", "A file starts with plant, catalogue, record or project.", "write the first statement"},
	{"name-twice", Error, "A name stands for two parts.", "References to it are not clear.", "give one of them another name"},
	{"unknown-name", Error, "A reference names a part that is not there.", "What depends on it is not evaluated.", "name a part that the file describes"},
	{"wrong-part", Error, "A reference names a part of another kind than is wanted.", "The connection makes no sense.", "name a fitting part"},
	{"group-length", Error, "A group is paired with another of a different length.", "It is not clear which member goes with which.", "give both the same number of members"},
	{"circular-use", Error, "Catalogues use each other in a circle.", "The first in the circle would need itself.", "take out one of the use statements"},
	{"use-too-deep", Error, "Catalogues use each other too deep.", "Nobody can follow such a chain.", "use the last catalogue directly"},
	{"use-outside", Error, "A path leads out of the workspace.", "A specification must be complete in its workspace.", "give a path relative to the file"},
	{"file-missing", Error, "A file that is used cannot be read.", "What stands in it is unknown.", "check the path"},
	{"not-a-plant", Error, "A record refers to a file that is not a plant.", "There is no design to compare the readings with.", "give the path of the plant"},
	{"internal-fault", Error, "The tool itself broke down in one rule.", "That rule decided nothing.", "report it"},
}
