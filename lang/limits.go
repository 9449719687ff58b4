package lang

// The limits of a text. They keep a broken or hostile file from costing more
// than it is worth; each is far above any real plant.
const (
	MaxFileSize   = 4 << 20 // bytes
	MaxLineLength = 4096    // bytes in one statement
	MaxStatements = 100_000
	MaxDepth      = 32 // blocks in blocks
	MaxBrackets   = 32 // open brackets in one expression
	maxItems      = 512
)
