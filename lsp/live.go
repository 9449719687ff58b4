package lsp

import (
	"bytes"
	"crypto/rand"
	_ "embed"
	"encoding/base64"
	"errors"
	"fmt"
	"html/template"
	"net"
	"net/http"
	"path"
	"slices"
	"strconv"
	"sync"

	"example.org/tundish/check/report/sheet"
)

// maxSheets bounds the sheets that are kept open; the oldest gives way.
const maxSheets = 16

// live holds the calculation sheets that are shown in a browser and renewed as
// their texts change. It listens only when the first one is asked for.
type live struct {
	server *Server

	mu     sync.Mutex // guards what follows
	http   *http.Server
	port   string
	sheets []*liveSheet
	closed bool
	busy   sync.WaitGroup // answers at work
	count  int            // open event streams
}

// liveSheet is the sheet of one document. Who knows the token may read it.
type liveSheet struct {
	uri   string
	token string

	seen *document // the last version that pages were told of; of the publisher alone

	mu       sync.Mutex // guards number and watchers
	number   int        // counts the changes of what the sheet shows
	watchers map[chan struct{}]bool

	render sync.Mutex // one page at a time; guards last
	last   *analysis  // what was shown last: all that is left of a closed document
}

var errLiveClosed = errors.New("the server is shut down")

// open gives the address of the sheet of an open document.
func (l *live) open(d *document) (string, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.closed {
		return "", errLiveClosed
	}
	if l.http == nil {
		if err := l.listen(); err != nil {
			return "", err
		}
	}
	i := slices.IndexFunc(l.sheets, func(s *liveSheet) bool { return s.uri == d.uri })
	if i < 0 {
		if len(l.sheets) == maxSheets {
			l.sheets[0].bump() // its pages look and find that it is gone
			l.sheets = l.sheets[1:]
		}
		secret := make([]byte, 32)
		rand.Read(secret) // never fails: it ends the program instead
		l.sheets = append(l.sheets, &liveSheet{uri: d.uri, token: base64.RawURLEncoding.EncodeToString(secret), number: 1, seen: d, watchers: map[chan struct{}]bool{}})
		i = len(l.sheets) - 1
	}
	return "http://127.0.0.1:" + l.port + "/" + l.sheets[i].token + "/", nil
}

func (l *live) listen() error {
	ln, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return fmt.Errorf("the sheet cannot be served: %w", err)
	}
	l.port = strconv.Itoa(ln.Addr().(*net.TCPAddr).Port)
	l.http = l.newHTTP()
	go l.http.Serve(newLimitListener(ln, maxConnections))
	return nil
}

// changed tells the pages of the documents that are other ones now.
func (l *live) changed(at *snapshot) {
	l.mu.Lock()
	sheets := slices.Clone(l.sheets)
	l.mu.Unlock()
	for _, s := range sheets {
		if now := at.docs[s.uri]; s.seen != now {
			s.seen = now
			s.bump()
		}
	}
}

// bump gives a sheet its next number and tells every page of it.
func (s *liveSheet) bump() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.number++
	for ch := range s.watchers {
		select {
		case ch <- struct{}{}:
		default: // it has not taken the last one yet
		}
	}
}

// close ends every connection. It does not wait for the answers at work: the
// client that shuts the server down is not kept waiting.
func (l *live) close() {
	l.mu.Lock()
	l.closed = true
	h := l.http
	l.http, l.sheets = nil, nil
	l.mu.Unlock()
	if h != nil {
		h.Close()
	}
}

// wait is for the answers at work when the session ends.
func (l *live) wait() { l.busy.Wait() }

// What a page says above the sheet when it does not show the text as it stands.
const (
	noticeStale   = "The text cannot be read whole at the moment. This is the sheet of the last text that could be."
	noticeDamaged = "Part of the text cannot be read: what depends on it is missing here."
	noticeClosed  = "The document is closed in the editor. This is its last sheet, and it is not renewed."
)

//go:embed live.js
var liveScript string

const liveStyle = `#notice, #away { position: sticky; top: 0; z-index: 1; margin: 0 0 .5rem; padding: .5rem .8rem; background: #fff4d6; color: #4a2f00; border: 1px solid #7a4a00; }
@media print { #away { display: none; } }`

// page renders a sheet. While the text is broken it is that of the last good one.
func (s *liveSheet) page(server *Server, nonce string) ([]byte, error) {
	s.render.Lock()
	defer s.render.Unlock()
	number := s.current() // read before the text: the page is never older than it says
	at := server.current()
	notice := ""
	if d := at.docs[s.uri]; d != nil {
		a, stale := d.shown(at)
		switch {
		case stale:
			notice = noticeStale
		case a.rep.Plant.Damaged() && s.last != nil && !s.last.rep.Plant.Damaged():
			a, notice = s.last, noticeStale
		case a.rep.Plant.Damaged():
			notice = noticeDamaged
		}
		s.last = a
	} else {
		notice = noticeClosed
	}
	if s.last == nil {
		return nil, errors.New("the document was closed before its sheet was made")
	}
	o := sheet.Options{Name: nameOf(s.last.src.Name), Version: server.opts.Version, Notice: notice}
	if server.opts.Figures != nil {
		o.Figures = server.opts.Figures(s.last.rep)
	}
	o.Head = template.HTML(fmt.Sprintf("<meta name=\"sheet-number\" content=\"%d\">\n<style>%s</style>\n<script nonce=\"%s\">%s</script>", number, liveStyle, nonce, liveScript)) //nolint:gosec // our own script and numbers
	var b bytes.Buffer
	err := sheet.Build(s.last.rep, o).Write(&b)
	return b.Bytes(), err
}

// nameOf is the last part of a path or of the URI of an untitled document.
func nameOf(name string) string {
	if b := path.Base(name); b != "/" && b != "." {
		return b
	}
	return name
}
