package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// testClient is a client at the other end of a pipe.
type testClient struct {
	t     testing.TB
	out   *io.PipeWriter
	in    *stream
	next  int
	mu    sync.Mutex // guards next and wait
	wmu   sync.Mutex // guards out
	wait  map[string]chan map[string]any
	notes chan map[string]any
	done  chan int
	log   *lockedBuffer
	// answers are results for requests of the server, by method; else null
	answers map[string]string
}

type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *lockedBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *lockedBuffer) Bytes() []byte {
	l.mu.Lock()
	defer l.mu.Unlock()
	return bytes.Clone(l.b.Bytes())
}

func newClient(t testing.TB) *testClient {
	t.Helper()
	return newClientWith(t, Options{Version: "test"})
}

func newClientWith(t testing.TB, o Options) *testClient {
	t.Helper()
	toServer, fromClient := io.Pipe()
	toClient, fromServer := io.Pipe()
	c := &testClient{t: t, out: fromClient, in: newStream(toClient, io.Discard, nil), wait: map[string]chan map[string]any{}, notes: make(chan map[string]any, 10000), done: make(chan int, 1), log: &lockedBuffer{}, answers: map[string]string{"workspace/configuration": "[{}]"}}
	o.Log = c.log
	go func() {
		code := Run(context.Background(), toServer, fromServer, o)
		fromServer.Close()
		c.done <- code
	}()
	go c.readAll()
	t.Cleanup(func() {
		fromClient.Close()
		select {
		case <-c.done:
		case <-time.After(10 * time.Second):
			t.Error("the server does not end at the end of its input")
		}
	})
	return c
}

func (c *testClient) readAll() {
	for {
		b, err := c.in.read()
		if err != nil {
			close(c.notes)
			return
		}
		var m map[string]any
		if json.Unmarshal(b, &m) != nil {
			continue
		}
		if method, ok := m["method"].(string); ok {
			if id, ok := m["id"]; ok { // the server asks: answer with nothing
				result := c.answers[method]
				if result == "" {
					result = "null"
				}
				raw, _ := json.Marshal(id)
				go c.raw(fmt.Sprintf(`{"jsonrpc":"2.0","id":%s,"result":%s}`, raw, result))
			}
			c.notes <- m
			continue
		}
		raw, _ := json.Marshal(m["id"])
		c.mu.Lock()
		ch := c.wait[string(raw)]
		c.mu.Unlock()
		if ch != nil {
			ch <- m
		} else {
			c.notes <- m
		}
	}
}

func (c *testClient) raw(body string) {
	c.wmu.Lock()
	defer c.wmu.Unlock()
	fmt.Fprintf(c.out, "Content-Length: %d\r\n\r\n%s", len(body), body)
}

// request sends a request and waits for its answer.
func (c *testClient) request(method string, params any) map[string]any {
	c.t.Helper()
	ch := c.start(method, params)
	select {
	case m := <-ch:
		return m
	case <-time.After(60 * time.Second):
		c.t.Fatalf("no answer to %s", method)
		return nil
	}
}

func (c *testClient) start(method string, params any) chan map[string]any {
	c.mu.Lock()
	c.next++
	id := fmt.Sprint(c.next)
	ch := make(chan map[string]any, 1)
	c.wait[id] = ch
	c.mu.Unlock()
	raw, err := json.Marshal(params)
	if err != nil {
		c.t.Fatal(err)
	}
	c.raw(fmt.Sprintf(`{"jsonrpc":"2.0","id":%s,"method":%q,"params":%s}`, id, method, raw))
	return ch
}

// result is the result of a request that must not fail.
func (c *testClient) result(method string, params any) any {
	c.t.Helper()
	m := c.request(method, params)
	if e, bad := m["error"]; bad {
		c.t.Fatalf("%s: %v", method, e)
	}
	return m["result"]
}

func (c *testClient) notify(method string, params any) {
	raw, err := json.Marshal(params)
	if err != nil {
		c.t.Fatal(err)
	}
	c.raw(fmt.Sprintf(`{"jsonrpc":"2.0","method":%q,"params":%s}`, method, raw))
}

const initAll = `{"processId":null,"rootUri":null,"capabilities":{"workspace":{"workspaceEdit":{"documentChanges":true},"inlayHint":{"refreshSupport":true}},"textDocument":{"publishDiagnostics":{"relatedInformation":true,"versionSupport":true},"hover":{"contentFormat":["markdown","plaintext"]},"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":["quickfix"]}},"isPreferredSupport":true},"documentSymbol":{"hierarchicalDocumentSymbolSupport":true}}}}`

func (c *testClient) initialize() {
	c.t.Helper()
	c.result("initialize", json.RawMessage(initAll))
	c.notify("initialized", object{})
}

func (c *testClient) open(uri, text string, version int) {
	c.notify("textDocument/didOpen", object{"textDocument": object{"uri": uri, "languageId": "plant", "version": version, "text": text}})
}

// note waits for the next message of the server with a method.
func (c *testClient) note(method string) map[string]any {
	c.t.Helper()
	deadline := time.After(60 * time.Second)
	for {
		select {
		case m, ok := <-c.notes:
			if !ok {
				c.t.Fatal("the server went")
			}
			if m["method"] == method {
				p, _ := m["params"].(map[string]any)
				return p
			}
		case <-deadline:
			c.t.Fatalf("no %s", method)
		}
	}
}

// diagnostics waits for the diagnostics of a version.
func (c *testClient) diagnostics(uri string, version int) []any {
	c.t.Helper()
	deadline := time.After(60 * time.Second)
	for {
		select {
		case m, ok := <-c.notes:
			if !ok {
				c.t.Fatal("the server went")
			}
			if m["method"] != "textDocument/publishDiagnostics" {
				continue
			}
			p := m["params"].(map[string]any)
			if v, _ := p["version"].(float64); p["uri"] == uri && int(v) == version {
				return p["diagnostics"].([]any)
			}
		case <-deadline:
			c.t.Fatalf("no diagnostics of %s version %d", uri, version)
		}
	}
}

func example(t testing.TB, name string) (uri, text string) {
	t.Helper()
	p, err := filepath.Abs("../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile(p)
	if err != nil {
		t.Fatal(err)
	}
	return uriOf(p), string(b)
}

// position finds the place of a text, n characters into it.
func position(text, at string, n int) object {
	i := strings.Index(text, at)
	if i < 0 {
		panic("not in the text: " + at)
	}
	line := strings.Count(text[:i], "\n")
	col := i - (strings.LastIndexByte(text[:i], '\n') + 1) + n
	return object{"line": line, "character": col}
}

func codes(list []any) map[string]int {
	out := map[string]int{}
	for _, d := range list {
		out[d.(map[string]any)["code"].(string)]++
	}
	return out
}
