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
	mu  sync.Mutex // guards out and log
	out io.Writer
	log io.Writer // trace of every message; nil: none

	start time.Time
}

func newStream(in io.Reader, out, log io.Writer) *stream {
	return &stream{in: bufio.NewReaderSize(in, 64<<10), out: out, log: log, start: time.Now()}
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

// write sends one message whole.
func (s *stream) write(body []byte) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.traceLocked("s2c", body)
	buf := make([]byte, 0, len(body)+32)
	buf = append(buf, "Content-Length: "...)
	buf = strconv.AppendInt(buf, int64(len(body)), 10)
	buf = append(buf, "\r\n\r\n"...)
	buf = append(buf, body...)
	_, err := s.out.Write(buf)
	return err
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
