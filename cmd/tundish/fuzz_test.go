package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
)

// FuzzArchive: an archive of any bytes is listed or refused, its members stay
// inside, and each can be read or not, without a breakdown.
func FuzzArchive(f *testing.F) {
	files := []packed{{"a/p.plant", "plant \"x\"\nuse \"../c.plant\"\n"}, {"c.plant", "catalogue \"c\"\n"}}
	f.Add(zipped(f, files), 0)
	f.Add(tarred(f, append(files, packed{"../up.plant", "x"}, packed{"l.plant", "-> /etc/passwd"})), 1)
	f.Add(gzipped(f, tarred(f, files)), 2)
	f.Add([]byte("PK\x05\x06"), 0)
	f.Fuzz(func(t *testing.T, b []byte, kind int) {
		ext := [...]string{".zip", ".tar", ".tar.gz"}[((kind%3)+3)%3]
		name := filepath.Join(t.TempDir(), "a"+ext)
		if err := os.WriteFile(name, b, 0o600); err != nil {
			t.Fatal(err)
		}
		a, err := openArchive(name)
		if err != nil {
			return
		}
		defer a.close()
		for _, m := range a.names() {
			if strings.HasPrefix(m, "/") || strings.HasPrefix(m, "..") || strings.Contains(m, "/../") {
				t.Fatalf("the member %q leads out", m)
			}
			if text, err := a.read(m); err == nil && len(text) > lang.MaxFileSize+1 {
				t.Fatalf("the member %q is longer than a file may be", m)
			}
		}
		if _, err := a.read("../../etc/passwd"); err == nil {
			t.Fatal("a file outside was read")
		}
	})
}

// FuzzLint: any text is judged to the end; no rule and no solver breaks down.
func FuzzLint(f *testing.F) {
	for _, name := range []string{"in-line.plant", "back-to-back.plant", "l-shaped-faulty.plant", "us-units.plant", "back-to-back-record.plant", "catalogue.plant"} {
		f.Add(exampleText(f, name))
	}
	judge := judgeBeside(f, nil)
	f.Fuzz(func(t *testing.T, text string) { allWell(t, judge("x.plant", text), text) })
}

// FuzzCatalogue: a plant is judged to the end whatever stands in its catalogue.
func FuzzCatalogue(f *testing.F) {
	f.Add(exampleText(f, "catalogue.plant"))
	f.Add("catalogue \"c\"\nuse \"catalogue.plant\"\nunit-type Wall-100 {\n  output 0 kW at 80/60 degC\n  input -3 kW net\n  flow-least 0 m3/h\n}\n")
	plant := exampleText(f, "in-line.plant")
	f.Fuzz(func(t *testing.T, text string) {
		judge := judgeBeside(t, map[string]string{"catalogue.plant": text})
		allWell(t, judge("x.plant", plant), plant)
	})
}

// FuzzRecord: a record is judged to the end against its plant.
func FuzzRecord(f *testing.F) {
	f.Add(exampleText(f, "back-to-back-record.plant"))
	f.Add("record \"r\" issue 2026-01-01\nof-plant \"back-to-back.plant\" revision R5\nas-built {\n  changed G1 length 0 m\n  changed Head-F falls 1 deg\n}\n")
	judge := judgeBeside(f, nil)
	f.Fuzz(func(t *testing.T, text string) { allWell(t, judge("x.plant", text), text) })
}

// FuzzExpression: whatever is required of a plant, the rule answers or says why it
// cannot.
func FuzzExpression(f *testing.F) {
	for _, s := range []string{"U1.output >= 2 kW", "(basis.load + 2 kW) * 2 / 3 < units.output.total", "Flow-H.velocity <= 0.7 m/s", "G1.length / 0 m > 1", "1 1/4 in >= 32 mm", "G1.velocity.all-full * G1.length >= 0 m2/s", "2026-01-01 > U1", "75/55 degC <= basis.primary", "-1e9 K < 10 % * 5 off"} {
		f.Add(s)
	}
	judge := judgeBeside(f, nil)
	const head = "plant \"x\"\nuse \"catalogue.plant\"\nbasis {\n  load Heating 200 kW heating\n  primary 75/55 degC\n}\nunits U1..U2 {\n  type Wall-100\n}\ngas-run {\n  meter Meter 40 m3/h\n  pipe G1 steel DN50 6 m from Meter to U1 bends 2 off\n}\n"
	f.Fuzz(func(t *testing.T, expr string) {
		text := head + "require " + expr + " because \"x\"\n"
		allWell(t, judge("x.plant", text), text)
	})
}

// FuzzSettings: a project file of any text changes limits or says what is wrong
// with it, and the plant is judged to the end.
func FuzzSettings(f *testing.F) {
	f.Add("project \"p\"\ngate warning\nlimit header-velocity-most 0.9 m/s because \"old house\"\n")
	f.Add("project \"p\"\nlimit header-velocity-most 9 kW because \"x\"\nlimit none 1 m because \"x\"\nlimit header-velocity-most -1 m/s\n")
	plant := exampleText(f, "in-line.plant")
	judge := judgeBeside(f, nil)
	f.Fuzz(func(t *testing.T, text string) {
		project := lang.Parse(lang.NewSource("project.plant", text), nil)
		lang.Bind(project, lang.Language())
		sp := &lintSpace{parse: bind, load: func(name string) (*lang.File, error) { return nil, errors.New("not here") }, set: check.ReadSettings(project)}
		allWell(t, sp.judge("x.plant", "plant \"x\"\n", testDay), text)
		if len(sp.set.Overrides) > 0 {
			allWell(t, judge("x.plant", plant, sp.set), plant)
		}
	})
}

func exampleText(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile("../../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func bind(name, text string) *lang.File {
	f := lang.Parse(lang.NewSource(name, text), nil)
	lang.Bind(f, lang.Language())
	return f
}

// judgeBeside judges texts as if they lay beside the examples, some of which may
// have another text.
func judgeBeside(t testing.TB, others map[string]string) func(name, text string, set ...*check.Settings) *check.Report {
	t.Helper()
	files := map[string]*lang.File{}
	for _, name := range []string{"catalogue.plant", "back-to-back.plant"} {
		text, ok := others[name]
		if !ok {
			text = exampleText(t, name)
		}
		files[name] = bind(name, text)
	}
	load := func(name string) (*lang.File, error) {
		if f := files[filepath.Base(name)]; f != nil {
			return f, nil
		}
		return nil, errors.New("no such file")
	}
	return func(name, text string, set ...*check.Settings) *check.Report {
		sp := &lintSpace{parse: bind, load: load, set: check.ReadSettings(nil)}
		if len(set) > 0 {
			sp.set = set[0]
		}
		return sp.judge(name, text, testDay)
	}
}

// allWell: the report is whole, has its places inside its texts, and prints.
func allWell(t *testing.T, rep *check.Report, text string) {
	t.Helper()
	for _, fd := range rep.Findings {
		if fd.Rule == "internal-fault" {
			t.Fatalf("%s", fd.Message)
		}
		own := len(text)
		if fd.File != nil {
			own = len(fd.File.Source.Text)
		}
		if fd.Message == "" || fd.Span.Start < 0 || fd.Span.End > own {
			t.Fatalf("a finding without words or place: %+v", fd)
		}
	}
	(&report.Text{W: io.Discard}).File("x.plant", rep)
	d := report.NewDocument(report.Tool{Name: "x"})
	d.Add("x.plant", rep)
	if err := d.Write(io.Discard); err != nil {
		t.Fatal(err) // a number that JSON has no form for
	}
}

// FuzzTable: the table of a quick sum, whatever its bytes, gets an answer or a
// message.
func FuzzTable(f *testing.F) {
	f.Add("reynolds [-],relative-roughness [-]\n1e5,0\n")
	f.Add("kind,id,from,to,length [m],bore [mm],roughness [mm],loss-coefficient [-],demand [L/s],head [m]\nfixed,S,,,,,,,,30\n")
	f.Fuzz(func(t *testing.T, text string) {
		for _, topic := range []string{"friction-factor", "water-network"} {
			var out, errs bytes.Buffer
			code := run([]string{"calc", topic, "--csv", "-"}, std{in: strings.NewReader(text), out: &out, err: &errs})
			if code != exitClean && out.Len()+errs.Len() == 0 {
				t.Fatalf("%s: exit %d without a word", topic, code)
			}
		}
	})
}
