-- Health notes in Neovim. Put this file into ~/.config/nvim/plugin/
vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, {
  pattern = '*.hnote',
  callback = function(note)
    vim.bo.filetype = 'hnote'
    vim.bo.commentstring = '# %s'
    vim.bo.shiftwidth, vim.bo.expandtab = 2, true
    vim.bo.omnifunc = 'v:lua.vim.lsp.omnifunc'
    local server = {
      name = 'hnote',
      cmd = vim.g.hnote_command or { 'hnote', 'lsp' },
      root_dir = vim.fn.fnamemodify(note.file, ':p:h'),
    }
    if vim.lsp.start then
      vim.lsp.start(server)
    else -- before 0.8
      vim.lsp.buf_attach_client(note.buf, vim.lsp.start_client(server))
    end
    if vim.lsp.inlay_hint then vim.lsp.inlay_hint.enable(true, { bufnr = note.buf }) end
  end,
})
