package main

import (
	"os"
	"testing"
)

// TestMain lets the test program stand in for the tool, so that a test can kill a
// process in the middle of its work.
func TestMain(m *testing.M) {
	if os.Getenv("TUNDISH_TEST_PROCESS") != "" {
		main()
		return
	}
	os.Exit(m.Run())
}
