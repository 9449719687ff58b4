;;; tundish.el --- plant files -*- lexical-binding: t -*-
;; For Emacs with eglot: Emacs 29 and later has it, Emacs 28 as a package.

(define-derived-mode plant-mode prog-mode "Plant"
  "Major mode for plant files."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2))

(add-to-list 'auto-mode-alist '("\\.plant\\'" . plant-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(plant-mode . ("tundish" "serve"))))

(add-hook 'plant-mode-hook #'eglot-ensure)

(declare-function eglot-current-server "eglot")
(declare-function eglot-client-capabilities "eglot")
(declare-function eglot--TextDocumentIdentifier "eglot")
(declare-function jsonrpc-request "jsonrpc")

(defun tundish-sheet ()
  "Show the calculation sheet of this file in the browser, renewed while you type."
  (interactive)
  (let* ((server (or (eglot-current-server) (user-error "No server runs for this file")))
         (uri (plist-get (eglot--TextDocumentIdentifier) :uri))
         (shows (plist-get (plist-get (eglot-client-capabilities server) :window) :showDocument))
         (address (jsonrpc-request server :workspace/executeCommand
                                   (list :command "tundish.sheet" :arguments (vector uri)))))
    ;; An eglot that shows documents for the server has done so already.
    (unless shows (browse-url address))))

(provide 'tundish)
;;; tundish.el ends here
