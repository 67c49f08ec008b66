package space

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"stow":     stow,
	"take-out": takeOut,
	"suggest":  suggest,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"own":           ownField,
	"assumed-space": session.Factors("space"),
}
