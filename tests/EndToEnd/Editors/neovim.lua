-- Run by Neovim without a screen. It starts a second Neovim, which is the editor looked at, and presses its keys,
-- so that completion happens as it does for a user. Every wait is for a condition. What was seen goes to a JSON file.
local folder, results = vim.env.HNOTE_FOLDER, vim.env.HNOTE_RESULTS
local patience = 60000
local seen = {}
-- It reads the configuration that users copy; only the command is given, so that the built server is looked at.
local editor = vim.fn.jobstart({
  vim.env.HNOTE_NEOVIM, '--embed', '--headless', '-i', 'NONE', '--cmd', 'set noswapfile shortmess+=aI',
  '--cmd', 'lua vim.g.hnote_command = vim.fn.json_decode(vim.env.HNOTE_SERVER)',
}, { rpc = true })

-- Runs Lua in the editor; returns what it returns.
local function lua(code, ...)
  return vim.rpcrequest(editor, 'nvim_exec_lua', code, { ... })
end

local function press(keys)
  local raw = vim.api.nvim_replace_termcodes(keys, true, true, true)
  vim.rpcrequest(editor, 'nvim_feedkeys', raw, 'nt', false)
end

local function until_true(what, condition)
  if not vim.wait(patience, condition, 20) then
    error('never came: ' .. what)
  end
end

local function line_of(row)
  return lua('local row = ...; return vim.api.nvim_buf_get_lines(0, row, row + 1, false)[1]', row)
end

local function messages()
  return lua('return vim.tbl_map(function(it) return it.message end, vim.diagnostic.get(0))')
end

local function says(word)
  for _, message in ipairs(messages()) do
    if message:find(word, 1, true) then return true end
  end
  return false
end

local function drive()
  vim.rpcrequest(editor, 'nvim_command', 'edit ' .. vim.fn.fnameescape(folder .. '/visit.hnote'))
  lua([[
    vim.o.completeopt = 'menuone,noselect'
    vim.ui.select = function(items, _, choose)
      offered_actions = vim.tbl_map(function(it) return (it[2] or it.action).title end, items)
      for index, title in ipairs(offered_actions) do
        if title:find('stiff', 1, true) then return choose(items[index], index) end
      end
      choose(nil)
    end
  ]])
  seen.filetype = lua('return vim.bo.filetype')

  -- findings
  until_true('a finding about "stif"', function() return says('`stif`') end)
  seen.diagnostics = messages()
  local gait = lua([[return vim.fn.search('  gait stif ', 'w') - 1]])
  local alert = lua([[return vim.fn.search('^  alert', 'bW') - 1]])

  -- of several findings in a line, the one that there is room for beside it
  seen.beside = lua([[
    local row, told = ..., {}
    for _, findings in pairs(vim.diagnostic.get_namespaces()) do
      local space = findings.user_data.virt_text_ns
      for _, mark in ipairs(space and vim.api.nvim_buf_get_extmarks(0, space, { row, 0 }, { row, -1 }, { details = true }) or {}) do
        for _, part in ipairs(mark[4].virt_text or {}) do table.insert(told, part[1]) end
      end
    end
    return table.concat(told)
  ]], gait)

  -- a completion, by its keys: the menu, the word, the choice
  press('0Di  alert <C-x><C-o>')
  until_true('the menu of words', function() return lua('return vim.fn.pumvisible()') == 1 end)
  seen.offered = lua([[return vim.tbl_map(function(it) return it.word end, vim.fn.complete_info({ 'items' }).items)]])
  local index = vim.fn.index(seen.offered, 'bright')
  press(string.rep('<C-n>', index + 1))
  until_true('"bright" chosen', function() return lua([[return vim.fn.complete_info({ 'selected' }).selected]]) == index end)
  press('<C-y><Esc>')
  until_true('the end of typing', function() return vim.rpcrequest(editor, 'nvim_get_mode').mode == 'n' end)
  seen.completed = line_of(alert)

  -- a code action on the slip
  lua([[local row = ...; vim.api.nvim_win_set_cursor(0, { row + 1, 8 })]], gait)
  lua('vim.lsp.buf.code_action()')
  until_true('the corrected word', function() return line_of(gait):find('stiff', 1, true) ~= nil end)
  seen.actions = lua('return offered_actions or {}')
  seen.corrected = line_of(gait)
  until_true('the finding gone', function() return not says('`stif`') end)

  -- the words on a word
  lua([[vim.fn.search('^  crt ', 'w'); vim.cmd('normal! w')]])
  lua('vim.lsp.buf.hover()')
  local function float()
    return lua([[
      for _, window in ipairs(vim.api.nvim_list_wins()) do
        if vim.api.nvim_win_get_config(window).relative ~= '' then
          return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), '\n')
        end
      end
      return vim.NIL
    ]])
  end
  until_true('the words on the word', function() return float() ~= vim.NIL end)
  seen.hover = float()

  -- the whole file, formatted
  lua('if vim.lsp.buf.format then vim.lsp.buf.format({ timeout_ms = 30000 }) else vim.lsp.buf.formatting_sync(nil, 30000) end')
  until_true('the formatted line', function() return line_of(gait):find('stiff warms', 1, true) ~= nil end)
  seen.formatted = line_of(gait)

  -- a tag, everywhere
  local function lines_with(word)
    return #vim.tbl_filter(function(line) return line:find(word, 1, true) end, lua('return vim.api.nvim_buf_get_lines(0, 0, -1, false)'))
  end
  lua([[vim.fn.search('@fatty', 'w'); vim.cmd('normal! l'); vim.lsp.buf.rename('elbow-bump')]])
  until_true('the new name', function() return lines_with('@fatty') == 0 end)
  seen.renamed = lines_with('@elbow-bump')
end

local worked, fault = pcall(drive)
if not worked then
  seen.fault = tostring(fault)
  pcall(function() seen.lines = lua('return vim.api.nvim_buf_get_lines(0, -60, -1, false)') end)
end
vim.fn.writefile({ vim.fn.json_encode(seen) }, results)
pcall(vim.rpcrequest, editor, 'nvim_command', 'lua vim.lsp.stop_client(vim.lsp.get_active_clients and vim.lsp.get_active_clients() or vim.lsp.get_clients())')
pcall(vim.rpcnotify, editor, 'nvim_command', 'qall!')
if vim.fn.jobwait({ editor }, 5000)[1] == -1 then vim.fn.jobstop(editor) end
vim.cmd('qall!')
