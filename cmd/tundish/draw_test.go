package main

import (
	"bytes"
	"encoding/xml"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestDrawWritesEveryKind(t *testing.T) {
	for _, kind := range drawingKinds() {
		out := filepath.Join(t.TempDir(), "out.svg")
		var stdout, stderr bytes.Buffer
		if code := run([]string{"draw", "../../examples/back-to-back.plant", "--kind", kind, "-o", out}, std{out: &stdout, err: &stderr}); code != exitClean {
			t.Errorf("%s: exit %d: %s", kind, code, stderr.String())
			continue
		}
		b, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		var svg struct {
			XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
			ViewBox string   `xml:"viewBox,attr"`
			Title   string   `xml:"title"`
			Desc    string   `xml:"desc"`
		}
		if err := xml.Unmarshal(b, &svg); err != nil {
			t.Errorf("%s: %v", kind, err)
		}
		if len(strings.Fields(svg.ViewBox)) != 4 || svg.Title == "" || svg.Desc == "" {
			t.Errorf("%s: viewBox %q, title %q, desc %q", kind, svg.ViewBox, svg.Title, svg.Desc)
		}
	}
}

func TestDrawToStandardOutput(t *testing.T) {
	var stdout, stderr bytes.Buffer
	if code := run([]string{"draw", "../../examples/in-line.plant", "-o", "-"}, std{out: &stdout, err: &stderr}); code != exitClean {
		t.Fatalf("exit %d: %s", code, stderr.String())
	}
	if !strings.HasPrefix(stdout.String(), "<svg ") {
		t.Errorf("not an svg element: %.60q", stdout.String())
	}
}

func TestDrawCalledWrongly(t *testing.T) {
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"draw"}, exitUse, "one file"},
		{[]string{"draw", "x.plant", "--kind", "oil-painting"}, exitUse, "--kind"},
		{[]string{"draw", "../../examples/catalogue.plant"}, exitFailed, "only a plant can be drawn"},
		{[]string{"draw", "no-such.plant"}, exitFailed, "no-such.plant"},
		{[]string{"draw", "../../examples/in-line.plant", "-o", "no-such-folder/out.svg"}, exitFailed, "no-such-folder"},
	} {
		var stdout, stderr bytes.Buffer
		if code := run(c.args, std{out: &stdout, err: &stderr}); code != c.code || !strings.Contains(stderr.String(), c.says) {
			t.Errorf("%v: exit %d, %q", c.args, code, stderr.String())
		}
	}
}
