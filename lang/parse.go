package lang

import (
	"sort"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"
)

// Parse reads a source. It never fails: what cannot be read is a Problem of the
// file, and the other statements stand. cache may be nil.
func Parse(src *Source, cache *Cache) *File {
	m := memories.Get().(*memory)
	f := &m.file
	*f = File{Source: src, Comments: f.Comments, memory: m}
	if len(src.Text) > MaxFileSize {
		f.Problems = append(f.Problems, Problem{
			Span: Span{0, 0}, Rule: "file-too-large", Severity: Error,
			Message: "The file is larger than " + strconv.Itoa(MaxFileSize>>20) + " MiB; nothing of it was read.",
			Mend:    "cut it into a plant and catalogues",
		})
		return f
	}
	p := parsers.Get().(*parser)
	p.file, p.text, p.cache, p.memory = f, src.Text, cache, m
	anew := src.Lines()
	if cache != nil {
		anew = min(anew, 16)
	}
	m.expect(src.Lines(), anew)
	p.strayBytes()
	p.split()
	p.nest()
	sortProblems(f.Problems)
	p.release()
	return f
}

// parser holds what one reading needs; its buffers are used again.
type parser struct {
	file   *File
	text   string
	cache  *Cache
	tokens []Token // of the lines that are cut into statements now
	line   int     // the next line that is not in tokens
	events []event
	blocks []int32 // the events whose blocks are open
	memory *memory // of the file
	keep   *line   // the line at hand, to be filled for the cache; nil: not to be kept
	keepAt int     // where it starts
}

var parsers = sync.Pool{New: func() any {
	return &parser{tokens: make([]Token, 0, 256), events: make([]event, 0, 256)}
}}

// release gives the buffers back, without anything that keeps a file alive.
func (p *parser) release() {
	const kept = 16 << 10
	if cap(p.tokens) > kept || cap(p.events) > kept {
		return
	}
	clear(p.events)
	*p = parser{tokens: p.tokens[:0], events: p.events[:0], blocks: p.blocks[:0]}
	parsers.Put(p)
}

// event is one thing the splitter found, in order of text.
type event struct {
	st     *Statement // a statement; nil for a brace that closes
	opens  bool       // a brace follows the statement
	brace  Span       // of the brace that opens or closes
	indent int        // column of the first byte on its line, -1 when not first
	inside int        // statements right in the block that it opens
}

func (p *parser) problem(pr Problem) { p.file.Problems = append(p.file.Problems, pr) }

// strayBytes reports text that is no text once, at its first place.
func (p *parser) strayBytes() {
	if i := strings.IndexByte(p.text, 0); i >= 0 {
		p.problem(Problem{
			Span: Span{i, i + 1}, Rule: "not-text", Severity: Error,
			Message: "The file holds a NUL byte, which is no text.", Mend: "save it as plain UTF-8 text",
		})
		return
	}
	if utf8.ValidString(p.text) {
		return
	}
	for i, r := range p.text {
		if r != utf8.RuneError {
			continue
		}
		if _, n := utf8.DecodeRuneInString(p.text[i:]); n == 1 {
			p.problem(Problem{
				Span: Span{i, i + 1}, Rule: "not-text", Severity: Error,
				Message: "From here on the file is not UTF-8 text.", Mend: "save it as UTF-8",
			})
			return
		}
	}
}

// newStatement puts a statement into the memory of the file.
func (p *parser) newStatement(h *Head, base int) *Statement {
	st := p.memory.statements.One()
	*st = Statement{Head: h, Base: base}
	if h.Problem != nil {
		pr := *h.Problem
		pr.Span = pr.Span.Add(base)
		p.problem(pr)
	}
	return st
}

func sortProblems(list []Problem) {
	if len(list) > 1 {
		sort.SliceStable(list, func(i, j int) bool { return list[i].Span.Start < list[j].Span.Start })
	}
}
