; By shape, for the first moment; the server's semantic tokens lie over it. A bare number, an interval and a later time can
; belong to a remark, so they have no colour here. A test compares the two on every sample.
(comment) @comment
(kind) @type
(heading (time) @constant.numeric)
(opening_line time: (time) @constant.numeric)
(entry_line time: (time) @constant.numeric)
(opening_line word: (word) @keyword)
(entry_line word: (word) @keyword)
(date) @constant.numeric
(value) @constant.numeric
(tag) @label
(free_text ">" @operator)
(file) @variable
(text) @string
(link) @string.special.url
