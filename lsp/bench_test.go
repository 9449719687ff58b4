package lsp

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// TestMain lets the test program stand in for the server, so that benchmarks
// talk to a process of its own over real pipes.
func TestMain(m *testing.M) {
	switch os.Getenv("TUNDISH_TEST_PROCESS") {
	case "serve":
		debug.SetGCPercent(400) // as the program does
		os.Exit(Run(context.Background(), os.Stdin, os.Stdout, Options{Version: "test"}))
	case "floor":
		floor(os.Stdin, os.Stdout)
		os.Exit(0)
	}
	// Nothing of the tests stays in the user's cache folder.
	cache, err := os.MkdirTemp("", "tundish-cache-")
	if err != nil {
		panic(err)
	}
	cacheIn(func(key, value string) { os.Setenv(key, value) }, cache)
	code := m.Run()
	os.RemoveAll(cache)
	os.Exit(code)
}

// cacheIn puts the user's cache folder into another one, on any system.
func cacheIn(set func(key, value string), dir string) {
	for _, key := range []string{"XDG_CACHE_HOME", "HOME", "LocalAppData"} {
		set(key, dir)
	}
}

// floor answers each message that carries a text with empty diagnostics of its
// version: what pipes and framing alone cost.
func floor(in io.Reader, out io.Writer) {
	s := newStream(in, out, nil)
	go s.send()
	for {
		body, err := s.read()
		if err != nil {
			return
		}
		var m struct {
			ID     json.RawMessage `json:"id"`
			Method string          `json:"method"`
			Params struct {
				TextDocument struct {
					URI     string `json:"uri"`
					Version int    `json:"version"`
				} `json:"textDocument"`
			} `json:"params"`
		}
		if json.Unmarshal(body, &m) != nil {
			continue
		}
		if len(m.ID) > 0 {
			s.write(fmt.Appendf(nil, `{"jsonrpc":"2.0","id":%s,"result":{"capabilities":{}}}`, m.ID))
			continue
		}
		if m.Params.TextDocument.URI != "" {
			s.write(fmt.Appendf(nil, `{"jsonrpc":"2.0","method":"textDocument/publishDiagnostics","params":{"uri":%q,"version":%d,"diagnostics":[]}}`, m.Params.TextDocument.URI, m.Params.TextDocument.Version))
		}
	}
}

// processClient is the smallest client of a server process: it sends prepared
// bytes and reads until the answer that it waits for.
type processClient struct {
	b   *testing.B
	cmd *exec.Cmd
	in  io.WriteCloser
	out *stream
	id  int
}

func startProcess(b *testing.B, kind string) *processClient {
	b.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "TUNDISH_TEST_PROCESS="+kind)
	cmd.Stderr = os.Stderr
	in, err := cmd.StdinPipe()
	if err != nil {
		b.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	c := &processClient{b: b, cmd: cmd, in: in, out: newStream(out, io.Discard, nil)}
	b.Cleanup(func() { in.Close(); cmd.Wait() })
	return c
}

func (c *processClient) send(body []byte) {
	if _, err := fmt.Fprintf(c.in, "Content-Length: %d\r\n\r\n%s", len(body), body); err != nil {
		c.b.Fatal(err)
	}
}

func (c *processClient) message(method string, id int, params any) []byte {
	raw, err := json.Marshal(params)
	if err != nil {
		c.b.Fatal(err)
	}
	if id > 0 {
		return fmt.Appendf(nil, `{"jsonrpc":"2.0","id":%d,"method":%q,"params":%s}`, id, method, raw)
	}
	return fmt.Appendf(nil, `{"jsonrpc":"2.0","method":%q,"params":%s}`, method, raw)
}

// until reads messages to the first that holds a text.
func (c *processClient) until(marks ...string) {
	for {
		body, err := c.out.read()
		if err != nil {
			c.b.Fatal("the server went:", err)
		}
		text := string(body)
		if !slices.ContainsFunc(marks, func(m string) bool { return !strings.Contains(text, m) }) {
			return
		}
	}
}

func (c *processClient) request(method string, params any) {
	c.id++
	c.send(c.message(method, c.id, params))
	c.until(fmt.Sprintf(`"id":%d`, c.id), `"result"`)
}

func (c *processClient) start(uri, text string) { c.startAs(initAll, uri, text) }

func (c *processClient) startAs(init, uri, text string) {
	c.request("initialize", json.RawMessage(init))
	c.send(c.message("initialized", 0, object{}))
	c.send(c.message("textDocument/didOpen", 0, object{"textDocument": object{"uri": uri, "languageId": "plant", "version": 1, "text": text}}))
	c.until("publishDiagnostics", `"version":1`)
}

// typing is a text and the place where a digit of it is typed over and back.
func (c *processClient) edit(uri string, at object, version int) {
	digit := strconv.Itoa(6 + version%2)
	end := object{"line": at["line"], "character": at["character"].(int) + 1}
	c.send(c.message("textDocument/didChange", 0, object{
		"textDocument":   object{"uri": uri, "version": version},
		"contentChanges": []object{{"range": object{"start": at, "end": end}, "text": digit}},
	}))
	c.until("publishDiagnostics", fmt.Sprintf(`"version":%d`, version))
}

// lines is the example with eight units, filled up to n lines with pipes and
// circuits of the secondary side.
func lines(b *testing.B, n int) (uri, text string, at object) {
	b.Helper()
	uri, text = example(b, "back-to-back.plant")
	var more strings.Builder
	for i := strings.Count(text, "\n"); i < n; i++ {
		switch {
		case n <= 300:
			fmt.Fprintf(&more, "  # note %d of the designer on the branches of the house\n", i)
		case i%2 == 0:
			fmt.Fprintf(&more, "  pipe X%d steel DN50 %d m from Exch to Y%d bends 2 off\n", i, 3+i%7, i+1)
		default:
			fmt.Fprintf(&more, "  circuit Y%d %d.5 m3/h 30 kPa 70/50 degC mixed\n", i, 1+i%3)
		}
	}
	const mark = "  content         6400 l\n}\n\nsafety"
	if !strings.Contains(text, mark) {
		b.Fatal("the example changed")
	}
	text = strings.Replace(text, mark, "  content         6400 l\n"+more.String()+"}\n\nsafety", 1)
	return uri, text, position(text, "22 m rise", 1)
}

// spread reports the median and the 99th percentile of times.
func spread(b *testing.B, times []time.Duration) {
	slices.Sort(times)
	at := func(q float64) float64 {
		return float64(times[int(q*float64(len(times)-1))].Nanoseconds()) / 1e6
	}
	b.ReportMetric(at(0.5), "p50-ms")
	b.ReportMetric(at(0.99), "p99-ms")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkChange times didChange to diagnostics over the pipes of a process,
// beside what pipes and framing alone cost.
func BenchmarkChange(b *testing.B) {
	for _, size := range []int{300, 5000} {
		for _, kind := range []string{"serve", "floor"} {
			b.Run(fmt.Sprintf("%s/%d-lines", kind, size), func(b *testing.B) {
				uri, text, at := lines(b, size)
				c := startProcess(b, kind)
				c.start(uri, text)
				version := 1
				var times []time.Duration
				for b.Loop() {
					version++
					t := time.Now()
					c.edit(uri, at, version)
					times = append(times, time.Since(t))
				}
				spread(b, times)
			})
		}
	}
}

// BenchmarkAsk times requests at a place of a document of 300 lines.
func BenchmarkAsk(b *testing.B) {
	for _, method := range []string{"textDocument/hover", "textDocument/completion", "textDocument/inlayHint", "textDocument/codeAction", "textDocument/semanticTokens/full", "textDocument/documentSymbol", "textDocument/codeLens"} {
		b.Run(strings.TrimPrefix(method, "textDocument/"), func(b *testing.B) {
			uri, text, at := lines(b, 300)
			c := startProcess(b, "serve")
			c.start(uri, text)
			whole := object{"start": object{"line": 0, "character": 0}, "end": object{"line": 300, "character": 0}}
			params := object{"textDocument": object{"uri": uri}, "position": at, "range": whole, "context": object{"diagnostics": []any{}}}
			version := 1
			var times []time.Duration
			for b.Loop() {
				version++
				c.edit(uri, at, version) // a new text each time: nothing is answered from memory
				t := time.Now()
				c.request(method, params)
				times = append(times, time.Since(t))
			}
			spread(b, times)
		})
	}
}

// BenchmarkStart times a new process up to its first diagnostics; once for a client
// that takes links to the rules, whose page is not there yet.
func BenchmarkStart(b *testing.B) {
	links := strings.Replace(initAll, `"relatedInformation":true`, `"relatedInformation":true,"codeDescriptionSupport":true`, 1)
	for name, init := range map[string]string{"plain": initAll, "links": links} {
		b.Run(name, func(b *testing.B) {
			uri, text, _ := lines(b, 300)
			var times []time.Duration
			for b.Loop() {
				cacheIn(b.Setenv, b.TempDir())
				t := time.Now()
				c := startProcess(b, "serve")
				c.startAs(init, uri, text)
				times = append(times, time.Since(t))
				c.in.Close()
				c.cmd.Wait()
			}
			spread(b, times)
		})
	}
}

// BenchmarkMemory gives the resident memory after 1,000 and 10,000 edits, and
// by how much the second is over the first. Between two collections of garbage it
// goes up and down by a twentieth, so each is the median over the 500 edits before.
// Linux only.
func BenchmarkMemory(b *testing.B) {
	if _, err := os.Stat("/proc/self/status"); err != nil {
		b.Skip("no /proc on this system")
	}
	uri, text, at := lines(b, 300)
	for b.Loop() {
		c := startProcess(b, "serve")
		c.start(uri, text)
		var early, late []float64
		for version := 2; version <= 10001; version++ {
			c.edit(uri, at, version)
			switch {
			case version%20 != 1:
			case version > 501 && version <= 1001:
				early = append(early, resident(b, c.cmd.Process.Pid))
			case version > 9501:
				late = append(late, resident(b, c.cmd.Process.Pid))
			}
		}
		slices.Sort(early)
		slices.Sort(late)
		first, last := early[len(early)/2], late[len(late)/2]
		b.ReportMetric(first, "MB-at-1000")
		b.ReportMetric(last, "MB-at-10000")
		b.ReportMetric(100*(last-first)/first, "%-growth")
	}
}

// resident is the resident memory of a process in MB.
func resident(b *testing.B, pid int) float64 {
	f, err := os.Open(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	for sc := bufio.NewScanner(f); sc.Scan(); {
		if rest, ok := strings.CutPrefix(sc.Text(), "VmRSS:"); ok {
			kb, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(rest, " kB")))
			if err != nil {
				b.Fatal(err)
			}
			return float64(kb) / 1024
		}
	}
	b.Fatal("no resident size")
	return 0
}
