package flue

// Numbers of the flue standard, for a plant that gives none of its own.
const (
	SafetyPositive   = 1.2   // S_E of a flue under positive pressure; source: SourceSafety
	SafetyNegative   = 1.5   // S_E of a flue under negative pressure; source: SourceSafety
	WindInland       = 25.0  // Pa at an outlet that stands unfavorably; source: SourceWind
	WindCoast        = 40.0  // Pa at an outlet that stands unfavorably; source: SourceWind
	RoughnessMetal   = 0.001 // m, metal and plastic; source: SourceRoughness
	RoughnessMasonry = 0.005 // m, the rough end of 2 to 5 mm; source: SourceRoughness
)
