package lsp

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"

	"example.org/tundish/check/report/reference"
	"example.org/tundish/check/rules"
)

// rulePage is the reference of the rules as a file that any editor can open: the
// code of each diagnostic links to it. It is kept in the user's cache folder.
type rulePage struct {
	once sync.Once
	uri  atomic.Pointer[string] // of the page; nil while there is none

	mu      sync.Mutex // held while the page is written
	stopped bool
}

// stop keeps a page that is not ready from being written after the session; it
// waits for one that is being written, and not for the making of one.
func (r *rulePage) stop() {
	r.mu.Lock()
	r.stopped = true
	r.mu.Unlock()
}

// link is the address of what explains a rule; empty while there is no page.
func (r *rulePage) link(rule string) string {
	if u := r.uri.Load(); u != nil {
		return *u + "#" + rule
	}
	return ""
}

// find takes the page that an earlier session left, when it was written after
// this program was built.
func (r *rulePage) find(version string) {
	name, err := rulePagePath(version)
	if err != nil {
		return
	}
	page, err := os.Stat(name)
	if err != nil || !page.Mode().IsRegular() {
		return
	}
	if self, err := os.Executable(); err == nil {
		if st, err := os.Stat(self); err == nil && st.ModTime().After(page.ModTime()) {
			return
		}
	}
	r.set(name)
}

func (r *rulePage) set(name string) {
	u := uriOf(name)
	r.uri.Store(&u)
}

func rulePagePath(version string) (string, error) {
	dir, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	clean := strings.Map(func(c rune) rune {
		if c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || strings.ContainsRune("._+-", c) {
			return c
		}
		return '-'
	}, version)
	return filepath.Join(dir, "tundish", "rules-"+clean+".html"), nil
}

// write writes the page whole or not at all: another session may be reading it.
func (r *rulePage) write(version string) (err error) {
	name, err := rulePagePath(version)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		return err
	}
	var b bytes.Buffer
	if err := reference.WriteRulesHTML(&b, reference.Rules(rules.All()), rules.All(), version); err != nil {
		return err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.stopped {
		return nil
	}
	f, err := os.CreateTemp(filepath.Dir(name), "rules-*.tmp")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // gone already when all went well
	if _, err = f.Write(b.Bytes()); err != nil {
		return errors.Join(err, f.Close())
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := os.Rename(f.Name(), name); err != nil {
		return err
	}
	r.set(name)
	return nil
}

// explainRules sees to the page after the first diagnostics are out, beside the
// session: what was told without links is then told again with them.
func (s *Server) explainRules() {
	if !s.client.codeDescription || s.rules.uri.Load() != nil {
		return
	}
	s.rules.once.Do(func() {
		go func() {
			s.front.shield(func() {
				if err := s.rules.write(s.opts.Version); err != nil {
					s.log("Diagnostics have no links to their explanation: " + err.Error())
					return
				}
				if s.rules.uri.Load() == nil {
					return // the session is over
				}
				s.wake()
				if s.client.diagnosticRefresh && s.anyPulled() {
					s.call("workspace/diagnostic/refresh", nil, nil)
				}
			})
		}()
	})
}

// log tells the client's log what a user need not see.
func (s *Server) log(text string) {
	s.front.trace("log", []byte(text))
	s.tell("window/logMessage", object{"type": 4, "message": text})
}
