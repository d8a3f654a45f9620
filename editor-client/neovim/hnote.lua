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
    -- the keys of newer versions, in all of them
    for keys, action in pairs({ K = vim.lsp.buf.hover, gra = vim.lsp.buf.code_action, grn = vim.lsp.buf.rename,
      ['<C-]>'] = vim.lsp.buf.definition, [']d'] = vim.diagnostic.goto_next, ['[d'] = vim.diagnostic.goto_prev }) do
      vim.keymap.set('n', keys, function() action() end, { buffer = note.buf })
    end
    if vim.treesitter and vim.treesitter.start then pcall(vim.treesitter.start, note.buf, 'hnote') end -- where its parser is installed
    if vim.lsp.inlay_hint then vim.lsp.inlay_hint.enable(true, { bufnr = note.buf }) end
  end,
})
