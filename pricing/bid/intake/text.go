package intake

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// fromText takes the lines out of running text: items by their numbers, letters or
// bullets, paragraphs, or a line each.
func fromText(text string) List {
	raw := strings.Split(text, "\n")
	repeated := pageLines(raw)
	var list List
	widest, marked, lines := 0, 0, 0
	for _, l := range raw {
		if l = strings.Join(strings.Fields(l), " "); l != "" {
			widest, lines = max(widest, utf8.RuneCountInString(l)), lines+1
			if no, _ := Mark(l); no != "" || bulleted(l) {
				marked++
			}
		}
	}
	wrapped := widest >= 60 && widest <= 130
	fresh := true // a blank line went before
	var bare []bareLine
	last := ""
	for i, l := range raw {
		trimmed := strings.Join(strings.Fields(l), " ")
		if trimmed == "" {
			fresh = true
			continue
		}
		if furniture(trimmed) || repeated[trimmed] || columnHeads(l) {
			list.Left++
			continue
		}
		no, rest := Mark(trimmed)
		bullet := bulleted(trimmed)
		if bullet {
			rest = strings.TrimSpace(strings.TrimLeft(trimmed, bullets))
		}
		n := len(list.Lines)
		if no == "" && !bullet && n > 0 && !fresh && continues(last, trimmed, wrapped, marked*2 > lines, widest) {
			list.Lines[n-1].Text += " " + trimmed
			last = trimmed
			continue
		}
		if rest == "" { // a number on a line of its own belongs to the next
			if i+1 < len(raw) {
				raw[i+1] = no + " " + raw[i+1]
			}
			continue
		}
		if no == "" && !bullet {
			ahead := i+1 < len(raw) && strings.TrimSpace(raw[i+1]) != ""
			bare = append(bare, bareLine{n, fresh && ahead})
		}
		list.Lines = append(list.Lines, Line{No: no, Text: rest})
		fresh, last = false, trimmed
	}
	titles(list.Lines, bare)
	heads(list.Lines)
	return list
}

// columnHeads reports whether a line is the headings of a table that stands in the text.
func columnHeads(l string) bool {
	cells := strings.Split(l, "\t")
	return len(cells) > 2 && !slices.ContainsFunc(cells, func(c string) bool { return roleOf(c) == other })
}

const bullets = "•●▪◦‣·*–—\u2010\u2022\u25cf\u25aa\uf0b7- "

// bulleted reports whether a line begins with a bullet or a dash and a space.
func bulleted(l string) bool {
	r, n := utf8.DecodeRuneInString(l)
	if !strings.ContainsRune(bullets, r) || r == ' ' {
		return false
	}
	return len(l) > n && (l[n] == ' ' || r != '-' && r != '*' && r != '–' && r != '—')
}

// continues reports whether a line goes on with the one before it.
func continues(last, line string, wrapped, marked bool, widest int) bool {
	end, _ := utf8.DecodeLastRuneInString(last)
	first, _ := utf8.DecodeRuneInString(line)
	if section(strings.Fields(line)) || capital(line) && !capital(last) {
		return false // a heading begins
	}
	if words := strings.Fields(last); slices.Contains(unfinished, words[len(words)-1]) {
		return true
	}
	switch {
	case strings.ContainsRune(".;:!?", end):
		return marked && !strings.ContainsRune(":", end) && wrapped && utf8.RuneCountInString(last)*10 >= widest*8 &&
			end != '.'
	case unicode.IsLower(first):
		return wrapped || marked || end == ','
	case marked && widest <= 130:
		return wrapped && utf8.RuneCountInString(last)*100 >= widest*85
	}
	return wrapped && utf8.RuneCountInString(last)*10 >= widest*8
}

// unfinished are words that end no line.
var unfinished = []string{"than", "of", "the", "a", "an", "and", "or", "at", "by", "from", "be", "shall", "to",
	"for", "with", "in", "on"}

// Mark takes the number or letter of an item off a line: "3.1.4", "12.", "c)", "(a)",
// "A.", "iv.", "2.3(a)", "Sec. 5.6". A number with a unit behind it, and a thousands comma, are none.
func Mark(l string) (no, rest string) {
	word, after, cut := strings.Cut(l, " ")
	if called[strings.ToLower(strings.TrimRight(word, "."))] && cut && !heading(l, false, false) {
		// "Sec. 5.6", "Item 12:"
		number, rest, cut := strings.Cut(strings.TrimSpace(after), " ")
		if cut && plainNumber(unlettered(strings.TrimRight(number, ".:"))) {
			return word + " " + strings.TrimRight(number, ".:"), strings.TrimSpace(strings.TrimLeft(rest, "-–: "))
		}
	}
	if base := unlettered(word); cut && base != word && strings.Contains(base, ".") && plainNumber(base) {
		return word, strings.TrimSpace(after) // "2.3(a)"
	}
	if k := strings.IndexByte(word, ','); k > 0 && plainNumber(word[:k]) && len(word) > k+1 && !digit(word[k+1]) {
		return word[:k], strings.TrimSpace(strings.Trim(l[k+1:], `"`)) // "12,Seats", a row of a table
	}
	if !cut {
		if strings.Count(word, ".") > 1 && plainNumber(strings.TrimRight(word, ".")) {
			return word, ""
		}
		return "", l
	}
	rest = strings.TrimSpace(after)
	core := strings.TrimLeft(word, "(")
	closed := strings.TrimRight(core, ".):")
	ended := len(closed) < len(core)
	switch {
	case closed == "" || len(closed) > 10:
		return "", l
	case plainNumber(closed) && (ended || strings.Contains(closed, ".") && strings.Count(closed, ".") > 1 ||
		sectionNumber(closed, rest)):
	case dotted(closed), mixed(closed):
	case ended && len(closed) == 1 && letter(closed[0]), ended && roman(closed) && !strings.HasSuffix(core, ":"):
	default:
		return "", l
	}
	if ended && strings.HasPrefix(word, "(") && !strings.Contains(core, ")") {
		return "", l
	}
	if strings.HasPrefix(word, "(") && plainNumber(closed) && counts(rest) {
		return "", l // "(2) 100 watt speakers"
	}
	if strings.HasPrefix(rest, "- ") {
		rest = rest[2:]
	}
	return strings.TrimRight(strings.TrimSuffix(word, ":"), "."), rest
}

// called are words before the number of an item.
var called = map[string]bool{"sec": true, "section": true, "art": true, "article": true, "par": true, "para": true,
	"paragraph": true, "item": true, "clause": true, "§": true}

// unlettered is a number without the letters and numbers in brackets behind it: "2.3" of "2.3(a)(ii)".
func unlettered(s string) string {
	for strings.HasSuffix(s, ")") {
		at := strings.LastIndexByte(s, '(')
		if at <= 0 || len(s)-at > 6 {
			break
		}
		s = s[:at]
	}
	return s
}

// sectionNumber reports whether a plain number is that of an item: what follows begins
// with a capital, and the number is no amount of it.
func sectionNumber(no, rest string) bool {
	if strings.Contains(no, ".") && strings.HasPrefix(no, "0") {
		return false
	}
	r, _ := utf8.DecodeRuneInString(rest)
	if !unicode.IsUpper(r) {
		return false
	}
	word, after, _ := strings.Cut(rest, " ")
	if len(word) == 1 && strings.Contains(no, ".") && after != "" {
		return true // "9.1 A bid bond": an article
	}
	return !unit(word) && (strings.Contains(no, ".") || strings.ToUpper(word) != word || len(word) > 4)
}

// counts reports whether what follows a number in brackets may be counted by it.
func counts(rest string) bool {
	r, _ := utf8.DecodeRuneInString(rest)
	return !unicode.IsUpper(r)
}

func unit(w string) bool {
	switch strings.ToLower(strings.Trim(w, ".,;")) {
	case "lb", "lbs", "in", "ft", "a", "amp", "amps", "w", "v", "kw", "gal", "btu", "psi", "usb", "led", "vac", "vdc",
		"ah", "kg", "mm", "m", "l", "mph":
		return true
	}
	return false
}

func digit(c byte) bool  { return c >= '0' && c <= '9' }
func letter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

func roman(s string) bool { return len(s) <= 5 && strings.Trim(strings.ToLower(s), "ivx") == "" }

// mixed reports whether a word is a number with letters for its last parts: "4.a",
// "3.1.iv".
func mixed(s string) bool {
	parts := strings.Split(s, ".")
	if len(parts) < 2 || len(parts[0]) > 3 || !plainNumber(parts[0]) {
		return false
	}
	lettered := false
	for _, p := range parts[1:] {
		switch {
		case p != "" && len(p) <= 3 && strings.Trim(p, "0123456789") == "":
		case len(p) == 1 && letter(p[0]), p != "" && roman(p):
			lettered = true
		default:
			return false
		}
	}
	return lettered
}

// dotted reports whether a word is a number such as "A.3", "B-12" or "SC-4.11".
func dotted(s string) bool {
	if len(s) > 3 && letter(s[0]) && letter(s[1]) && s[2] == '-' && strings.Contains(s[3:], ".") {
		s = s[1:]
	}
	if len(s) < 3 || !letter(s[0]) || s[1] != '.' && s[1] != '-' {
		return false
	}
	return strings.Trim(s[2:], "0123456789.-") == "" && digit(s[2])
}
