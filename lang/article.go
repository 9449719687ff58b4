package lang

// Article puts "a" or "an" before a word of the language, as it is spoken: "an
// air block", "a unit". The words begin with u only where it sounds like "you".
func Article(word string) string {
	if word != "" {
		switch word[0] {
		case 'a', 'e', 'i', 'o':
			return "an " + word
		}
	}
	return "a " + word
}
