-- Edits the sound example into a faulty one and takes the offered fix.
local function fail(why)
  io.stderr:write("neovim: " .. why .. "\n")
  vim.cmd("cquit")
end

local function count(code)
  local n = 0
  for _, d in ipairs(vim.diagnostic.get(0)) do
    if d.code == code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code == code) then n = n + 1 end
  end
  return n
end

local function wait(what, cond)
  if not vim.wait(15000, cond, 20) then fail("waited in vain: " .. what) end
end

wait("the first note", function() return count("return-above-dew-point") == 1 end)
if count("gas-drop-over-limit") ~= 0 then fail("the sound example has a gas finding") end

local line
for i, l in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
  if l:match("^%s+pipe G1 ") then line = i end
end
local was = vim.api.nvim_buf_get_lines(0, line - 1, line, false)[1]
vim.api.nvim_buf_set_lines(0, line - 1, line, false, { (was:gsub("DN65", "DN32")) })
wait("the finding of the small pipe", function() return count("gas-drop-over-limit") == 1 end)

local client = vim.lsp.get_active_clients()[1]
local hints = client.request_sync("textDocument/inlayHint", {
  textDocument = vim.lsp.util.make_text_document_params(),
  range = { start = { line = line - 1, character = 0 }, ["end"] = { line = line, character = 0 } },
}, 5000, 0)
if not hints or not hints.result or #hints.result == 0 then fail("no hints beside the pipe") end

local answer = client.request_sync("textDocument/codeAction", {
  textDocument = vim.lsp.util.make_text_document_params(),
  range = { start = { line = line - 1, character = 2 }, ["end"] = { line = line - 1, character = 2 } },
  context = { diagnostics = {} },
}, 5000, 0)
local action
for _, a in ipairs(answer.result) do
  if a.title:match("^Take G1 in") then action = a end
end
if not action then fail("no size is offered") end
vim.lsp.util.apply_workspace_edit(action.edit, client.offset_encoding)
wait("the finding to go", function() return count("gas-drop-over-limit") == 0 end)
vim.cmd("silent write")
io.stdout:write("neovim: findings came and went, the fix was taken: " .. action.title .. "\n")
vim.cmd("qall!")
