" The shapes of a note's lines; what they mean is the server's.
if exists('b:current_syntax') | finish | endif
syntax match hnoteWord /^\s*\zs[a-z][a-z-]*\ze\(\s\|$\)/
syntax match hnoteTime /^\s*\d\{1,2}:\d\{2}\ze\s/ nextgroup=hnoteTimedWord skipwhite
syntax match hnoteTimedWord /[a-z][a-z-]*\ze\(\s\|$\)/ contained
syntax match hnoteDate /^\s*\d\{4}-\d\{2}-\d\{2}\ze\(\s\|$\)/
syntax match hnoteTag /\s\zs@[A-Za-z0-9_-]\+/
syntax match hnoteComment /\(^\|\s\)#.*$/
syntax match hnoteText /^\s*>.*$/
highlight default link hnoteWord Keyword
highlight default link hnoteTime Constant
highlight default link hnoteTimedWord hnoteWord
highlight default link hnoteDate Constant
highlight default link hnoteTag Identifier
highlight default link hnoteComment Comment
highlight default link hnoteText String
let b:current_syntax = 'hnote'
