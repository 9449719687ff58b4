//go:build unix

package main

import (
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// A start makes next to nothing of ours: tables are laid down by the compiler or
// made when they are asked for, so that one file does not wait for what it does not
// need.
func TestStartMakesLittle(t *testing.T) {
	const most = 80_000 // bytes; a table that is made at the start takes hundreds of thousands
	cmd := exec.Command(built(t), "version")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	sum, packages := 0, 0
	for line := range strings.Lines(string(out)) {
		// init example.org/tundish/lang @1.8 ms, 0.024 ms clock, 12080 bytes, 22 allocs
		rest, ours := strings.CutPrefix(line, "init example.org/tundish/")
		if !ours {
			continue
		}
		words := strings.Fields(rest)
		i := len(words) - 4
		if i < 0 || words[i+1] != "bytes," {
			t.Fatalf("not the trace of an init: %s", line)
		}
		n, err := strconv.Atoi(words[i])
		if err != nil {
			t.Fatal(err)
		}
		if n > most/4 {
			t.Errorf("%s makes %d bytes", words[0], n)
		}
		sum, packages = sum+n, packages+1
	}
	if packages < 5 {
		t.Fatalf("%d packages of ours start: %s", packages, out)
	}
	if sum > most {
		t.Errorf("%d packages of ours make %d bytes at every start, at most %d", packages, sum, most)
	}
	t.Logf("%d packages of ours make %d bytes", packages, sum)
}
