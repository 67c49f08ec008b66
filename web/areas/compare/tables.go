package compare

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"pin":        pin,
	"unpin":      unpin,
	"swap":       swap,
	"add-rival":  addRival,
	"drop-rival": dropRival,
}

// fields are set by the id of their input.
var fields = map[string]session.Setter{
	"pin-link": pinLink,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"rival":  rivalField,
	"column": columnField,
}
