//go:build unix

package main

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/tundish/testdata/plants"
)

// built builds the tool as it is handed out.
func built(t testing.TB) string {
	t.Helper()
	return build(t, "example.org/tundish/cmd/tundish")
}

// build builds a program without C: the linker of the system would add its own time
// to every start.
func build(t testing.TB, what string) string {
	t.Helper()
	exe := filepath.Join(t.TempDir(), "program")
	cmd := exec.Command("go", "build", "-o", exe, what)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return exe
}

// used is what a process took.
type used struct {
	wall, cpu time.Duration
	peak      float64 // MB of memory
}

// process runs the tool as a process of its own; its output goes to a file, as in
// a run of many files.
func process(t testing.TB, exe string, args ...string) used {
	t.Helper()
	out, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer out.Close()
	cmd := exec.Command(exe, args...)
	cmd.Stdout, cmd.Stderr = out, os.Stderr
	start := time.Now()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	done := make(chan error)
	go func() { done <- cmd.Wait() }()
	peak := 0.0
	for tick := time.NewTicker(2 * time.Millisecond); ; {
		select {
		case <-tick.C:
			peak = max(peak, highWater(cmd.Process.Pid))
			continue
		case err = <-done:
			tick.Stop()
		}
		break
	}
	wall := time.Since(start)
	if code := cmd.ProcessState.ExitCode(); code != exitFindings && code != exitClean {
		t.Fatalf("exit %d: %v", code, err)
	}
	return used{wall, cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(), peak / 1e6}
}

// highWater is the most memory that a process has had so far, in bytes; 0 where
// the system does not tell. What the system sums up at the end of a process counts
// the memory of the one that started it too.
func highWater(pid int) float64 {
	b, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	_, after, ok := strings.Cut(string(b), "VmHWM:")
	if !ok {
		return 0
	}
	kB, err := strconv.ParseFloat(strings.Fields(after)[0], 64)
	if err != nil {
		return 0
	}
	return kB * 1024
}

// archiveOf writes short random plants into folders of a thousand, every tenth
// with a fault of a known kind, and gives their mean size.
func archiveOf(t testing.TB, dir string, n int) (mean int) {
	t.Helper()
	cat, err := os.ReadFile(filepath.Join(root, "examples", plants.Catalogue))
	if err != nil {
		t.Fatal(err)
	}
	size := 0
	for i := range n {
		sub := filepath.Join(dir, fmt.Sprintf("%03d", i/1000))
		if i%1000 == 0 {
			if err := os.MkdirAll(sub, 0o755); err != nil {
				t.Fatal(err)
			}
			write(t, sub, plants.Catalogue, string(cat))
		}
		r := rand.New(rand.NewPCG(uint64(i), 4))
		text := plants.Short(r)
		if i%10 == 0 {
			text, _ = plants.Seeded(r, text)
		}
		size += len(text)
		write(t, sub, fmt.Sprintf("p%06d.plant", i), text)
	}
	return size / n
}

// BenchmarkLint times the built tool over an archive, one process each, files in
// the cache of the disk. TUNDISH_BENCH gives other numbers of files than 1,000 and
// 10,000.
func BenchmarkLint(b *testing.B) {
	sizes := []int{1000, 10000}
	if s := os.Getenv("TUNDISH_BENCH"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil {
			b.Fatal(err)
		}
		sizes = []int{n}
	}
	exe := built(b)
	for _, n := range sizes {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dir := b.TempDir()
			mean := archiveOf(b, dir, n)
			best, peak, cpu := time.Duration(1<<62), 0.0, time.Duration(1<<62)
			for b.Loop() {
				u := process(b, exe, "lint", dir)
				best, cpu, peak = min(best, u.wall), min(cpu, u.cpu), max(peak, u.peak)
			}
			b.ReportMetric(float64(n)/best.Seconds(), "files/s")
			b.ReportMetric(float64(n)/cpu.Seconds(), "files/core-s")
			b.ReportMetric(peak, "MB-peak")
			b.ReportMetric(float64(mean), "B/file")
		})
	}
}

// BenchmarkStart times the process from its start to its end over one file, beside
// a bare Go program with flag and fmt that reads the file.
func BenchmarkStart(b *testing.B) {
	bare := filepath.Join(b.TempDir(), "bare.go")
	if err := os.WriteFile(bare, []byte(bareProgram), 0o600); err != nil {
		b.Fatal(err)
	}
	exe := build(b, bare)
	file := filepath.Join(root, "examples", "in-line.plant")
	for _, c := range []struct {
		name string
		args []string
	}{{"bare", []string{exe, file}}, {"version", []string{built(b), "version"}}, {"lint", []string{built(b), "lint", file}}} {
		b.Run(c.name, func(b *testing.B) {
			var times []time.Duration
			for b.Loop() {
				cmd := exec.Command(c.args[0], c.args[1:]...)
				cmd.Stdout = io.Discard
				start := time.Now()
				if err := cmd.Run(); err != nil {
					b.Fatal(err)
				}
				times = append(times, time.Since(start))
			}
			slices.Sort(times)
			b.ReportMetric(float64(times[0].Microseconds())/1000, "ms-least")
			b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
		})
	}
}

const bareProgram = `package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	name := flag.String("name", "", "a name")
	flag.Parse()
	b, err := os.ReadFile(flag.Arg(0))
	fmt.Println(*name, len(b), err)
}
`

// The memory of a run does not grow with the archive, and stays under 64 MB: in no
// format are findings held that could be printed, nor files that were judged.
func TestMemoryIsFlat(t *testing.T) {
	if highWater(os.Getpid()) == 0 {
		t.Skip("this system does not tell the memory of a process")
	}
	exe := built(t)
	dir := t.TempDir()
	const few, many = 8000, 24000 // from the first number on the buffers have their size
	for i := range many {
		sub := filepath.Join(dir, "few")
		if i >= few {
			sub = filepath.Join(dir, "more", fmt.Sprint(i/1000))
		}
		if i%1000 == 0 {
			if err := os.MkdirAll(sub, 0o755); err != nil {
				t.Fatal(err)
			}
		}
		write(t, sub, fmt.Sprintf("p%06d.plant", i), fmt.Sprintf("plant \"p%d\"\nbasis {\n  jurisdiction UK\n  altitude %d kW\n}\n", i, i))
	}
	for _, format := range []string{"json"} {
		a := process(t, exe, "lint", "--format", format, filepath.Join(dir, "few"))
		b := process(t, exe, "lint", "--format", format, dir)
		t.Logf("%s: %.1f MB for %d files, %.1f MB for %d", format, a.peak, few, b.peak, many)
		if b.peak > 64 || b.peak > a.peak+12 {
			t.Errorf("%s: %.1f MB for %d files, %.1f MB for %d", format, a.peak, few, b.peak, many)
		}
	}
}
