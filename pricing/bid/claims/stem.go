package claims

import "strings"

// stem is a word without its ending, so that "fold", "folds" and "folding" meet.
func stem(w string) string {
	if s, ok := spelling[w]; ok {
		w = s
	}
	switch {
	case len(w) > 4 && strings.HasSuffix(w, "ies"):
		w = w[:len(w)-3] + "y"
	case len(w) > 4 && (strings.HasSuffix(w, "ches") || strings.HasSuffix(w, "shes") || strings.HasSuffix(w, "sses") ||
		strings.HasSuffix(w, "xes")):
		w = w[:len(w)-2]
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us"):
		w = w[:len(w)-1]
	}
	for _, end := range []string{"ing", "ed"} {
		if cut, ok := strings.CutSuffix(w, end); ok && len(cut) >= 4 || ok && len(cut) == 3 &&
			strings.ContainsAny(cut[1:2], "aeiou") && !strings.ContainsAny(cut[2:], "aeiou") && end == "ed" {
			w = cut
			if n := len(w); n > 3 && w[n-1] == w[n-2] && !strings.ContainsAny(w[n-1:], "lsz") {
				w = w[:n-1]
			}
			break
		}
	}
	if len(w) > 4 {
		w = strings.TrimSuffix(w, "e")
	}
	if s, ok := spelling[w]; ok && s != w { // "body's"
		return strings.TrimSuffix(s, "e")
	}
	return w
}
