package weight

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"add-ticket":   addTicket,
	"drop-ticket":  dropTicket,
	"count-ticket": countTicket,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"assumed-weight": session.Factors("weight"),
	"ticket":         ticketField,
}
