;;; emacs.el --- Drives Emacs without a screen, with the configuration that users load  -*- lexical-binding: t; -*-

;; Emacs is started in batch mode, with hnote-mode.el loaded as its README says.  Every wait is for a condition, for a minute
;; at most.  What was seen goes to a JSON file.

;;; Code:

(require 'json)
(require 'eglot)
(require 'flymake)

(defvar seen nil "What was seen, by name.")

(defun see (name value)
  "Keep VALUE under NAME."
  (push (cons name value) seen))

(defun until-true (what condition)
  "Wait until CONDITION returns non-nil, and return that; an error that names WHAT after a minute."
  (let ((end (+ (float-time) 60)) value)
    (while (not (setq value (funcall condition)))
      (when (> (float-time) end) (error "Never came: %s" what))
      (accept-process-output nil 0.05))
    value))

(defun send-changes ()
  "Send what was changed: eglot does so when Emacs is idle, which it never is without a screen."
  (eglot--signal-textDocument/didChange))

(defun messages ()
  "The words of what is marked in this note, as the editor has them."
  (send-changes)
  (flymake-start)
  (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))

(defun says (word)
  "Whether a mark in this note names WORD."
  (seq-some (lambda (text) (string-match-p (regexp-quote word) text)) (messages)))

(defun line-here () (buffer-substring-no-properties (line-beginning-position) (line-end-position)))

(defun go-to-last (text)
  "Go to the line of the last TEXT."
  (goto-char (point-max))
  (search-backward text)
  (beginning-of-line))

(defun server () (eglot-current-server))

(defun drive ()
  (setq hnote-command (append (json-parse-string (getenv "HNOTE_SERVER") :array-type 'list) nil))
  (find-file (expand-file-name "visit.hnote" (getenv "HNOTE_FOLDER")))
  (see 'mode (symbol-name major-mode))
  ;; what eglot waits for with `eglot-ensure' is the end of the user's command
  (run-hooks 'post-command-hook)
  (until-true "the server" (lambda () (and (server) (eglot-managed-p))))

  (until-true "a mark on the slip" (lambda () (says "`stif`")))
  (see 'diagnostics (vconcat (messages)))

  (go-to-last "  crt ")
  (forward-char 3)
  (let (told)
    (eglot-hover-eldoc-function (lambda (text &rest _) (setq told text)))
    (see 'hover (substring-no-properties (until-true "the words on the word" (lambda () told)))))

  ;; a completion: what is offered, and the key that takes it
  (go-to-last "  alert ")
  (delete-region (point) (line-end-position))
  (insert "  alert bri")
  (let ((offer (until-true "words" #'eglot-completion-at-point)))
    (see 'offered (vconcat (all-completions "" (nth 2 offer)))))
  (completion-at-point)
  (until-true "the word taken" (lambda () (string-suffix-p "bright" (line-here))))
  (see 'completed (line-here))

  ;; the fix of the slip, by its name
  (go-to-last "  gait stif")
  (forward-char 8)
  (until-true "the mark after the change" (lambda () (says "`stif`")))
  (cl-letf (((symbol-function 'completing-read)
             (lambda (_prompt choices &rest _)
               (let ((titles (all-completions "" choices)))
                 (see 'actions (vconcat titles))
                 (seq-find (lambda (title) (string-match-p "stiff" title)) titles)))))
    (let ((last-nonmenu-event ?x)) ; by a key: else a menu of the mouse is asked for
      (call-interactively #'eglot-code-actions)))
  (until-true "the corrected word" (lambda () (string-match-p "stiff" (line-here))))
  (see 'corrected (line-here))
  (until-true "the mark gone" (lambda () (not (says "`stif`"))))

  (eglot-format-buffer)
  (go-to-last "  gait stiff")
  (see 'formatted (line-here))

  (send-changes)
  (goto-char (point-min))
  (search-forward "@fat")
  (eglot-rename "elbow-bump")
  (see 'renamed (how-many "@elbow-bump\\>" (point-min) (point-max)))
  (see 'left (how-many "@fatty\\>" (point-min) (point-max)))

  (goto-char (point-min))
  (font-lock-ensure)
  (see 'painted
       (vconcat (mapcar (lambda (text)
                          (search-forward text)
                          (symbol-name (get-text-property (1- (point)) 'face)))
                        '("# A large" "species" "2022-11-12" "  > A fit dog" "@elbow" "# person"))))
  (eglot-shutdown (server)))

(condition-case fault
    (drive)
  (error (see 'fault (format "%S" fault))))
(with-temp-file (getenv "HNOTE_RESULTS") (insert (json-serialize seen)))
(dolist (buffer (buffer-list)) (with-current-buffer buffer (set-buffer-modified-p nil)))
(kill-emacs 0)
;;; emacs.el ends here
