package catalogue

import (
	"boxwright/pricing/link"
	. "boxwright/web/page/markup"
)

// Elsewhere is a quote of another edition, which is kept as it is. What the page
// shows is what it would be with the edition in use.
type Elsewhere struct {
	Edition string // as a reader knows it, or the beginning of its hash
	As      *link.Frozen
}

// Draw is the strip that stands above every area while such a quote is open.
func (e *Elsewhere) Draw() Part {
	if e == nil {
		return nil
	}
	said := "It is kept as it is until you move it. What is shown here is what it would be with the edition in use; " +
		"nothing can be changed before."
	label := "Move it to the edition in use"
	if e.As != nil {
		said = "It is signed and stands as it was signed: total " + e.As.Total + ", delivery at even odds " +
			e.As.Even.Long() + ", stands until " + e.As.Until.Long() +
			". What is shown here is what a revision would come to with the edition in use."
		label = "Make a revision with the edition in use"
	}
	return part("elsewhere", "Made with another edition of the catalogue: "+e.Edition,
		para(said), pressed(press("move-here", "", label, "main", "move-here")))
}
