package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// root is the folder of the project.
var root = func() string {
	p, err := filepath.Abs("../..")
	if err != nil {
		panic(err)
	}
	return p
}()

// tundish runs the program in the project's folder with the arguments.
func tundish(t testing.TB, stdin string, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	t.Chdir(root)
	var out, errs bytes.Buffer
	code = run(args, std{in: strings.NewReader(stdin), out: &out, err: &errs})
	return out.String(), errs.String(), code
}

func write(t testing.TB, dir, name, text string) string {
	t.Helper()
	p := filepath.Join(dir, name)
	if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return p
}
