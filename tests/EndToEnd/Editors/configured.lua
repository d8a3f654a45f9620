-- Run in Neovim without a screen, with the project's own configuration or its Vim files on the runtime path.
local seen = { filetype = vim.bo.filetype, syntax = vim.b.current_syntax or '', comment = vim.bo.commentstring }
if vim.g.hnote_command then
  vim.wait(60000, function() return #vim.diagnostic.get(0) > 0 end, 20)
  seen.diagnostics = vim.tbl_map(function(it) return it.message end, vim.diagnostic.get(0))
else
  vim.fn.search('^  gait', 'w')
  seen.group = vim.fn.synIDattr(vim.fn.synID(vim.fn.line('.'), 4, 1), 'name')
  vim.fn.search('^2026', 'w')
  seen.date = vim.fn.synIDattr(vim.fn.synID(vim.fn.line('.'), 2, 1), 'name')
end
vim.fn.writefile({ vim.fn.json_encode(seen) }, vim.env.HNOTE_RESULTS)
vim.cmd('qall!')
