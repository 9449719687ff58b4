-- Tundish for Neovim 0.7 and later, without plugins.
vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
  pattern = "*.plant",
  callback = function() vim.bo.filetype = "plant" end,
})

local started = {} -- client of each folder, for Neovim 0.7, which does not keep them itself

vim.api.nvim_create_autocmd("FileType", {
  pattern = "plant",
  callback = function(args)
    vim.bo[args.buf].commentstring = "# %s"
    vim.bo[args.buf].shiftwidth = 2
    vim.bo[args.buf].expandtab = true
    -- The folder of the project file, else that of the file: one server for all
    -- files of a folder, so that it sees what is not saved yet.
    local file = vim.api.nvim_buf_get_name(args.buf)
    local project = vim.fn.findfile("project.plant", vim.fn.fnamemodify(file, ":p:h") .. ";")
    local root = vim.fn.fnamemodify(project ~= "" and project or file, ":p:h")
    local config = { name = "tundish", cmd = { vim.env.TUNDISH or "tundish", "serve" }, root_dir = root }
    if vim.lsp.start then
      vim.lsp.start(config, { bufnr = args.buf })
      return
    end
    if not started[root] or not vim.lsp.get_client_by_id(started[root]) then
      started[root] = vim.lsp.start_client(config)
    end
    if started[root] then vim.lsp.buf_attach_client(args.buf, started[root]) end
  end,
})

-- :TundishSheet shows the calculation sheet, renewed while you type. Neovim opens
-- no pages for a server, so the address is printed.
vim.api.nvim_create_user_command("TundishSheet", function()
  local params = { command = "tundish.sheet", arguments = { vim.uri_from_bufnr(0) } }
  vim.lsp.buf_request(0, "workspace/executeCommand", params, function(err)
    if err then vim.notify(err.message, vim.log.levels.ERROR) end
  end)
end, {})

return {}
