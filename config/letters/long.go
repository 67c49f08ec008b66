package letters

import (
	"fmt"
	"unicode/utf8"
)

// TooLong says of a text of more than so many bytes by how many letters it is too long.
func TooLong(text string, most int) string {
	cut := most
	for cut > 0 && !utf8.RuneStart(text[cut]) {
		cut--
	}
	over, word := utf8.RuneCountInString(text[cut:]), "letters"
	if over == 1 {
		word = "letter"
	}
	return fmt.Sprintf("is too long by %d %s; the most is %d plain letters", over, word, most)
}
