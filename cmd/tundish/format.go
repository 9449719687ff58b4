package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.org/tundish/lang"
)

var _ = register(command{
	name: "format", args: "PATH...",
	summary: "print specifications in their canonical form, or rewrite them",
	run:     runFormat,
})

// formatted is the JSON form of one formatted file.
type formatted struct {
	File    string `json:"file"`
	Changed bool   `json:"changed"`
	Text    string `json:"text"`
}

func runFormat(args []string, s std) int {
	fs := flags("format", s)
	write := fs.Bool("write", false, "rewrite the files that change")
	checkOnly := fs.Bool("check", false, "print the names of the files that would change, exit 1 if there are any")
	form := fs.String("format", "text", "text or json")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() == 0 {
		return badUse(s, "format needs a file, a folder, or - for standard input")
	}
	if *write && *checkOnly {
		return badUse(s, "--write and --check exclude each other")
	}
	if err := oneOf("format", *form, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	list, err := specs(fs.Args())
	if err != nil {
		return failed(s, err)
	}
	code := exitClean
	results := []formatted{}
	for _, p := range list {
		name, text, err := readSpec(p, s)
		if err != nil {
			fmt.Fprintf(s.err, "tundish: %v\n", err)
			code = exitFailed
			continue
		}
		f := lang.Parse(lang.NewSource(name, text), nil)
		lang.Bind(f, lang.Language())
		got := lang.Format(f)
		changed := got != text
		switch {
		case *form == "json":
			results = append(results, formatted{name, changed, got})
		case *checkOnly && changed:
			fmt.Fprintln(s.out, name)
		case !*write && !*checkOnly:
			fmt.Fprint(s.out, got)
		}
		if *checkOnly && changed && code == exitClean {
			code = exitFindings
		}
		if *write && changed && p != "-" {
			if err := replaceFile(p, got); err != nil {
				fmt.Fprintf(s.err, "tundish: %v\n", err)
				code = exitFailed
			}
		}
	}
	if *form == "json" {
		enc := json.NewEncoder(s.out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if err := enc.Encode(results); err != nil {
			return failed(s, err)
		}
	}
	return code
}

// intoTemp is what a file is written through before it takes the place of another;
// tests put a disk in that fails.
var intoTemp = func(f *os.File) io.Writer { return f }

// replaceFile writes a file whole or not at all: a new file beside it, flushed,
// with the old one's mode, then renamed over it.
func replaceFile(p, text string) (err error) {
	if real, e := filepath.EvalSymlinks(p); e == nil {
		p = real // a link stays a link
	}
	mode := os.FileMode(0o644)
	if st, e := os.Stat(p); e == nil {
		mode = st.Mode().Perm()
	}
	tmp, err := os.CreateTemp(filepath.Dir(p), ".tundish-*")
	if err != nil {
		return fmt.Errorf("writing %s: %w", p, cause(err))
	}
	defer func() {
		if err != nil {
			tmp.Close()
			os.Remove(tmp.Name())
			err = fmt.Errorf("writing %s: %w", p, cause(err))
		}
	}()
	if _, err = io.WriteString(intoTemp(tmp), text); err != nil {
		return err
	}
	if err = tmp.Chmod(mode); err != nil {
		return err
	}
	if err = tmp.Sync(); err != nil {
		return err
	}
	if err = tmp.Close(); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), p)
}
