;;; hnote-mode.el --- Health notes, with the server through eglot  -*- lexical-binding: t; -*-

;; Emacs 29 or newer, which has eglot, or 28 with the package.  In your init file:
;;   (load "/where/it/is/hnote-mode.el")

;;; Code:

(defvar hnote-command '("hnote" "lsp")
  "The program that reads along, with its arguments.")

(defvar hnote-mode-font-lock
  '(("^[ \t]*>.*$" . font-lock-doc-face)
    ("\\(?:^\\|[ \t]\\)#.*$" . font-lock-comment-face)
    ("[ \t]\\(@[[:alnum:]_-]+\\)" 1 font-lock-variable-name-face)
    ("^[ \t]*[0-9]\\{4\\}-[0-9]\\{2\\}-[0-9]\\{2\\}\\>" . font-lock-constant-face)
    ("^[ \t]*\\(?:[0-9]+:[0-9]+[ \t]+\\)?\\([a-z][a-z-]*\\)" 1 font-lock-keyword-face))
  "The shapes of lines; what they mean is the server's.")

(defvar hnote-mode-map
  (let ((map (make-sparse-keymap)))
    ;; text modes give this key to the spell checker
    (define-key map (kbd "C-M-i") #'completion-at-point)
    (define-key map (kbd "C-c C-a") #'eglot-code-actions)
    (define-key map (kbd "C-c C-r") #'eglot-rename)
    map)
  "The keys of a note.")

(define-derived-mode hnote-mode text-mode "Note"
  "A health note about a pet."
  (setq-local comment-start "# ")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-always-indent 'complete)
  (if (not (and (require 'treesit nil t) (treesit-ready-p 'hnote t)))
      (setq-local font-lock-defaults '(hnote-mode-font-lock t))
    (treesit-parser-create 'hnote)
    (setq-local treesit-font-lock-feature-list '((note)))
    (setq-local treesit-font-lock-settings
                (treesit-font-lock-rules :language 'hnote :feature 'note
                  '((comment) @font-lock-comment-face
                    (heading date: (date) @font-lock-constant-face)
                    (kind) @font-lock-type-face
                    (opening_line word: (word) @font-lock-keyword-face)
                    (entry_line word: (word) @font-lock-keyword-face)
                    (tag) @font-lock-variable-name-face
                    (free_text) @font-lock-doc-face)))
    (treesit-major-mode-setup)))

(add-to-list 'auto-mode-alist '("\\.hnote\\'" . hnote-mode))
(add-hook 'hnote-mode-hook #'eglot-ensure)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs (cons 'hnote-mode (lambda (&rest _) hnote-command))))

(provide 'hnote-mode)
;;; hnote-mode.el ends here
