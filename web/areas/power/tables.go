package power

import "boxwright/web/session"

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"assumed-power": session.Factors("power"),
	"wiring":        wiringField,
}
