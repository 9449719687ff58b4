hook global BufCreate .*\.plant %{
    set-option buffer filetype plant
    set-option buffer indentwidth 2
    set-option buffer comment_line '#'
}

# kakoune-lsp 18 and later reads its servers from this option; earlier ones have no
# such option and read kak-lsp.toml.
hook -group tundish global BufSetOption filetype=plant %{
    try %{
        set-option buffer lsp_servers %{
            [tundish]
            root_globs = ["project.plant", ".git"]
            command = "tundish"
            args = ["serve"]
        }
    }
}
