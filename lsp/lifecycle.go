package lsp

import (
	"context"
	"encoding/json"
	"slices"

	"go.lsp.dev/protocol"
)

// clientCaps is what the server needs to know of a client, read leniently: nulls
// and empty arrays stand for absence.
type clientCaps struct {
	documentChanges   bool
	actionLiterals    bool
	preferredActions  bool
	lazyEdits         bool // the edit of an action may come when the action is taken
	hoverMarkdown     bool
	docMarkdown       bool
	snippets          bool
	related           bool
	codeDescription   bool
	diagnosticVersion bool
	hintRefresh       bool
	lensRefresh       bool
	tokensRefresh     bool
	diagnosticRefresh bool
	progress          bool
	configuration     bool
	watchFiles        bool
	hierarchySymbols  bool
	prepareRename     bool
	showDocument      bool
	labelOffsets      bool
	configChanges     bool // changes of the configuration must be registered for
	applyEdit         bool
}

// tree walks the JSON of the capabilities; a missing step gives nil.
func tree(v any, steps ...string) any {
	for _, s := range steps {
		m, ok := v.(map[string]any)
		if !ok {
			return nil
		}
		v = m[s]
	}
	return v
}

func yes(v any) bool { b, _ := v.(bool); return b }

func words(v any) []string {
	list, _ := v.([]any)
	var out []string
	for _, x := range list {
		if s, ok := x.(string); ok {
			out = append(out, s)
		}
	}
	return out
}

func readCaps(c any) clientCaps {
	td, ws := tree(c, "textDocument"), tree(c, "workspace")
	return clientCaps{
		documentChanges:   yes(tree(ws, "workspaceEdit", "documentChanges")),
		actionLiterals:    tree(td, "codeAction", "codeActionLiteralSupport") != nil,
		lazyEdits:         slices.Contains(words(tree(td, "codeAction", "resolveSupport", "properties")), "edit") && yes(tree(td, "codeAction", "dataSupport")),
		preferredActions:  yes(tree(td, "codeAction", "isPreferredSupport")),
		hoverMarkdown:     slices.Contains(words(tree(td, "hover", "contentFormat")), "markdown"),
		docMarkdown:       slices.Contains(words(tree(td, "completion", "completionItem", "documentationFormat")), "markdown"),
		snippets:          yes(tree(td, "completion", "completionItem", "snippetSupport")),
		related:           yes(tree(td, "publishDiagnostics", "relatedInformation")),
		codeDescription:   yes(tree(td, "publishDiagnostics", "codeDescriptionSupport")),
		diagnosticVersion: yes(tree(td, "publishDiagnostics", "versionSupport")),
		hintRefresh:       yes(tree(ws, "inlayHint", "refreshSupport")),
		lensRefresh:       yes(tree(ws, "codeLens", "refreshSupport")),
		tokensRefresh:     yes(tree(ws, "semanticTokens", "refreshSupport")),
		diagnosticRefresh: yes(tree(ws, "diagnostics", "refreshSupport")),
		progress:          yes(tree(c, "window", "workDoneProgress")),
		configuration:     yes(tree(ws, "configuration")),
		watchFiles:        yes(tree(ws, "didChangeWatchedFiles", "dynamicRegistration")),
		hierarchySymbols:  yes(tree(td, "documentSymbol", "hierarchicalDocumentSymbolSupport")),
		prepareRename:     yes(tree(td, "rename", "prepareSupport")),
		showDocument:      yes(tree(c, "window", "showDocument", "support")),
		labelOffsets:      yes(tree(td, "signatureHelp", "signatureInformation", "parameterInformation", "labelOffsetSupport")),
		configChanges:     yes(tree(ws, "didChangeConfiguration", "dynamicRegistration")),
		applyEdit:         yes(tree(ws, "applyEdit")),
	}
}

var _ = on("initialize", func(s *Server, _ context.Context, params json.RawMessage, _ *snapshot) (any, error) {
	var p map[string]any
	if err := json.Unmarshal(params, &p); err != nil {
		return nil, err
	}
	s.client = readCaps(p["capabilities"])
	name := "utf-16"
	if slices.Contains(words(tree(p["capabilities"], "general", "positionEncodings")), "utf-8") {
		s.enc, name = utf8Bytes, "utf-8"
	}
	if list, ok := p["workspaceFolders"].([]any); ok {
		for _, f := range list {
			if u, ok := tree(f, "uri").(string); ok && pathOf(u) != "" {
				s.disk.open(pathOf(u))
			}
		}
	} else if u, ok := p["rootUri"].(string); ok && pathOf(u) != "" {
		s.disk.open(pathOf(u))
	}
	s.config.read(p["initializationOptions"])
	if s.client.codeDescription {
		s.rules.find(s.opts.Version)
	}
	if trace, ok := p["trace"].(string); ok {
		s.setTrace(trace)
	}
	s.state = running
	return object{"capabilities": s.capabilities(name), "serverInfo": object{"name": "tundish", "version": s.opts.Version}}, nil
})

// plantFiles are the files and folders of whose creation, new names and deletion
// the server wants to hear.
var plantFiles = object{"filters": []object{
	{"scheme": "file", "pattern": object{"glob": "**/*.plant", "matches": "file"}},
	{"scheme": "file", "pattern": object{"glob": "**/*", "matches": "folder"}},
}}

func (s *Server) capabilities(encodingName string) object {
	yes := true
	actions := any(yes)
	if s.client.actionLiterals {
		actions = object{"codeActionKinds": []string{"quickfix", "refactor.rewrite", "source.fixAll"}, "resolveProvider": s.client.lazyEdits}
	}
	rename := any(yes)
	if s.client.prepareRename {
		rename = object{"prepareProvider": yes}
	}
	return object{
		"positionEncoding": encodingName,
		"textDocumentSync": object{"openClose": yes, "change": 2, "save": object{"includeText": false}},
		"hoverProvider":    yes, "definitionProvider": yes, "referencesProvider": object{"workDoneProgress": yes}, "documentHighlightProvider": yes,
		"documentSymbolProvider": yes, "workspaceSymbolProvider": object{"workDoneProgress": yes}, "foldingRangeProvider": yes, "selectionRangeProvider": yes,
		"documentFormattingProvider": yes, "documentRangeFormattingProvider": yes,
		"documentOnTypeFormattingProvider": object{"firstTriggerCharacter": "}", "moreTriggerCharacter": []string{"\n"}},
		"renameProvider":                   rename,
		"completionProvider":               object{"triggerCharacters": []string{" ", "."}, "resolveProvider": yes},
		"signatureHelpProvider":            object{"triggerCharacters": []string{" "}},
		"codeActionProvider":               actions,
		"codeLensProvider":                 object{},
		"documentLinkProvider":             object{},
		"executeCommandProvider":           object{"commands": commandNames()},
		"inlayHintProvider":                yes,
		"callHierarchyProvider":            yes,
		"linkedEditingRangeProvider":       yes,
		"semanticTokensProvider": object{
			"legend": object{"tokenTypes": tokenTypes, "tokenModifiers": []string{}},
			"full":   object{"delta": yes}, "range": yes,
		},
		"diagnosticProvider": object{"identifier": "tundish", "interFileDependencies": yes, "workspaceDiagnostics": false},
		"workspace": object{
			"workspaceFolders": object{"supported": yes, "changeNotifications": yes},
			"fileOperations":   object{"didCreate": plantFiles, "didRename": plantFiles, "didDelete": plantFiles, "willRename": plantFiles},
		},
	}
}

func (s *Server) initialized() {
	var list []object
	if s.client.watchFiles {
		list = append(list, object{
			"id": "watch-plants", "method": "workspace/didChangeWatchedFiles",
			"registerOptions": object{"watchers": []object{{"globPattern": "**/*.plant"}}},
		})
	}
	if s.client.configChanges {
		list = append(list, object{"id": "settings", "method": "workspace/didChangeConfiguration", "registerOptions": object{"section": "tundish"}})
	}
	if list != nil {
		s.call("client/registerCapability", object{"registrations": list}, nil)
	}
	s.askConfiguration()
}

var _ = on("shutdown", func(s *Server, _ context.Context, _ json.RawMessage, _ *snapshot) (any, error) {
	s.state = stopping
	s.live.close()
	return nil, nil
})

var _ = protocol.Position{}
