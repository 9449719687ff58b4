;;; tundish.el --- plant files -*- lexical-binding: t -*-
;; For Emacs 29 and later, with eglot.

(define-derived-mode plant-mode prog-mode "Plant"
  "Major mode for plant files."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+ *")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2))

(add-to-list 'auto-mode-alist '("\\.plant\\'" . plant-mode))

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(plant-mode . ("tundish" "serve"))))

(add-hook 'plant-mode-hook 'eglot-ensure)

(provide 'tundish)
;;; tundish.el ends here
