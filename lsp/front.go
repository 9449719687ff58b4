package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strconv"
	"sync"

	"go.lsp.dev/jsonrpc2"
)

// Error codes of the protocol that the base library lacks.
const (
	codeCanceled        jsonrpc2.Code = -32800 // by the client
	codeContentModified jsonrpc2.Code = -32801
	codeServerCanceled  jsonrpc2.Code = -32802
	codeFailed          jsonrpc2.Code = -32803 // well asked, but not to be had
)

// incoming is any message; a missing id and an id of null are told apart.
type incoming struct {
	ID     json.RawMessage `json:"id"`
	Method *string         `json:"method"`
	Params json.RawMessage `json:"params"`
	Result json.RawMessage `json:"result"`
	Error  *jsonrpc2.Error `json:"error"`
}

// front stands before the features: it keeps notifications in order on the
// reading goroutine, gives each request the snapshot of the moment it arrived,
// and shields the server from bad messages and from faults of its own.
type front struct {
	*stream
	handle   func(ctx context.Context, method string, params json.RawMessage, at *snapshot) (any, error)
	notify   func(method string, params json.RawMessage)
	snapshot func() *snapshot
	answered func(id string, result json.RawMessage, err *jsonrpc2.Error)
	ready    func(method string) *jsonrpc2.Error // nil: the method may run now

	ctx     context.Context
	mu      sync.Mutex
	running map[string]context.CancelFunc // by raw id
	wg      sync.WaitGroup
	slots   chan struct{}
}

// maxRequests bounds the requests at work at once; further ones wait.
const maxRequests = 64

// run reads until the client closes its end or says exit; code is the exit code
// that the protocol asks for.
func (f *front) run(ctx context.Context, exit func() bool) {
	ctx, stop := context.WithCancel(ctx)
	f.ctx = ctx
	f.running = map[string]context.CancelFunc{}
	f.slots = make(chan struct{}, maxRequests)
	go f.send()
	defer func() {
		stop()
		f.wg.Wait()
	}()
	for !exit() {
		body, err := f.read()
		var he *headerError
		switch {
		case errors.Is(err, io.EOF):
			return
		case errors.Is(err, errTooLarge):
			f.fail(nil, jsonrpc2.NewError(jsonrpc2.InvalidRequest, err.Error()))
			continue
		case errors.As(err, &he):
			f.fail(nil, jsonrpc2.NewError(jsonrpc2.ParseError, err.Error()))
			continue
		}
		f.message(body)
	}
}

func (f *front) message(body []byte) {
	var m incoming
	if err := json.Unmarshal(body, &m); err != nil {
		var batch []json.RawMessage
		if json.Unmarshal(body, &batch) == nil && len(batch) > 0 {
			for _, one := range batch {
				f.message(one)
			}
			return
		}
		f.fail(nil, jsonrpc2.NewError(jsonrpc2.ParseError, "the message is not valid JSON"))
		return
	}
	hasID := len(m.ID) > 0 && string(m.ID) != "null"
	switch {
	case m.Method == nil && hasID:
		f.answered(string(m.ID), m.Result, m.Error)
	case m.Method == nil:
		f.fail(nil, jsonrpc2.NewError(jsonrpc2.InvalidRequest, "the message is neither request nor notification nor answer"))
	case !hasID && *m.Method == "$/cancelRequest":
		f.cancel(m.Params)
	case !hasID:
		f.shield(func() { f.notify(*m.Method, m.Params) })
	default:
		f.request(m)
	}
}

// shield keeps a fault in a notification from ending the server.
func (f *front) shield(do func()) {
	defer func() {
		if v := recover(); v != nil {
			f.trace("fault", fmt.Appendf(nil, "%v\n%s", v, debug.Stack()))
		}
	}()
	do()
}

func (f *front) request(m incoming) {
	if e := f.ready(*m.Method); e != nil {
		f.fail(m.ID, e)
		return
	}
	// initialize and shutdown change what may run next: they run in order.
	if *m.Method == "initialize" || *m.Method == "shutdown" {
		f.answer(f.ctx, m, f.snapshot())
		return
	}
	at := f.snapshot()
	ctx, cancel := context.WithCancel(f.ctx)
	id := string(m.ID)
	f.mu.Lock()
	f.running[id] = cancel
	f.mu.Unlock()
	f.wg.Add(1)
	go func() {
		f.slots <- struct{}{} // waited for here, so that reading goes on and cancels are heard
		defer func() {
			f.mu.Lock()
			delete(f.running, id)
			f.mu.Unlock()
			cancel()
			<-f.slots
			f.wg.Done()
		}()
		f.answer(ctx, m, at)
	}()
}

func (f *front) answer(ctx context.Context, m incoming, at *snapshot) {
	result, err := f.guarded(ctx, m, at)
	if err == nil && ctx.Err() != nil {
		err = ctx.Err()
	}
	if err != nil {
		f.fail(m.ID, wireError(f.ctx, err))
		return
	}
	raw, err := encode(result)
	if err != nil {
		f.fail(m.ID, jsonrpc2.NewError(jsonrpc2.InternalError, err.Error()))
		return
	}
	f.post(outgoing{ID: m.ID, Result: raw})
}

// guarded runs a request; a fault in it answers that request and no other.
func (f *front) guarded(ctx context.Context, m incoming, at *snapshot) (result any, err error) {
	defer func() {
		if v := recover(); v != nil {
			f.trace("fault", fmt.Appendf(nil, "%s: %v\n%s", *m.Method, v, debug.Stack()))
			result, err = nil, jsonrpc2.NewError(jsonrpc2.InternalError, fmt.Sprintf("the server broke down in %s: %v", *m.Method, v))
		}
	}()
	return f.handle(ctx, *m.Method, m.Params, at)
}

func wireError(server context.Context, err error) *jsonrpc2.Error {
	var e *jsonrpc2.Error
	switch {
	case errors.As(err, &e):
		return e
	case errors.Is(err, context.Canceled) && server.Err() != nil:
		return jsonrpc2.NewError(codeServerCanceled, "the server is stopping")
	case errors.Is(err, context.Canceled):
		return jsonrpc2.NewError(codeCanceled, "canceled")
	}
	return jsonrpc2.NewError(jsonrpc2.InternalError, err.Error())
}

func (f *front) cancel(params json.RawMessage) {
	var p struct {
		ID json.RawMessage `json:"id"`
	}
	if json.Unmarshal(params, &p) != nil || len(p.ID) == 0 {
		return
	}
	f.mu.Lock()
	cancel := f.running[string(p.ID)]
	f.mu.Unlock()
	if cancel != nil {
		cancel()
	}
}

// outgoing is any message to the client.
type outgoing struct {
	ID     json.RawMessage
	Method string
	Params json.RawMessage
	Result json.RawMessage
	Error  *jsonrpc2.Error
}

// wire is the JSON of an outgoing message: an answer without a result carries
// an explicit null. Parameters and results are JSON already and are not looked
// through again.
func (o outgoing) wire() []byte {
	b := make([]byte, 0, 128+len(o.ID)+len(o.Params)+len(o.Result))
	b = append(b, `{"jsonrpc":"2.0"`...)
	if len(o.ID) > 0 {
		b = append(append(b, `,"id":`...), o.ID...)
	} else if o.Method == "" {
		b = append(b, `,"id":null`...)
	}
	switch {
	case o.Method != "":
		b = appendString(append(b, `,"method":`...), o.Method)
		if len(o.Params) > 0 {
			b = append(append(b, `,"params":`...), o.Params...)
		}
	case o.Error != nil:
		b = strconv.AppendInt(append(b, `,"error":{"code":`...), int64(o.Error.Code), 10)
		b = append(appendString(append(b, `,"message":`...), o.Error.Message), '}')
	case len(o.Result) > 0:
		b = append(append(b, `,"result":`...), o.Result...)
	default:
		b = append(b, `,"result":null`...)
	}
	return append(b, '}')
}

func (f *front) post(o outgoing) { f.write(o.wire()) }

func (f *front) fail(id json.RawMessage, e *jsonrpc2.Error) { f.post(outgoing{ID: id, Error: e}) }
