package lsp

import (
	"encoding/json"
	"fmt"
	"time"
)

// How much of its work a server tells the client that asked with $/setTrace.
const (
	traceOff int32 = iota
	traceMessages
	traceVerbose
)

func (s *Server) setTrace(value string) {
	switch value {
	case "off":
		s.tracing.Store(traceOff)
	case "messages", "compact":
		s.tracing.Store(traceMessages)
	case "verbose":
		s.tracing.Store(traceVerbose)
	}
}

// traceRequest tells that a request was answered and how long it took, and if
// wanted its parameters.
func (s *Server) traceRequest(method string, params json.RawMessage, since time.Time) {
	level := s.tracing.Load()
	if level == traceOff || method == "initialize" { // nothing may come before its answer
		return
	}
	p := object{"message": fmt.Sprintf("%s took %.2f ms", method, float64(time.Since(since).Microseconds())/1000)}
	if level == traceVerbose {
		p["verbose"] = string(params)
	}
	s.tell("$/logTrace", p)
}
