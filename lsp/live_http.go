package lsp

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/base64"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"runtime/debug"
	"strings"
	"sync"
	"time"
)

const (
	// maxConnections and maxStreams bound what the pages of sheets may hold open;
	// a browser keeps one stream for each page.
	maxConnections = 64
	maxStreams     = 32
	// writeTimeout is how long a client may take over one piece of an answer.
	writeTimeout = 10 * time.Second
	// heartbeat is how often a stream that has nothing to say shows that it lives,
	// so that clients that went away are found.
	heartbeat = 20 * time.Second
)

func (l *live) newHTTP() *http.Server {
	return &http.Server{
		Handler:           http.HandlerFunc(l.serve),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       5 * time.Second,
		IdleTimeout:       30 * time.Second,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          log.New(io.Discard, "", 0),
	}
}

// serve answers one request: the page of a sheet or its stream of changes, to a
// page of this very server that knows the token, and nothing to anybody else.
func (l *live) serve(w http.ResponseWriter, r *http.Request) {
	l.mu.Lock()
	if l.closed {
		l.mu.Unlock()
		http.Error(w, "the server is shut down", http.StatusServiceUnavailable)
		return
	}
	l.busy.Add(1)
	l.mu.Unlock()
	defer l.busy.Done()
	defer func() {
		if v := recover(); v != nil {
			l.server.front.trace("fault", fmt.Appendf(nil, "live sheet: %v\n%s", v, debug.Stack()))
			http.Error(w, "the sheet could not be made", http.StatusInternalServerError)
		}
	}()
	guardHeaders(w.Header())
	if !l.ours(r) {
		http.Error(w, "refused", http.StatusForbidden)
		return
	}
	token, what, ok := strings.Cut(strings.TrimPrefix(r.URL.Path, "/"), "/")
	s := l.find(token)
	if s == nil || !ok || what != "" && what != "events" {
		http.Error(w, "there is nothing here", http.StatusNotFound)
		return
	}
	switch {
	case r.Method == http.MethodGet && what == "events":
		l.stream(w, r, s)
	case (r.Method == http.MethodGet || r.Method == http.MethodHead) && what == "":
		l.sheet(w, s)
	default:
		w.Header().Set("Allow", "GET")
		http.Error(w, "only to be read", http.StatusMethodNotAllowed)
	}
}

// guardHeaders keep the page to itself: nothing is stored, framed, sniffed,
// handed to other origins, or loaded from them.
func guardHeaders(h http.Header) {
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Security-Policy", "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("X-Frame-Options", "DENY")
}

// ours tells a request that was made for this server under its own name, by the
// user or by one of its own pages. The name guards against a foreign name that
// was made to point here; the origin against pages of others.
func (l *live) ours(r *http.Request) bool {
	if r.Host != "127.0.0.1:"+l.port && r.Host != "localhost:"+l.port {
		return false
	}
	for _, origin := range r.Header.Values("Origin") {
		if origin != "http://"+r.Host {
			return false
		}
	}
	for _, site := range r.Header.Values("Sec-Fetch-Site") {
		if site != "same-origin" && site != "none" {
			return false
		}
	}
	return true
}

// find compares with every token, each in constant time.
func (l *live) find(token string) *liveSheet {
	l.mu.Lock()
	defer l.mu.Unlock()
	var found *liveSheet
	for _, s := range l.sheets {
		if subtle.ConstantTimeCompare([]byte(s.token), []byte(token)) == 1 {
			found = s
		}
	}
	return found
}

func (l *live) sheet(w http.ResponseWriter, s *liveSheet) {
	nonce := make([]byte, 16)
	rand.Read(nonce)
	mark := base64.RawStdEncoding.EncodeToString(nonce)
	body, err := s.page(l.server, mark)
	if err != nil {
		http.Error(w, err.Error(), http.StatusServiceUnavailable)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Content-Security-Policy", "default-src 'none'; script-src 'nonce-"+mark+"'; style-src 'unsafe-inline'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(writeTimeout))
	_, _ = w.Write(body) // a client that went away needs no answer
}

// stream tells the number of the newest sheet, and each new number.
func (l *live) stream(w http.ResponseWriter, r *http.Request, s *liveSheet) {
	l.mu.Lock()
	full := l.count >= maxStreams
	if !full {
		l.count++
	}
	l.mu.Unlock()
	if full {
		w.Header().Set("Retry-After", "30")
		http.Error(w, "too many pages are open", http.StatusServiceUnavailable)
		return
	}
	defer func() {
		l.mu.Lock()
		l.count--
		l.mu.Unlock()
	}()
	news := make(chan struct{}, 1)
	news <- struct{}{} // the present number first
	s.watch(news, true)
	defer s.watch(news, false)
	w.Header().Set("Content-Type", "text/event-stream")
	out := http.NewResponseController(w)
	_ = out.SetReadDeadline(time.Time{})
	beat := time.NewTicker(heartbeat)
	defer beat.Stop()
	for {
		line := ":\n\n"
		select {
		case <-r.Context().Done():
			return
		case <-beat.C:
		case <-news:
			line = fmt.Sprintf("retry: 1000\nevent: sheet\ndata: %d\n\n", s.current())
		}
		_ = out.SetWriteDeadline(time.Now().Add(writeTimeout))
		if _, err := io.WriteString(w, line); err != nil || out.Flush() != nil {
			return
		}
	}
}

func (s *liveSheet) watch(ch chan struct{}, on bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if on {
		s.watchers[ch] = true
	} else {
		delete(s.watchers, ch)
	}
}

func (s *liveSheet) current() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.number
}

// limitListener turns connections away while too many are open.
type limitListener struct {
	net.Listener
	slots chan struct{}
}

func newLimitListener(ln net.Listener, n int) net.Listener {
	return &limitListener{ln, make(chan struct{}, n)}
}

func (l *limitListener) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		select {
		case l.slots <- struct{}{}:
			return &limitConn{Conn: c, slots: l.slots}, nil
		default:
			c.Close()
		}
	}
}

// limitConn gives its slot back when it is closed, once.
type limitConn struct {
	net.Conn
	once  sync.Once
	slots chan struct{}
}

func (c *limitConn) Close() error {
	c.once.Do(func() { <-c.slots })
	return c.Conn.Close()
}
