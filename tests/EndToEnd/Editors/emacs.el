;;; emacs.el --- Drives Emacs without a screen, as a person would  -*- lexical-binding: t; -*-
;; Run by EmacsTests with the project's own configuration loaded. What was seen goes to a JSON file.

(require 'eglot)
(require 'flymake)
(require 'json)

(defvar seen nil)
(defvar patience 60)

(defun see (name value) (push (cons name value) seen))

(defun until (what condition)
  (let ((end (+ (float-time) patience)))
    (while (not (funcall condition))
      (when (> (float-time) end) (error "never came: %s" what))
      (accept-process-output nil 0.05))))

(defun messages () (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))

(defun says (word) (seq-some (lambda (text) (string-search word text)) (messages)))

(defun line () (buffer-substring-no-properties (line-beginning-position) (line-end-position)))

(defun drive ()
  (let ((folder (getenv "HNOTE_FOLDER"))
        (eglot-sync-connect t)
        (eglot-connect-timeout 60))
    (setq hnote-command (append (json-parse-string (getenv "HNOTE_SERVER") :array-type 'list) nil))
    (find-file (expand-file-name "visit.hnote" folder))
    (see 'mode (symbol-name major-mode))
    (unless (eglot-current-server) (apply #'eglot--connect (eglot--guess-contact)))
    (until "the server" #'eglot-current-server)
    (eglot--maybe-activate-editing-mode)
    (flymake-start)

    ;; findings
    (until "a finding about stif" (lambda () (says "`stif`")))
    (see 'diagnostics (vconcat (messages)))

    ;; the words that may follow
    (goto-char (point-max))
    (search-backward "  alert")
    (end-of-line)
    (delete-region (line-beginning-position) (point))
    (insert "  alert br")
    (eglot--signal-textDocument/didChange)
    (let* ((found (eglot-completion-at-point))
           (words (all-completions "br" (nth 2 found))))
      (see 'offered (vconcat (mapcar #'substring-no-properties words)))
      (completion-at-point)
      (until "the word" (lambda () (string-search "alert bright" (line)))))
    (see 'completed (line))

    ;; what a word means
    (goto-char (point-max))
    (search-backward "gait stif ")
    (let ((told (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams))))
      (see 'hover (plist-get (plist-get told :contents) :value)))

    ;; a fix
    (search-forward "stif")
    (backward-char 2)
    (eglot--signal-textDocument/didChange)
    (let ((actions (eglot-code-actions (point) nil "quickfix")))
      (see 'actions (vconcat (mapcar (lambda (one) (plist-get one :title)) actions)))
      (let* ((chosen (seq-find (lambda (one) (string-search "stiff" (plist-get one :title))) actions))
             (whole (if (plist-get chosen :edit) chosen (jsonrpc-request (eglot-current-server) :codeAction/resolve chosen))))
        (eglot--apply-workspace-edit (plist-get whole :edit))))
    (until "the corrected word" (lambda () (string-search "stiff" (line))))

    ;; a tag, everywhere (the editor sends its changes when it is idle: here at once)
    (eglot--signal-textDocument/didChange)
    (goto-char (point-min))
    (search-forward "@slow")
    (backward-char 2)
    (eglot-rename "@elbow-bump")
    (goto-char (point-min))
    (see 'renamed (how-many "@elbow-bump"))
    (see 'left (how-many "@slow"))

    ;; the tidy form
    (eglot--signal-textDocument/didChange)
    (eglot-format-buffer)
    (goto-char (point-max))
    (search-backward "  gait stiff")
    (see 'formatted (line))))

(condition-case fault
    (drive)
  (error (see 'fault (error-message-string fault))))
(with-temp-file (getenv "HNOTE_RESULTS") (insert (json-encode seen)))
(set-buffer-modified-p nil)
(ignore-errors (eglot-shutdown-all))
(kill-emacs 0)
