// Command tundish checks specifications of commercial heating plants.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"sort"

	"github.com/spf13/pflag"
)

// version is the tool's version; a release build sets it by -ldflags.
var version = "0.1.0-dev"

// The exit codes of every command.
const (
	exitClean    = 0 // nothing at or above the gate
	exitFindings = 1 // findings at or above the gate
	exitUse      = 2 // the command was called wrongly
	exitFailed   = 3 // it could not finish
)

// std is where a command reads and writes; tests put their own in.
type std struct {
	in       io.Reader
	out, err io.Writer
	// terminal is set when out is a terminal, so that color may be used.
	terminal bool
}

// command is one subcommand. Each stands in a file of its own and registers
// itself in a package variable.
type command struct {
	name    string
	args    string // shown after the name
	summary string // one line
	run     func(args []string, s std) int
}

var commands = map[string]command{}

func register(c command) command {
	commands[c.name] = c
	return c
}

func main() {
	if os.Getenv("GOGC") == "" {
		// A run makes much that is short-lived and keeps little: collecting at
		// the default pace costs a third of the time and saves a few MB.
		debug.SetGCPercent(400)
	}
	s := std{in: os.Stdin, out: os.Stdout, err: os.Stderr, terminal: wantsColor()}
	os.Exit(run(os.Args[1:], s))
}

// wantsColor holds to NO_COLOR and to terminals only.
func wantsColor() bool {
	if os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return false
	}
	st, err := os.Stdout.Stat()
	return err == nil && st.Mode()&os.ModeCharDevice != 0
}

// run is the whole program apart from the process, so that tests call it.
func run(args []string, s std) int {
	if len(args) == 0 {
		usage(s.err)
		return exitUse
	}
	switch args[0] {
	case "help", "--help", "-h":
		if len(args) > 1 {
			if c, ok := commands[args[1]]; ok {
				return c.run([]string{"--help"}, s)
			}
		}
		usage(s.out)
		return exitClean
	case "version", "--version":
		fmt.Fprintln(s.out, "tundish", version)
		return exitClean
	}
	c, ok := commands[args[0]]
	if !ok {
		fmt.Fprintf(s.err, "tundish: there is no command %q\n\n", args[0])
		usage(s.err)
		return exitUse
	}
	return c.run(args[1:], s)
}

func usage(w io.Writer) {
	fmt.Fprint(w, "tundish checks specifications of commercial heating plants.\n\n")
	names := make([]string, 0, len(commands))
	for n := range commands {
		names = append(names, n)
	}
	sort.Strings(names)
	for _, n := range names {
		fmt.Fprintf(w, "  tundish %-9s %s\n", n, commands[n].summary)
	}
	fmt.Fprint(w, `
"tundish help COMMAND" tells more. Exit codes: 0 nothing at or above the gate,
1 findings, 2 called wrongly, 3 could not finish.

Tundish supports, and never replaces, the work of a registered engineer and the
local code. A clean check is no permission to build, to fire or to open gas.
`)
}

// flags makes the flag set of a command; its help goes to the right stream.
func flags(c string, s std) *pflag.FlagSet {
	fs := pflag.NewFlagSet(c, pflag.ContinueOnError)
	fs.SortFlags = false
	fs.SetOutput(s.err)
	cmd := commands[c]
	fs.Usage = func() {
		fmt.Fprintf(s.out, "tundish %s %s\n\n%s\n\n%s", cmd.name, cmd.args, cmd.summary, fs.FlagUsages())
	}
	return fs
}

// parse reads the flags; done is true when the command is to stop at once with
// that code.
func parse(fs *pflag.FlagSet, args []string, s std) (code int, done bool) {
	err := fs.Parse(args)
	switch {
	case err == nil:
		return 0, false
	case errors.Is(err, pflag.ErrHelp):
		return exitClean, true
	}
	return badUse(s, err.Error()), true
}

func badUse(s std, msg string) int {
	fmt.Fprintf(s.err, "tundish: %s\n", msg)
	return exitUse
}

func failed(s std, err error) int {
	fmt.Fprintf(s.err, "tundish: %v\n", err)
	return exitFailed
}

// oneOf checks a flag that takes one of a few words.
func oneOf(name, got string, words ...string) error {
	for _, w := range words {
		if got == w {
			return nil
		}
	}
	return fmt.Errorf("--%s takes one of %v, not %q", name, words, got)
}
