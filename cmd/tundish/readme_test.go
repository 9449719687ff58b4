package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// readmeCommands reads the commands of the first block of code under a heading of
// the README.
func readmeCommands(t *testing.T, heading string) (list [][]string) {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, text, ok := strings.Cut(string(b), "\n## "+heading+"\n")
	_, text, ok2 := strings.Cut(text, "```sh\n")
	text, _, ok3 := strings.Cut(text, "```")
	if !ok || !ok2 || !ok3 {
		t.Fatalf("no commands under %s", heading)
	}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		line, _, _ = strings.Cut(line, "#")
		list = append(list, strings.Fields(line))
	}
	return list
}

// The commands of "In CI" do as typed what is said beside them: sound plants pass,
// a faulty one stops the run, and with the baseline only new findings do.
func TestReadmeInCI(t *testing.T) {
	dir := t.TempDir()
	plants := filepath.Join(dir, "plants")
	if err := os.Mkdir(plants, 0o755); err != nil {
		t.Fatal(err)
	}
	put := func(name, as string) {
		b, err := os.ReadFile(filepath.Join(root, "examples", name))
		if err != nil {
			t.Fatal(err)
		}
		write(t, plants, as, string(b))
	}
	do := func() (codes []int) {
		t.Helper()
		t.Chdir(dir)
		for _, c := range readmeCommands(t, "In CI") {
			if c[0] != "tundish" {
				t.Fatalf("not a command of the tool: %q", c)
			}
			var out, errs bytes.Buffer
			args := c[1:]
			file := ""
			if n := len(args); n > 2 && args[n-2] == ">" {
				args, file = args[:n-2], args[n-1]
			}
			code := run(args, std{in: strings.NewReader(""), out: &out, err: &errs})
			if code > exitFindings {
				t.Errorf("%q: exit %d: %s", c, code, errs.String())
			}
			if file != "" {
				write(t, dir, file, out.String())
			}
			codes = append(codes, code)
		}
		return codes
	}
	same := func(what string, got, want []int) {
		t.Helper()
		if len(got) != len(want) {
			t.Fatalf("%d commands, want %d", len(got), len(want))
		}
		for i := range got {
			if got[i] != want[i] {
				t.Errorf("%s: command %d has exit code %d, want %d", what, i+1, got[i], want[i])
			}
		}
	}
	put("in-line.plant", "in-line.plant")
	put("catalogue.plant", "catalogue.plant")
	same("sound plants", do(), []int{0, 0, 0, 0})
	put("l-shaped-faulty.plant", "old.plant")
	same("with a faulty one", do(), []int{1, 1, 1, 0})
	put("l-shaped-faulty.plant", "new.plant")
	_, _, code := tundish(t, "", "lint", "--baseline", filepath.Join(dir, "baseline.json"), plants)
	if code != exitFindings {
		t.Errorf("new findings beside the baseline: exit %d", code)
	}
}
