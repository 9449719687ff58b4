-- Tundish for Neovim 0.7 and later, without plugins.
vim.api.nvim_create_autocmd({ "BufRead", "BufNewFile" }, {
  pattern = "*.plant",
  callback = function() vim.bo.filetype = "plant" end,
})

vim.api.nvim_create_autocmd("FileType", {
  pattern = "plant",
  callback = function(args)
    vim.bo[args.buf].commentstring = "# %s"
    vim.bo[args.buf].shiftwidth = 2
    vim.bo[args.buf].expandtab = true
    local client = vim.lsp.start_client({
      name = "tundish",
      cmd = { vim.env.TUNDISH or "tundish", "serve" },
      root_dir = vim.fn.fnamemodify(vim.api.nvim_buf_get_name(args.buf), ":p:h"),
    })
    if client then vim.lsp.buf_attach_client(args.buf, client) end
  end,
})

return {}
