package main

import (
	"bytes"
	"io"
	"os"
)

// spool keeps bytes in memory and, when they are many, in a temporary file.
type spool struct {
	mem  bytes.Buffer
	file *os.File
}

// spoolMemory is how much a spool keeps in memory.
const spoolMemory = 1 << 20

func (s *spool) Write(p []byte) (int, error) {
	if s.mem.Len() > 0 && s.mem.Len()+len(p) > spoolMemory {
		if err := s.spill(); err != nil {
			return 0, err
		}
	}
	return s.mem.Write(p)
}

// spill moves what is in memory to the file.
func (s *spool) spill() (err error) {
	if s.file == nil {
		if s.file, err = os.CreateTemp("", "tundish-*"); err != nil {
			return err
		}
		os.Remove(s.file.Name()) // gone when it is closed, whatever happens
	}
	_, err = s.mem.WriteTo(s.file)
	return err
}

// WriteTo gives everything that was written, once.
func (s *spool) WriteTo(w io.Writer) (n int64, err error) {
	if s.file != nil {
		if _, err := s.file.Seek(0, io.SeekStart); err != nil {
			return 0, err
		}
		if n, err = io.Copy(w, s.file); err != nil {
			return n, err
		}
	}
	m, err := s.mem.WriteTo(w)
	return n + m, err
}

func (s *spool) close() {
	if s.file != nil {
		s.file.Close()
		os.Remove(s.file.Name()) // where an open file cannot be removed
	}
}
