// Package lsp is the language server: it shows in the editor what the linter
// says, while the text is typed. The engine is the linter's own; this package
// maps it to the protocol and adds no judgement.
package lsp

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
	"time"
)

// maxMessage bounds one message. The buffer grows with the bytes received, so
// that a false length costs nothing.
const maxMessage = 64 << 20

// errTooLarge says that a message was longer than the server takes; its bytes
// were skipped.
var errTooLarge = errors.New("the message is longer than 64 MiB")

// stream frames messages by their headers. Header names count in any case, and
// unknown headers are passed over, because clients differ.
type stream struct {
	in  *bufio.Reader
	mu  sync.Mutex // guards log and queue
	out io.Writer
	log io.Writer // trace of every message; nil: none

	start  time.Time
	queue  [][]byte
	some   *sync.Cond
	closed bool
	sent   chan struct{}
}

func newStream(in io.Reader, out, log io.Writer) *stream {
	s := &stream{in: bufio.NewReaderSize(in, 64<<10), out: out, log: log, start: time.Now(), sent: make(chan struct{})}
	s.some = sync.NewCond(&s.mu)
	return s
}

// read gives the next message. errTooLarge and *headerError leave the stream
// usable; io.EOF ends it.
func (s *stream) read() ([]byte, error) {
	length, seen := -1, false
	for {
		line, err := s.in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			continue // a header line without end: pass it over piece by piece
		}
		if err != nil {
			return nil, io.EOF
		}
		text := strings.TrimRight(string(line), "\r\n")
		if text == "" {
			if !seen {
				continue // blank lines between messages
			}
			break
		}
		seen = true
		name, value, ok := strings.Cut(text, ":")
		if !ok || !strings.EqualFold(strings.TrimSpace(name), "content-length") {
			continue
		}
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err != nil || n < 0 {
			return nil, &headerError{text}
		}
		length = n
	}
	if length < 0 {
		return nil, &headerError{"no Content-Length"}
	}
	if length > 1<<32 {
		return nil, &headerError{"a length that no message has"}
	}
	if length > maxMessage {
		if _, err := io.CopyN(io.Discard, s.in, int64(length)); err != nil {
			return nil, io.EOF
		}
		return nil, errTooLarge
	}
	var body bytes.Buffer
	if n, err := io.CopyN(&body, s.in, int64(length)); err != nil || n < int64(length) {
		return nil, io.EOF
	}
	s.trace("c2s", body.Bytes())
	return body.Bytes(), nil
}

// headerError is a header that gives no length.
type headerError struct{ line string }

func (e *headerError) Error() string { return "a message without a usable length: " + e.line }

// write queues one message; a goroutine of the stream sends it. So a client that
// is slow to read never stops the server from reading.
func (s *stream) write(body []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return
	}
	s.traceLocked("s2c", body)
	s.queue = append(s.queue, body)
	s.some.Signal()
}

// send writes what is queued until close, and what is left then.
func (s *stream) send() {
	defer close(s.sent)
	var buf []byte
	for {
		s.mu.Lock()
		for len(s.queue) == 0 && !s.closed {
			s.some.Wait()
		}
		list := s.queue
		s.queue = nil
		s.mu.Unlock()
		if len(list) == 0 {
			return
		}
		buf = buf[:0]
		for _, body := range list {
			buf = append(buf, "Content-Length: "...)
			buf = strconv.AppendInt(buf, int64(len(body)), 10)
			buf = append(buf, "\r\n\r\n"...)
			buf = append(buf, body...)
		}
		if _, err := s.out.Write(buf); err != nil {
			s.mu.Lock()
			s.closed, s.queue = true, nil // the client is gone
			s.mu.Unlock()
			return
		}
	}
}

// close sends what is queued, for a while: a client that does not read any more
// must not keep the process alive.
func (s *stream) close() {
	s.mu.Lock()
	s.closed = true
	s.some.Signal()
	s.mu.Unlock()
	select {
	case <-s.sent:
	case <-time.After(2 * time.Second):
	}
}

func (s *stream) trace(way string, body []byte) {
	if s.log == nil {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.traceLocked(way, body)
}

func (s *stream) traceLocked(way string, body []byte) {
	if s.log == nil {
		return
	}
	// One JSON object a line: time in ms, direction, message.
	ms := time.Since(s.start).Milliseconds()
	if json.Valid(body) {
		fmt.Fprintf(s.log, "{\"t\":%d,\"dir\":%q,\"msg\":%s}\n", ms, way, body)
		return
	}
	fmt.Fprintf(s.log, "{\"t\":%d,\"dir\":%q,\"bad\":%q}\n", ms, way, body)
}
