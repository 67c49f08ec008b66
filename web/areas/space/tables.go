package space

import "boxwright/web/session"

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{"assumed-space": session.Factors("space")}
