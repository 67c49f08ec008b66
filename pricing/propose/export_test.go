package propose

import "strings"

// String is all of an outcome but the weight, a sentence each.
func (o Outcome) String() string {
	text := o.Risk
	if o.Price != "" {
		text += "Total " + o.Price + ". "
	}
	for _, s := range o.Spare {
		text += s.Label + ": " + s.Words + ". "
	}
	if !o.Date.IsZero() {
		text += "Delivery " + o.Date.Long() + ", " + o.Later + ". "
	}
	return strings.TrimSpace(text + o.Exchange)
}
