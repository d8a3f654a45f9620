autocmd BufRead,BufNewFile *.hnote setfiletype hnote
