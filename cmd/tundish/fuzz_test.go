package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/tundish/check"
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
		for _, m := range a.names {
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
		b, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(b))
	}
	w, err := openWorkspace("../../examples")
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(w.close)
	load := func(name string) (*lang.File, error) { return w.load("../../examples/" + filepath.Base(name)) }
	f.Fuzz(func(t *testing.T, text string) {
		sp := &lintSpace{parse: w.parse, load: load, set: check.ReadSettings(nil)}
		rep := sp.judge("x.plant", text, testDay)
		for _, fd := range rep.Findings {
			if fd.Rule == "internal-fault" {
				t.Fatalf("%s", fd.Message)
			}
			if fd.Message == "" || fd.Span.Start < 0 || fd.File == nil && fd.Span.End > len(text) {
				t.Fatalf("a finding without words or place: %+v", fd)
			}
		}
	})
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
