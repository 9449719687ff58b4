package main

import (
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
)

// bar shows on a terminal how far a run is; elsewhere nothing.
type bar struct{ p *progressbar.ProgressBar }

// barFrom is the number of files from which a bar is worth its line.
const barFrom = 50

func newBar(s std, files int) *bar {
	if files < barFrom || s.err != os.Stderr || os.Getenv("CI") != "" || os.Getenv("TERM") == "dumb" {
		return &bar{}
	}
	if st, err := os.Stderr.Stat(); err != nil || st.Mode()&os.ModeCharDevice == 0 {
		return &bar{}
	}
	return &bar{progressbar.NewOptions(files, progressbar.OptionSetWriter(os.Stderr), progressbar.OptionShowCount(), progressbar.OptionShowIts(),
		progressbar.OptionSetItsString("files"), progressbar.OptionSetPredictTime(true), progressbar.OptionThrottle(100*time.Millisecond), progressbar.OptionClearOnFinish())}
}

func (b *bar) step() {
	if b.p != nil {
		_ = b.p.Add(1) // a bar that cannot be drawn stops no run
	}
}

func (b *bar) end() {
	if b.p != nil {
		_ = b.p.Finish()
	}
}
