package main

import (
	"database/sql"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func query(t *testing.T, file, q string) [][]string {
	t.Helper()
	db, err := sql.Open("sqlite", file)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	rows, err := db.Query(q)
	if err != nil {
		t.Fatalf("%s: %v", q, err)
	}
	defer rows.Close()
	names, _ := rows.Columns()
	var out [][]string
	for rows.Next() {
		cells, into := make([]sql.NullString, len(names)), make([]any, len(names))
		for i := range cells {
			into[i] = &cells[i]
		}
		if err := rows.Scan(into...); err != nil {
			t.Fatal(err)
		}
		line := make([]string, len(names))
		for i := range cells {
			line[i] = cells[i].String
		}
		out = append(out, line)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// A question over an archive is one query, and it answers what values and lint
// say of each file.
func TestSurvey(t *testing.T) {
	file := filepath.Join(t.TempDir(), "s.db")
	out, errs, code := tundish(t, "", "survey", "examples", "-o", file)
	if code != exitClean || !strings.Contains(out, "6 of them new") {
		t.Fatalf("exit %d: %s%s", code, out, errs)
	}
	// The ready question of the README.
	fast := query(t, file, "SELECT path, part, value FROM values_by_file WHERE name = 'velocity' AND kind = 'header' AND value > 0.7")
	if len(fast) != 2 || fast[0][0] != "examples/l-shaped-faulty.plant" {
		t.Errorf("headers over 0.7 m/s: %v", fast)
	}
	d, _ := lintJSON(t, "", "examples")
	if n := query(t, file, "SELECT count(*) FROM findings"); n[0][0] != fmt.Sprint(len(d.Findings)) {
		t.Errorf("%s findings in the database, %d from lint", n[0][0], len(d.Findings))
	}
	if n := query(t, file, "SELECT count(*) FROM not_evaluated"); n[0][0] != fmt.Sprint(len(d.NotEvaluated)) {
		t.Errorf("%s open questions in the database, %d from lint", n[0][0], len(d.NotEvaluated))
	}
	// At the commissioning and in two yearly logs.
	co2 := query(t, file, "SELECT value, date FROM readings WHERE unit_part = 'U3' AND firing = 'high-fire' AND name = 'co2' ORDER BY date")
	if fmt.Sprint(co2) != "[[0.09 2026-06-15] [0.092 2027-06-14] [0.091 2028-06-12]]" {
		t.Errorf("the CO2 of U3: %v", co2)
	}
	if l := query(t, file, "SELECT value FROM stated WHERE part = 'G1' AND slot = 'length' AND file = (SELECT id FROM files WHERE path LIKE '%in-line.plant')"); len(l) != 1 || l[0][0] != "14" {
		t.Errorf("the length of G1: %v", l)
	}
	if v := query(t, file, "SELECT count(*) FROM rules_by_count"); v[0][0] == "0" {
		t.Error("the view of rules is empty")
	}
	dir := filepath.Join(t.TempDir(), "csv")
	if _, errs, code := tundish(t, "", "survey", "examples", "--format", "csv", "-o", dir); code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	f, err := os.Open(filepath.Join(dir, "files.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if rows, err := csv.NewReader(f).ReadAll(); err != nil || len(rows) != 7 || rows[0][1] != "path" {
		t.Errorf("%v: %d rows", err, len(rows))
	}
}

// Only what changed is surveyed again: a text, a catalogue that texts use, the
// settings of the project; what is gone goes.
func TestSurveyAgain(t *testing.T) {
	dir := t.TempDir()
	files := randomFiles(t, 9)
	writeFolder(t, dir, files)
	file := filepath.Join(t.TempDir(), "s.db")
	fresh := func() (n int) {
		t.Helper()
		out, errs, code := tundish(t, "", "survey", dir, "-o", file)
		if _, err := fmt.Sscanf(out[strings.Index(out, ",")+1:], "%d", &n); err != nil || code != exitClean {
			t.Fatalf("exit %d: %s%s", code, out, errs)
		}
		return n
	}
	if n := fresh(); n != 10 {
		t.Errorf("first: %d", n)
	}
	if n := fresh(); n != 0 {
		t.Errorf("nothing changed: %d", n)
	}
	write(t, dir, files[2].name, strings.Replace(files[2].text, "altitude        ", "altitude        1", 1))
	if n := fresh(); n != 1 {
		t.Errorf("one text changed: %d", n)
	}
	write(t, dir, "catalogue.plant", files[9].text+"\n# another issue\n")
	if n := fresh(); n != 10 {
		t.Errorf("the catalogue changed: %d", n)
	}
	write(t, dir, "project.plant", "project \"x\"\nlimit header-velocity-most 0.9 m/s because \"test\"\n")
	if n := fresh(); n != 11 {
		t.Errorf("the settings changed: %d", n)
	}
	if err := os.Remove(filepath.Join(dir, files[4].name)); err != nil {
		t.Fatal(err)
	}
	fresh()
	if n := query(t, file, "SELECT count(*) FROM files"); n[0][0] != "10" {
		t.Errorf("%s files after one went", n[0][0])
	}
}

// A kill in the middle leaves a database that opens and goes on to the same end.
func TestSurveyKilled(t *testing.T) {
	dir := t.TempDir()
	writeFolder(t, dir, randomFiles(t, 160))
	clean, file := filepath.Join(t.TempDir(), "a.db"), filepath.Join(t.TempDir(), "b.db")
	if _, errs, code := tundish(t, "", "survey", dir, "-o", clean); code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	killed := 0
	for i := range 8 {
		cmd := exec.Command(os.Args[0], "survey", dir, "-o", file)
		cmd.Env = append(os.Environ(), "TUNDISH_TEST_PROCESS=1")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(math.Pow(2, float64(i))) * 6 * time.Millisecond)
		if cmd.Process.Kill() == nil && cmd.Wait() != nil {
			killed++
		}
		if ok := query(t, file+"?_pragma=busy_timeout(5000)", "PRAGMA integrity_check"); i > 3 && (len(ok) != 1 || ok[0][0] != "ok") {
			t.Fatalf("after a kill: %v", ok)
		}
	}
	if killed == 0 {
		t.Fatal("no run was killed")
	}
	if _, errs, code := tundish(t, "", "survey", dir, "-o", file); code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	for _, table := range []string{"files", "parts", "stated", "computed", "findings", "not_evaluated"} {
		q := "SELECT count(*) FROM " + table
		if a, b := query(t, clean, q), query(t, file, q); a[0][0] != b[0][0] {
			t.Errorf("%s: %s rows, after kills %s", table, a[0][0], b[0][0])
		}
	}
}

// The ready questions of the README run, and those with an answer in the examples
// have one.
func TestReadyQuestions(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(readme), "```sql\n")
	block, _, closed := strings.Cut(rest, "```")
	if !ok || !closed {
		t.Fatal("the README has no questions")
	}
	file := filepath.Join(t.TempDir(), "s.db")
	if _, errs, code := tundish(t, "", "survey", "examples", "-o", file); code != exitClean {
		t.Fatalf("exit %d: %s", code, errs)
	}
	asked, answered := 0, 0
	for _, q := range strings.Split(block, ";\n") {
		if strings.TrimSpace(q) == "" {
			continue
		}
		asked++
		if rows := query(t, file, q); len(rows) > 0 {
			answered++
		} else {
			t.Logf("no answer in the examples: %s", q)
		}
	}
	if asked < 5 || answered < asked-1 {
		t.Errorf("%d of %d questions have an answer", answered, asked)
	}
}
