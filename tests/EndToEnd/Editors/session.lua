-- Real Neovim, headless: opens a note, sees its diagnostics, takes a completion, applies a code action, formats.
-- Runs with Neovim 0.7 and later. HNOTE_COMMAND is the server's command line, HNOTE_NOTE the note.
local command = vim.split(vim.env.HNOTE_COMMAND, '\n')
local patience = 60000

local function wait(what, condition)
  if not vim.wait(patience, condition, 10) then error('Neovim waited in vain for: ' .. what) end
end

local function run()
  vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.HNOTE_NOTE))
  local buffer = vim.api.nvim_get_current_buf()
  local options = { name = 'hnote', cmd = command, root_dir = vim.fn.fnamemodify(vim.env.HNOTE_NOTE, ':h') }
  if vim.lsp.start then
    vim.lsp.start(options)
  else
    vim.lsp.buf_attach_client(buffer, assert(vim.lsp.start_client(options)))
  end

  local function line_of(words)
    for number, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
      if line:find(words, 1, true) then return number - 1, line:find(words, 1, true) - 1 end
    end
    error('there is no ' .. words)
  end

  local function ask(method, parameters)
    local answers = assert(vim.lsp.buf_request_sync(buffer, method, parameters, patience))
    local _, answer = next(answers)
    assert(answer and not answer.err, method .. ': ' .. vim.inspect(answer))
    return answer.result
  end

  -- diagnostics, through Neovim's own display of them
  local wrong = line_of('gumss')
  wait('diagnostics', function() return #vim.diagnostic.get(buffer, { lnum = wrong }) > 0 end)
  print('diagnostic: ' .. vim.diagnostic.get(buffer, { lnum = wrong })[1].code)

  -- a code action, applied the way Neovim applies edits
  local here = { line = wrong, character = 3 }
  local actions = ask('textDocument/codeAction', {
    textDocument = vim.lsp.util.make_text_document_params(buffer), range = { start = here, ['end'] = here }, context = { diagnostics = {} },
  })
  local fix
  for _, action in ipairs(actions) do
    if action.kind == 'quickfix' and action.title:find('gums', 1, true) then fix = fix or action end
  end
  assert(fix, 'no quick fix is offered')
  if not fix.edit then fix = ask('codeAction/resolve', fix) end
  vim.lsp.util.apply_workspace_edit(fix.edit, 'utf-16')
  assert(vim.api.nvim_buf_get_lines(buffer, wrong, wrong + 1, false)[1] == '  gums pink', 'the fix was not made: ' .. vim.inspect(fix))
  wait('the finding to go', function() return #vim.diagnostic.get(buffer, { lnum = wrong }) == 0 end)
  print('code action: ' .. fix.title)

  -- a completion: typed, asked for, taken
  local line = line_of('coat glo')
  vim.api.nvim_win_set_cursor(0, { line + 1, #'  coat glo' })
  local list = ask('textDocument/completion', { textDocument = vim.lsp.util.make_text_document_params(buffer), position = { line = line, character = #'  coat glo' }, context = { triggerKind = 1 } })
  local taken
  for _, item in ipairs(list.items or list) do
    if item.label == 'glossy' then taken = item end
  end
  assert(taken, 'glossy is not offered')
  vim.lsp.util.apply_text_edits({ taken.textEdit }, buffer, 'utf-16')
  assert(vim.api.nvim_buf_get_lines(buffer, line, line + 1, false)[1] == '  coat glossy', 'the completion was not taken')
  print('completion: ' .. taken.label)

  -- formatting
  local edits = ask('textDocument/formatting', { textDocument = vim.lsp.util.make_text_document_params(buffer), options = { tabSize = 2, insertSpaces = true } })
  vim.lsp.util.apply_text_edits(edits, buffer, 'utf-16')
  line_of('  hr 18/15s')
  print('formatting: ' .. #edits)
end

local good, problem = pcall(run)
if not good then print('FAILED ' .. tostring(problem)) end
for _, client in pairs(vim.lsp.get_active_clients and vim.lsp.get_active_clients() or vim.lsp.get_clients()) do client.stop() end
vim.cmd(good and 'qall!' or 'cquit 1')
