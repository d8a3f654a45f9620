-- Health notes in Neovim (0.8 or newer). Put this file into ~/.config/nvim/plugin/
vim.filetype.add({ extension = { hnote = 'hnote' } })

vim.api.nvim_create_autocmd('FileType', {
  pattern = 'hnote',
  callback = function(note)
    vim.bo.commentstring = '# %s'
    vim.bo.shiftwidth, vim.bo.expandtab = 2, true
    vim.bo.omnifunc = 'v:lua.vim.lsp.omnifunc'
    vim.lsp.start({
      name = 'hnote',
      cmd = vim.g.hnote_command or { 'hnote', 'lsp' },
      root_dir = vim.fs.dirname(vim.api.nvim_buf_get_name(note.buf)),
    })
    if vim.lsp.inlay_hint then vim.lsp.inlay_hint.enable(true, { bufnr = note.buf }) end
  end,
})
