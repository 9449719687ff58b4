package main

import (
	"context"
	"fmt"
	"os"

	"example.org/tundish/lsp"
)

var _ = register(command{
	name: "serve", args: "[--log FILE]",
	summary: "the language server, on standard input and output",
	run:     runServe,
})

func runServe(args []string, s std) int {
	fs := flags("serve", s)
	logFile := fs.String("log", "", "write every message to this file")
	fs.Bool("stdio", true, "standard input and output, which is the only way; some clients say it")
	if code, done := parse(fs, args, s); done {
		return code
	}
	opts := lsp.Options{Version: version, Figures: figures}
	if *logFile != "" {
		f, err := os.OpenFile(*logFile, os.O_CREATE|os.O_WRONLY|os.O_TRUNC, 0o600)
		if err != nil {
			return failed(s, fmt.Errorf("opening the log %s: %w", *logFile, cause(err)))
		}
		defer f.Close()
		opts.Log = f
	}
	return lsp.Run(context.Background(), s.in, s.out, opts)
}
