hook global BufCreate .*\.plant %{
    set-option buffer filetype plant
    set-option buffer indentwidth 2
    set-option buffer comment_line '#'
}
