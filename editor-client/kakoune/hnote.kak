# Health notes in Kakoune, with kakoune-lsp. Add this to ~/.config/kak/kakrc
hook global BufCreate .*[.]hnote %{ set-option buffer filetype hnote }
hook global WinSetOption filetype=hnote %{
    set-option buffer comment_line '#'
    set-option buffer indentwidth 2
    require-module hnote
    add-highlighter window/hnote ref hnote
    set-option buffer lsp_servers %{
        [hnote]
        command = "hnote"
        args = ["lsp"]
        root_globs = ["*.hnote"]
    }
    lsp-enable-window
}
provide-module hnote %{
    add-highlighter shared/hnote regions
    add-highlighter shared/hnote/line default-region group
    add-highlighter shared/hnote/comment region '(?:^|\h)#' '$' fill comment
    add-highlighter shared/hnote/text region '^\h*>' '$' fill documentation
    add-highlighter shared/hnote/line/ regex '^\h*(\d{4}-\d{2}-\d{2})' 1:value
    add-highlighter shared/hnote/line/ regex '^\h*(?:\d{1,2}:\d{2}\h+)?([a-z][a-z-]*)' 1:keyword
    add-highlighter shared/hnote/line/ regex '\h(@[\w-]+)' 1:variable
}
