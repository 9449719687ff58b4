package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// walk calls found for every specification under a folder, in no order, and
// failed for every folder that cannot be read. Hidden folders are passed over. A
// folder is read a few hundred names at a time, however many it holds.
func walk(dir string, found func(name string), failed func(dir string, err error)) {
	f, err := os.Open(dir)
	if err != nil {
		failed(dir, fmt.Errorf("opening %s: %w", dir, cause(err)))
		return
	}
	var below []string
	for {
		list, err := f.ReadDir(512)
		for _, e := range list {
			switch name := e.Name(); {
			case e.IsDir() && strings.HasPrefix(name, "."):
			case e.IsDir():
				below = append(below, name)
			case strings.HasSuffix(name, ".plant"):
				found(filepath.Join(dir, name))
			}
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			failed(dir, fmt.Errorf("reading %s: %w", dir, cause(err)))
			break
		}
	}
	f.Close()
	for _, name := range below {
		walk(filepath.Join(dir, name), found, failed)
	}
}

// specs lists the specifications that paths mean, sorted: a file as it is, a
// folder walked for .plant files.
func specs(paths []string) ([]string, error) {
	var out []string
	for _, p := range paths {
		if p == "-" {
			out = append(out, p)
			continue
		}
		st, err := os.Stat(p)
		if err != nil {
			return nil, fmt.Errorf("looking at %s: %w", p, cause(err))
		}
		if !st.IsDir() {
			out = append(out, p)
			continue
		}
		walk(p, func(name string) { out = append(out, name) }, func(_ string, e error) { err = errors.Join(err, e) })
		if err != nil {
			return nil, err
		}
	}
	slices.Sort(out)
	return slices.Compact(out), nil
}

func cause(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err
	}
	return err
}
