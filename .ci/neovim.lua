-- Edits the sound example into a faulty one and back, then into the faulty one
-- again and takes the offered fix: findings and hints come, go and come back.
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

local client = vim.lsp.get_active_clients()[1]
local line
for i, l in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
  if l:match("^%s+pipe G1 ") then line = i end
end
local sound = vim.api.nvim_buf_get_lines(0, line - 1, line, false)[1]
local faulty = sound:gsub("DN65", "DN32")
if faulty == sound then fail("the example has no DN65 in the line of G1") end

local function ask(method, params)
  params.textDocument = vim.lsp.util.make_text_document_params()
  local answer = client.request_sync(method, params, 5000, 0)
  if not answer or answer.err or not answer.result then fail(method .. " is not answered") end
  return answer.result
end

-- The hint beside the pipe, which tells its loss.
local function hint()
  local list = ask("textDocument/inlayHint", {
    range = { start = { line = line - 1, character = 0 }, ["end"] = { line = line - 1, character = #sound } },
  })
  if #list ~= 1 or not list[1].label:match("loses ") then fail("no hint beside the pipe: " .. vim.inspect(list)) end
  return list[1].label
end

local function write(text) vim.api.nvim_buf_set_lines(0, line - 1, line, false, { text }) end

local before = hint()
write(faulty)
wait("the finding of the small pipe", function() return count("gas-drop-over-limit") == 1 end)
local during = hint()
if during == before then fail("the hint does not change: " .. during) end

write(sound)
wait("the finding to go when the text is sound again", function() return count("gas-drop-over-limit") == 0 end)
if count("return-above-dew-point") ~= 1 then fail("the first note is gone") end
if hint() ~= before then fail("the hint does not come back: " .. hint()) end

write(faulty)
wait("the finding to come back", function() return count("gas-drop-over-limit") == 1 end)
if hint() ~= during then fail("the hint of the faulty text is another one: " .. hint()) end
local action
for _, a in ipairs(ask("textDocument/codeAction", {
  range = { start = { line = line - 1, character = 2 }, ["end"] = { line = line - 1, character = 2 } },
  context = { diagnostics = {} },
})) do
  if a.title:match("^Take G1 in") then action = a end
end
if not action then fail("no size is offered") end
vim.lsp.util.apply_workspace_edit(action.edit, client.offset_encoding)
wait("the finding to go after the fix", function() return count("gas-drop-over-limit") == 0 end)
local fixed = hint()
if fixed == during then fail("the hint does not follow the fix: " .. fixed) end

local address = client.request_sync("workspace/executeCommand", { command = "tundish.sheet", arguments = { vim.uri_from_bufnr(0) } }, 5000, 0)
if not address or type(address.result) ~= "string" or not address.result:match("^http://127%.0%.0%.1:%d+/") then
  fail("the sheet has no address: " .. vim.inspect(address))
end

vim.cmd("silent write")
io.stdout:write("neovim: findings and hints came, went and came back (" .. before .. "; " .. during .. "; " .. fixed .. "), and the fix was taken: " .. action.title .. "\n")
vim.cmd("qall!")
