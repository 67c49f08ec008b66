package catalogue

import "boxwright/web/session"

// acts are what the area can be asked to do, by the word in its markup.
var acts = map[string]session.Do{
	"tables-out":     tablesOut,
	"tables-in":      tablesIn,
	"save-catalogue": saveCatalogue,
	"set-beside":     setBeside,
	"drop-beside":    dropBeside,
	"lint":           lint,
	"stop-lint":      stopLint,
	"embed":          embed,
	"touch":          touch,
	"move-kept":      moveKept,
}

// deciding are the acts that need no draft to be at hand, since they decide which
// edition it is taken with.
var deciding = map[string]session.Do{
	"load-catalogue": loadCatalogue,
	"kept-catalogue": keptCatalogue,
	"demo-catalogue": demoCatalogue,
	"built-in":       builtIn,
	"use-beside":     useBeside,
	"sign-catalogue": signCatalogue,
	"move-here":      moveHere,
}

// families are fields by the part of their id before the point.
var families = map[string]session.SetterByName{
	"edition": editionField,
}
