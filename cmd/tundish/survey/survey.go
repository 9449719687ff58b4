// Package survey keeps what was found in an archive of specifications in an
// SQLite database, so that a question over all of them is one query. The schema
// stands in schema.sql.
package survey

import (
	"crypto/sha256"
	"database/sql"
	_ "embed"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"strconv"

	_ "modernc.org/sqlite" // the driver "sqlite", without C

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

//go:embed schema.sql
var schema string

// schemaVersion changes with schema.sql; a database of another version is not
// continued.
const schemaVersion = "1"

// batch is how many files one transaction takes. A kill loses no more than that.
const batch = 100

// DB is a survey that is being written.
type DB struct {
	db    *sql.DB
	tx    *sql.Tx
	stmts map[string]*sql.Stmt // of the transaction
	n     int
	basis string
}

// Open opens or makes a database. basis is everything besides the files that
// results depend on: the version of the tool, the date of the check. Files that
// were surveyed on another basis are surveyed anew.
func Open(path, basis string) (*DB, error) {
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=foreign_keys(1)&_pragma=busy_timeout(5000)&_pragma=journal_mode(wal)&_pragma=synchronous(normal)")
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	if _, err := db.Exec(schema); err != nil {
		db.Close()
		return nil, fmt.Errorf("it is not a database of a survey: %w", err)
	}
	s := &DB{db: db, basis: basis}
	was := map[string]string{}
	rows, err := db.Query("SELECT key, value FROM meta")
	if err != nil {
		db.Close()
		return nil, err
	}
	for rows.Next() {
		var k, v string
		if err := rows.Scan(&k, &v); err != nil {
			db.Close()
			return nil, err
		}
		was[k] = v
	}
	if err := rows.Err(); err != nil {
		db.Close()
		return nil, err
	}
	if v, ok := was["schema"]; ok && v != schemaVersion {
		db.Close()
		return nil, fmt.Errorf("it was written with schema %s, this tool writes %s: take another file", v, schemaVersion)
	}
	if v, ok := was["basis"]; ok && v != basis {
		if _, err := db.Exec("DELETE FROM files"); err != nil {
			db.Close()
			return nil, err
		}
	}
	for k, v := range map[string]string{"schema": schemaVersion, "basis": basis} {
		if _, err := db.Exec("INSERT INTO meta VALUES (?, ?) ON CONFLICT(key) DO UPDATE SET value = excluded.value", k, v); err != nil {
			db.Close()
			return nil, err
		}
	}
	return s, nil
}

// Close ends the last transaction.
func (s *DB) Close() error {
	err := s.flush()
	if e := s.db.Close(); err == nil {
		err = e
	}
	return err
}

func (s *DB) flush() error {
	if s.tx == nil {
		return nil
	}
	tx := s.tx
	s.tx, s.n = nil, 0
	return tx.Commit() // closes its statements
}

// Hash names a text by its content.
func Hash(text string) string {
	h := sha256.Sum256([]byte(text))
	return hex.EncodeToString(h[:16])
}

// Known gives the hash of the text under which a file stands in the database, and
// the files that it read then, with theirs. ok is false for a new file.
func (s *DB) Known(path string) (hash string, used map[string]string, ok bool, err error) {
	var list string
	err = s.db.QueryRow("SELECT hash, used FROM files WHERE path = ?", path).Scan(&hash, &list)
	if err == sql.ErrNoRows {
		return "", nil, false, nil
	}
	if err != nil {
		return "", nil, false, err
	}
	return hash, used, json.Unmarshal([]byte(list), &used) == nil, nil
}

// Keep drops every file that is not among the paths: it is gone from the archive.
func (s *DB) Keep(paths map[string]bool) error {
	if err := s.flush(); err != nil {
		return err
	}
	rows, err := s.db.Query("SELECT path FROM files")
	if err != nil {
		return err
	}
	var gone []string
	for rows.Next() {
		var p string
		if err := rows.Scan(&p); err != nil {
			rows.Close()
			return err
		}
		if !paths[p] {
			gone = append(gone, p)
		}
	}
	if err := rows.Err(); err != nil {
		return err
	}
	for _, p := range gone {
		if _, err := s.db.Exec("DELETE FROM files WHERE path = ?", p); err != nil {
			return err
		}
	}
	return nil
}

// Put writes one file's report in the place of what stood there.
func (s *DB) Put(path, text string, rep *check.Report) error {
	if s.tx == nil {
		tx, err := s.db.Begin()
		if err != nil {
			return err
		}
		s.tx, s.stmts = tx, map[string]*sql.Stmt{}
	}
	w := writer{tx: s.tx, stmts: s.stmts}
	w.put(path, text, rep)
	if w.err != nil {
		s.tx.Rollback()
		s.tx, s.n = nil, 0
		return w.err
	}
	if s.n++; s.n >= batch {
		return s.flush()
	}
	return nil
}

// writer writes rows and remembers the first error.
type writer struct {
	tx    *sql.Tx
	stmts map[string]*sql.Stmt
	id    int64
	err   error
}

func (w *writer) exec(query string, args ...any) sql.Result {
	if w.err != nil {
		return nil
	}
	st := w.stmts[query]
	if st == nil {
		if st, w.err = w.tx.Prepare(query); w.err != nil {
			return nil
		}
		w.stmts[query] = st
	}
	var r sql.Result
	r, w.err = st.Exec(args...)
	return r
}

func (w *writer) put(path, text string, rep *check.Report) {
	p := rep.Plant
	count := map[lang.Severity]int{}
	for i := range rep.Findings {
		count[rep.Findings[i].Severity]++
	}
	title := p.One(p.Kind)
	w.exec("DELETE FROM files WHERE path = ?", path)
	r := w.exec("INSERT INTO files (path, kind, title, revision, jurisdiction, units, errors, warnings, notes, not_evaluated, hash, used) VALUES (?,?,?,?,?,?,?,?,?,?,?,?)",
		path, p.Kind, title.Get("title").Word, title.Get("revision").Word, p.Block("basis").Get("jurisdiction").Word, len(p.Units()),
		count[lang.Error], count[lang.Warning], count[lang.Note], len(rep.Unknowns), Hash(text), usedBy(p))
	if w.err != nil {
		return
	}
	if w.id, w.err = r.LastInsertId(); w.err != nil {
		return
	}
	w.parts(p)
	w.computed(rep)
	w.findings(rep)
	w.readings(p)
}

// usedBy lists what a plant reads besides its own text.
func usedBy(p *plant.Plant) string {
	used := map[string]string{}
	for _, c := range p.Catalogues {
		used[c.Source.Name] = Hash(c.Source.Text)
	}
	if p.Of != nil {
		used[p.Of.File.Source.Name] = Hash(p.Of.File.Source.Text)
		for _, c := range p.Of.Catalogues {
			used[c.Source.Name] = Hash(c.Source.Text)
		}
	}
	b, err := json.Marshal(used)
	if err != nil {
		return "{}" // a map of texts always has a form
	}
	return string(b)
}

func lineOf(f *lang.File, s lang.Span) int { return f.Source.LineOf(s.Start) + 1 }

func (w *writer) parts(p *plant.Plant) {
	for _, part := range p.All {
		if part.Stmt == nil || part == p.UnitGroup() {
			continue
		}
		typ := ""
		if part.Type != nil {
			typ = part.Type.Name
		}
		w.exec("INSERT INTO parts VALUES (?,?,?,?,?)", w.id, part.Address(), part.Kind, typ, lineOf(p.File, part.Span()))
		for i := range part.Bound.Fields {
			f := &part.Bound.Fields[i]
			for k := range f.Values {
				v := &f.Values[k]
				if v.State != lang.Known {
					continue
				}
				var num, second any
				unit := ""
				if f.Slot.Type == lang.QuantityType || f.Slot.Type == lang.SizeType {
					num, unit = v.Num, lang.SIUnit(f.Slot.Dim)
					if v.Expr != nil && v.Expr.Form != lang.Single {
						second = v.Num2
					}
				}
				w.exec("INSERT INTO stated VALUES (?,?,?,?,?,?,?,?)", w.id, part.Address(), f.Slot.Name, num, second, unit, v.Word, lineOf(p.File, part.Stmt.Abs(f.Span)))
			}
		}
	}
}

func (w *writer) computed(rep *check.Report) {
	all := rep.Results.All()
	for i := range all {
		q := &all[i]
		var v any
		if q.Known() {
			v = q.Num
		}
		w.exec("INSERT INTO computed VALUES (?,?,?,?,?,?,?,?,?)", w.id, q.Part.Address(), q.Name, q.Stat.String(), q.Case.String(), v, lang.SIUnit(q.Dim), q.Missing, lineOf(q.Part.File, q.Part.Span()))
	}
}

func (w *writer) findings(rep *check.Report) {
	own := rep.Plant.File
	for i := range rep.Findings {
		f := &rep.Findings[i]
		file := own
		if f.File != nil {
			file = f.File
		}
		w.exec("INSERT INTO findings VALUES (?,?,?,?,?,?,?,?,?,?)", w.id, f.Rule, f.Severity.String(), f.Part, lineOf(file, f.Span), f.Message, f.Found, f.Limit, f.Source.String(), string(f.Source.Read))
	}
	for i := range rep.Unknowns {
		u := &rep.Unknowns[i]
		w.exec("INSERT INTO not_evaluated VALUES (?,?,?,?,?)", w.id, u.Rule, u.Part, u.Needs, lineOf(own, u.Span))
	}
	accepts := map[*plant.Part]int{}
	for i := range rep.Excused {
		accepts[rep.Excused[i].Deviation]++
	}
	for _, d := range rep.Plant.ByKind("deviation") {
		w.exec("INSERT INTO deviations VALUES (?,?,?,?,?,?,?)", w.id, d.Get("rule").Word, d.Get("because").Word, d.Get("by").Word, d.Get("until").Word, accepts[d], lineOf(own, d.Span()))
	}
}

// readings writes every number of the blocks of a record that hold what was
// measured.
func (w *writer) readings(p *plant.Plant) {
	if p.Kind != "record" {
		return
	}
	for _, part := range p.All {
		firing, unit, date := "", "", ""
		switch {
		case part.Owner != nil && part.Owner.Kind == "commissioned":
			firing, unit, date = part.Row.Keyword, subject(part.Owner), part.Owner.Get("date").Word
		case part.Row.Keyword == "reading":
			firing, unit, date = part.Get("fire").Word, subject(part), part.Owner.Get("date").Word
		case part.Owner != nil && part.Owner.Kind == "simultaneous":
			firing, unit, date = solve.AllFull.String(), subject(part), part.Owner.Get("date").Word
		default:
			continue
		}
		for i := range part.Bound.Fields {
			f := &part.Bound.Fields[i]
			if f.Slot.Type != lang.QuantityType || len(f.Values) == 0 || f.Values[0].State != lang.Known {
				continue
			}
			w.exec("INSERT INTO readings VALUES (?,?,?,?,?,?,?,?)", w.id, unit, firing, date, f.Slot.Name, f.Values[0].Num, lang.SIUnit(f.Slot.Dim), lineOf(p.File, part.Span()))
		}
	}
}

func subject(p *plant.Part) string {
	if refs := p.Subjects(); len(refs) > 0 {
		return refs[0].Part.Address()
	}
	return ""
}

// Tables lists the tables that hold a survey, in the order of the schema.
var Tables = []string{"files", "parts", "stated", "computed", "findings", "not_evaluated", "deviations", "readings"}

// Rows calls f with the column names of a table and then with every row, as text;
// null is an empty text.
func (s *DB) Rows(table string, f func(cells []string) error) error {
	if err := s.flush(); err != nil {
		return err
	}
	order := "rowid"
	if table == "files" {
		order = "path"
	}
	rows, err := s.db.Query("SELECT * FROM " + table + " ORDER BY " + order) // table is one of Tables
	if err != nil {
		return err
	}
	defer rows.Close()
	names, err := rows.Columns()
	if err != nil {
		return err
	}
	if err := f(names); err != nil {
		return err
	}
	cells, into := make([]any, len(names)), make([]any, len(names))
	for i := range cells {
		into[i] = &cells[i]
	}
	text := make([]string, len(names))
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return err
		}
		for i, c := range cells {
			switch v := c.(type) {
			case nil:
				text[i] = ""
			case float64:
				text[i] = strconv.FormatFloat(v, 'g', -1, 64)
			default:
				text[i] = fmt.Sprint(v)
			}
		}
		if err := f(text); err != nil {
			return err
		}
	}
	return rows.Err()
}
