package lsp

import (
	"bufio"
	"encoding/json"
	"html/template"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/tundish/check"
	"example.org/tundish/check/report/sheet"
)

var initShow = strings.Replace(initAll, `"capabilities":{`, `"capabilities":{"window":{"showDocument":{"support":true}},`, 1)

// liveClient has the in-line example open and its sheet shown.
func liveClient(t *testing.T) (c *testClient, uri, text, address string) {
	t.Helper()
	c = newClient(t)
	c.answers["window/showDocument"] = `{"success":true}`
	c.result("initialize", json.RawMessage(initShow))
	c.notify("initialized", object{})
	uri, text = example(t, "in-line.plant")
	c.open(uri, text, 1)
	c.diagnostics(uri, 1)
	address, _ = c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}).(string)
	shown := c.note("window/showDocument")
	if shown["uri"] != address || shown["external"] != true {
		t.Fatalf("shown is %v, answered %q", shown, address)
	}
	return c, uri, text, address
}

// get asks for a page; headers are given as name, value.
func get(t *testing.T, method, address string, headers ...string) (*http.Response, string) {
	t.Helper()
	r, err := http.NewRequest(method, address, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i+1 < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		} else {
			r.Header.Set(headers[i], headers[i+1])
		}
	}
	answer, err := (&http.Client{Timeout: 20 * time.Second}).Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer, string(body)
}

// watch opens the stream of changes and gives its numbers; the channel closes
// with the stream.
func watch(t *testing.T, address string) <-chan int {
	t.Helper()
	answer, err := http.Get(address + "events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { answer.Body.Close() })
	if answer.StatusCode != http.StatusOK || answer.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatalf("the stream answers %s, %s", answer.Status, answer.Header.Get("Content-Type"))
	}
	out := make(chan int, 100)
	go func() {
		defer close(out)
		for sc := bufio.NewScanner(answer.Body); sc.Scan(); {
			if data, ok := strings.CutPrefix(sc.Text(), "data: "); ok {
				n, err := strconv.Atoi(data)
				if err != nil {
					t.Error(err)
				}
				out <- n
			}
		}
	}()
	return out
}

func next(t *testing.T, numbers <-chan int, over int) int {
	t.Helper()
	deadline := time.After(20 * time.Second)
	for {
		select {
		case n, ok := <-numbers:
			if !ok {
				t.Fatal("the stream ended")
			}
			if n > over {
				return n
			}
		case <-deadline:
			t.Fatalf("no number over %d", over)
		}
	}
}

// The sheet follows the text: it changes with it, stays at the last good one
// while the text is broken, and says so; it stays when the document is closed.
func TestLiveSheet(t *testing.T) {
	c, uri, text, address := liveClient(t)
	answer, page := get(t, "GET", address)
	if answer.StatusCode != http.StatusOK || !strings.Contains(page, "Calculation sheet") || !strings.Contains(page, "G1.pressure-loss.all-full") {
		t.Fatalf("%s: %.300s", answer.Status, page)
	}
	for name, want := range map[string]string{
		"Cache-Control": "no-store", "Referrer-Policy": "no-referrer", "X-Content-Type-Options": "nosniff", "Content-Type": "text/html; charset=utf-8",
		"Cross-Origin-Resource-Policy": "same-origin", "Access-Control-Allow-Origin": "", "Set-Cookie": "",
	} {
		if got := answer.Header.Get(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	csp := answer.Header.Get("Content-Security-Policy")
	_, rest, _ := strings.Cut(csp, "'nonce-")
	nonce, _, _ := strings.Cut(rest, "'")
	if !strings.HasPrefix(csp, "default-src 'none'") || len(nonce) < 20 || !strings.Contains(page, `<script nonce="`+nonce+`">`) || strings.Count(page, "<script") != 1 {
		t.Errorf("the policy %q does not fit the page", csp)
	}
	again, _ := get(t, "GET", address)
	if again.Header.Get("Content-Security-Policy") == csp {
		t.Error("two answers share a nonce")
	}
	if head, body := get(t, "HEAD", address); head.StatusCode != http.StatusOK || body != "" {
		t.Errorf("HEAD: %s, %q", head.Status, body)
	}

	numbers := watch(t, address)
	n := next(t, numbers, 0)
	if !strings.Contains(page, `<meta name="sheet-number" content="`+strconv.Itoa(n)+`">`) {
		t.Errorf("the page does not say number %d", n)
	}
	at := position(text, "DN65 14 m", 0)
	end := object{"line": at["line"], "character": at["character"].(int) + 4}
	change := func(version int, text string) {
		c.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": version}, "contentChanges": []object{{"range": object{"start": at, "end": end}, "text": text}}})
	}
	change(2, "DN32")
	n = next(t, numbers, n)
	if _, page = get(t, "GET", address); !strings.Contains(page, "G1 alone loses") || strings.Contains(page, `id="notice"`) {
		t.Error("the sheet does not show the faulty text")
	}
	change(3, "DN(\"")
	n = next(t, numbers, n)
	if _, page = get(t, "GET", address); !strings.Contains(page, "G1 alone loses") || !strings.Contains(page, noticeStale) {
		t.Error("the broken text does not leave the last good sheet, marked")
	}
	c.notify("textDocument/didClose", object{"textDocument": object{"uri": uri}})
	n = next(t, numbers, n)
	if _, page = get(t, "GET", address); !strings.Contains(page, "G1 alone loses") || !strings.Contains(page, noticeClosed) {
		t.Error("the closed document does not leave its last sheet, marked")
	}
	c.open(uri, text, 1)
	next(t, numbers, n)
	if _, page = get(t, "GET", address); strings.Contains(page, "G1 alone loses") || strings.Contains(page, `id="notice"`) {
		t.Error("the document that is open again does not show as it is")
	}
	if second := c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}); second != address {
		t.Errorf("asked again, the address is %v", second)
	}
}

// A catalogue's change renews the sheets of the plants that use it.
func TestLiveSheetOfUser(t *testing.T) {
	c, _, _, address := liveClient(t)
	numbers := watch(t, address)
	n := next(t, numbers, 0)
	if _, page := get(t, "GET", address); strings.Contains(page, "chimney-approval-missing") {
		t.Fatal("the sound example has the fault already")
	}
	cat, text := example(t, "catalogue.plant")
	c.open(cat, strings.Replace(text, "input           61.8 kW net", "input           90 kW net", 1), 1)
	next(t, numbers, n)
	if _, page := get(t, "GET", address); !strings.Contains(page, "chimney-approval-missing") {
		t.Error("the sheet does not show the catalogue's change")
	}
}

// Nothing is served without the token, to another host or origin, by another
// method, or beside the sheet.
func TestLiveSheetRefuses(t *testing.T) {
	_, _, _, address := liveClient(t)
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	if u.Hostname() != "127.0.0.1" {
		t.Errorf("served on %s", u.Hostname())
	}
	token := strings.Trim(u.Path, "/")
	if len(token) < 43 {
		t.Errorf("a token of %d characters", len(token))
	}
	base := "http://" + u.Host
	wrong := strings.Repeat("A", len(token))
	for _, k := range []struct {
		what    string
		method  string
		address string
		headers []string
		want    int
	}{
		{"as asked", "GET", address, nil, 200},
		{"by the other name of loopback", "GET", address, []string{"Host", "localhost:" + u.Port()}, 200},
		{"own origin", "GET", address, []string{"Origin", base, "Sec-Fetch-Site", "same-origin"}, 200},
		{"no token", "GET", base + "/", nil, 404},
		{"empty token", "GET", base + "//events", nil, 404},
		{"wrong token", "GET", base + "/" + wrong + "/", nil, 404},
		{"part of the token", "GET", base + "/" + token[:20] + "/", nil, 404},
		{"token without slash", "GET", base + "/" + token, nil, 404},
		{"wrong token for events", "GET", base + "/" + wrong + "/events", nil, 404},
		{"a file", "GET", address + "in-line.plant", nil, 404},
		{"a path upwards", "GET", address + "../../etc/passwd", nil, 404},
		{"an encoded path upwards", "GET", address + "..%2f..%2fetc%2fpasswd", nil, 404},
		{"a foreign name", "GET", address, []string{"Host", "plants.example"}, 403},
		{"a foreign name with the port", "GET", address, []string{"Host", "plants.example:" + u.Port()}, 403},
		{"the address without its port", "GET", address, []string{"Host", "127.0.0.1"}, 403},
		{"a foreign origin", "GET", address, []string{"Origin", "http://plants.example"}, 403},
		{"the null origin", "GET", address + "events", []string{"Origin", "null"}, 403},
		{"another port as origin", "GET", address, []string{"Origin", "http://127.0.0.1:1"}, 403},
		{"from another site", "GET", address, []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{"POST", "POST", address, nil, 405},
		{"PUT", "PUT", address + "events", nil, 405},
		{"a preflight", "OPTIONS", address, []string{"Access-Control-Request-Method", "GET"}, 405},
	} {
		answer, body := get(t, k.method, k.address, k.headers...)
		if answer.StatusCode != k.want {
			t.Errorf("%s: %s", k.what, answer.Status)
		}
		if k.want != 200 && (len(body) > 100 || strings.Contains(body, "plant \"")) {
			t.Errorf("%s: refused with %q", k.what, body)
		}
		for name := range answer.Header {
			if strings.HasPrefix(name, "Access-Control-") {
				t.Errorf("%s: answered with %s", k.what, name)
			}
		}
		if answer.Header.Get("Cache-Control") != "no-store" || answer.Header.Get("Content-Security-Policy") == "" {
			t.Errorf("%s: answered without the headers that guard it", k.what)
		}
	}
}

// The number of open pages is bounded; one that leaves makes room.
func TestLiveSheetBounds(t *testing.T) {
	_, _, _, address := liveClient(t)
	var open []*http.Response
	for range maxStreams {
		answer, err := http.Get(address + "events")
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		if answer.StatusCode != http.StatusOK {
			t.Fatal(answer.Status)
		}
		open = append(open, answer)
	}
	if answer, _ := get(t, "GET", address+"events"); answer.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("one page too many: %s", answer.Status)
	}
	if answer, _ := get(t, "GET", address); answer.StatusCode != http.StatusOK {
		t.Errorf("the page itself: %s", answer.Status)
	}
	open[0].Body.Close()
	for range 200 {
		answer, err := http.Get(address + "events")
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode == http.StatusOK {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Error("a page that left makes no room")
}

// The oldest of too many sheets gives way, and its pages are told.
func TestLiveSheetsMany(t *testing.T) {
	c, _, text, first := liveClient(t)
	numbers := watch(t, first)
	n := next(t, numbers, 0)
	for i := range maxSheets {
		uri := "untitled:Sheet-" + strconv.Itoa(i)
		c.open(uri, text, 1)
		address := c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}).(string)
		if answer, _ := get(t, "GET", address); answer.StatusCode != http.StatusOK {
			t.Fatalf("sheet %d: %s", i, answer.Status)
		}
	}
	next(t, numbers, n)
	if answer, _ := get(t, "GET", first); answer.StatusCode != http.StatusNotFound {
		t.Errorf("the oldest sheet: %s", answer.Status)
	}
}

// After shutdown nothing listens, and open streams end.
func TestLiveSheetShutdown(t *testing.T) {
	for _, how := range []string{"shutdown", "end of input"} {
		c, uri, _, address := liveClient(t)
		numbers := watch(t, address)
		next(t, numbers, 0)
		if how == "shutdown" {
			c.result("shutdown", nil)
			if m := c.request("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}); m["error"] == nil {
				t.Error("after shutdown the sheet is shown")
			}
		} else {
			c.out.Close()
			code := <-c.done
			c.done <- code
		}
		deadline := time.After(10 * time.Second)
		for open := true; open; {
			select {
			case _, open = <-numbers:
			case <-deadline:
				t.Fatalf("%s: the stream goes on", how)
			}
		}
		if answer, err := http.Get(address); err == nil {
			answer.Body.Close()
			t.Errorf("%s: it still answers %s", how, answer.Status)
		}
	}
}

// A client that shows nothing, or fails to, is told the address.
func TestLiveSheetTold(t *testing.T) {
	for _, init := range []string{initAll, initShow} {
		c := newClient(t) // answers showDocument with null
		c.result("initialize", json.RawMessage(init))
		c.notify("initialized", object{})
		uri, text := example(t, "in-line.plant")
		c.open(uri, text, 1)
		lens := c.result("textDocument/codeLens", object{"textDocument": object{"uri": uri}}).([]any)[0].(map[string]any)
		command := lens["command"].(map[string]any)
		line := lens["range"].(map[string]any)["start"].(map[string]any)["line"].(float64)
		if command["command"] != commandSheet || int(line) != position(text, "plant \"", 0)["line"] {
			t.Errorf("the first lens is %v", lens)
		}
		address := c.result("workspace/executeCommand", object{"command": command["command"], "arguments": command["arguments"]}).(string)
		if m := c.note("window/showMessage"); !strings.Contains(m["message"].(string), address) {
			t.Errorf("told is %v", m)
		}
		if answer, _ := get(t, "GET", address); answer.StatusCode != http.StatusOK {
			t.Error(answer.Status)
		}
		for _, bad := range []object{{"command": "tundish.none"}, {"command": commandSheet, "arguments": []any{"untitled:None"}}, {"command": commandSheet, "arguments": []any{7}}} {
			if m := c.request("workspace/executeCommand", bad); m["error"] == nil {
				t.Errorf("%v is answered with %v", bad, m["result"])
			}
		}
	}
}

// The figures are those of the program that the server is part of, and a fault
// in one answers that request only.
func TestLiveSheetFigures(t *testing.T) {
	broken := false
	c := newClientWith(t, Options{Version: "test", Figures: func(rep *check.Report) []sheet.Figure {
		if broken {
			panic("no ink")
		}
		return []sheet.Figure{{ID: "figure-x", Title: "Of " + rep.Plant.Kind, SVG: template.HTML("<svg></svg>")}}
	}})
	c.initialize()
	uri, text := example(t, "in-line.plant")
	c.open(uri, text, 1)
	address := c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}).(string)
	if _, page := get(t, "GET", address); !strings.Contains(page, "Of plant") {
		t.Error("no figure on the page")
	}
	broken = true
	if answer, _ := get(t, "GET", address); answer.StatusCode != http.StatusInternalServerError {
		t.Errorf("a fault in a figure: %s", answer.Status)
	}
	broken = false
	if answer, _ := get(t, "GET", address); answer.StatusCode != http.StatusOK {
		t.Errorf("after the fault: %s", answer.Status)
	}
}

// Every kind of file has a sheet, and a text of nothing or nonsense too.
func TestLiveSheetKinds(t *testing.T) {
	c := newClient(t)
	c.initialize()
	record, text := example(t, "back-to-back-record.plant")
	catalogue, types := example(t, "catalogue.plant")
	for uri, text := range map[string]string{
		record: text, catalogue: types, "untitled:Project": "project \"p\"\nlimit gas-drop-natural-uk 0.5 mbar because \"x\"\n",
		"untitled:Empty": "", "untitled:Nonsense": "}}{\"(\nunits U1..\n\x00", "untitled:Odd <b>&\"name": "plant \"<script>alert(1)</script>\"\n",
	} {
		c.open(uri, text, 1)
		address := c.result("workspace/executeCommand", object{"command": commandSheet, "arguments": []string{uri}}).(string)
		answer, page := get(t, "GET", address)
		if answer.StatusCode != http.StatusOK || !strings.Contains(page, "</html>") {
			t.Errorf("%s: %s, %.200s", uri, answer.Status, page)
		}
		if strings.Contains(page, "<script>") || strings.Contains(page, "<b>&") {
			t.Errorf("%s: the page takes the text for markup", uri)
		}
	}
}
