// Package lang is the plant language: source text, tokens, statements, the
// schema table that says what each statement may hold, quantities with units,
// and the formatter. It knows no rule, no protocol and no disk.
//
// The way through the package: a Source becomes tokens, a splitter cuts the
// tokens into statements, each statement goes to the grammar alone, braces nest
// the statements into a File, and Bind walks each statement against its Row of
// the schema. Text that cannot be read becomes a Problem with a place; it never
// takes its neighbors with it.
package lang
