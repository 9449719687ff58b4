package lang

// Format gives the canonical text of a file.
func Format(f *File) string { return f.Source.Text }
