package equipment

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"carry":       carry,
	"carry-usual": carryUsual,
	"own-add":     addOwn,
	"own-drop":    dropOwn,
	"stow":        stow,
	"take-out":    takeOut,
	"suggest":     suggest,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{"own-item": ownItemField}
