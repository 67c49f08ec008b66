package quote

import (
	"strings"

	"boxwright/config"
	"boxwright/web/page"
	. "boxwright/web/page/markup"
)

// What keeps saved quotes from being lost, and from being read by others.

// copies says when what is saved was last copied out of the browser, and lets it be copied.
func copies(p *Page) Part {
	c := p.Copies
	said := []Part{El("p", At("id", "copies-said"), copied(p))}
	if c.Waits {
		said = append(said, El("p", At("id", "copies-wait"), page.Mark(config.Warn),
			Text(" Nothing goes into the folder until you allow it again: the browser asks anew after it was closed. "),
			page.Action("copies-allow", "", "", "Allow it", Class("main"), At("id", "copies-allow"))))
	}
	folder := page.Action("copies-folder", "", "", "Copy every change to a folder…", At("id", "copies-folder"))
	if c.Folder != "" {
		folder = Many(page.Action("copies-folder", "", "", "Choose another folder…", At("id", "copies-folder")),
			page.Action("copies-stop", "", "", "Stop copying to it", Class("quiet"), At("id", "copies-stop")))
	}
	hint := "A copy holds every quote with its earlier states, the catalogue, your standing answers to bids, and " +
		"your sealed key and cost sheet. Keep it private."
	if c.Able {
		hint += " A folder gets a file for each quote, and keeps what you delete here."
	}
	return El("div", At("id", "copies"), El("h3", Text("Copies")), Many(said...),
		El("div", Class("row-tools"), If(c.Able, folder),
			page.Action("export-kept", "", "", "Save a copy of everything", At("id", "kept-export")),
			page.FileButton("f-import", "import", "Take in copies…", ".json,application/json", Flag("multiple", true))),
		El("details", Class("small soft"), At("id", "fold-copies"),
			El("summary", Text("What a copy holds, and how long this device keeps it")),
			El("p", Text(hint)), lasting(p)))
}

// copied says when the last copy was made and how many quotes changed since.
func copied(p *Page) Part {
	c := p.Copies
	changed := page.Count(c.Changed, "quote", "quotes") + " changed since."
	if c.Changed == 0 {
		changed = "Nothing changed since."
	}
	switch {
	case c.Folder != "" && c.When != "":
		return Many(Text("Every change also goes into the folder "), El("b", El("bdi", Text(c.Folder))),
			Text(". Last copy: "+c.When+". "+changed))
	case c.When != "":
		return Many(If(c.Changed > 0, page.Mark(config.Warn)), Text(" Last copy: "+c.When+". "+changed))
	case c.Changed > 0:
		return Many(page.Mark(config.Warn),
			Text(" No copy was made yet: "+page.Count(c.Changed, "quote is", "quotes are")+
				" saved on this device alone."))
	}
	return Text("No copy was made yet.")
}

// lasting says how far the browser can be relied on to keep what is saved.
func lasting(p *Page) Part {
	text := "This browser may clear what is saved: when it runs short of room, and in Safari after seven days without " +
		"a visit. Install the page from the browser's menu (on a phone: Add to Home Screen), and it is not cleared."
	if p.Copies.Lasting {
		text = "This browser clears nothing by itself: what is saved lasts until somebody clears it."
	}
	if strings.HasPrefix(p.Base, "file:") {
		text += " This page was opened from disk: it shares what it saves with every other HTML file opened from " +
			"disk in this browser. Sellers do best with the page on a host name of its own."
	}
	return El("p", Class("small soft"), At("id", "lasting"), Text(text))
}

// sealedQuotes asks for the passphrase of quotes that were sealed.
func sealedQuotes(p *Page) Part {
	if !p.Copies.Sealed {
		return nil
	}
	return El("div", At("id", "sealed-quotes"), El("p", El("b", Text("Quotes are sealed on this device. ")),
		Text("They come back into the list when you open them.")),
		page.Passphrase("unseal-pass", "Passphrase of the sealed quotes",
			"The one they were sealed with. Without it nobody can open them."),
		El("div", Class("row-tools"), page.Action("unseal-kept", "", "", "Open the sealed quotes", Class("main"),
			At("id", "unseal-kept"))))
}

// leaveNothing seals what is saved, or takes it away.
func leaveNothing(p *Page) Part {
	if !p.Kept && p.Unkept == "off" {
		return El("p", At("id", "keep-off-said"), Text("Nothing is saved on this device, because you chose so. "),
			page.Action("keep-on", "", "", "Save quotes on this device again", At("id", "keep-on")))
	}
	sealing := Many(El("h4", Text("Seal them")),
		El("p", Text("At the end of the day: all saved quotes are sealed with a passphrase, and the list is empty "+
			"until you open them again. The catalogue stays. Copies made before stay as they are.")),
		page.Passphrase("seal-pass", "Passphrase to seal the quotes with",
			"Four plain words that do not belong together are good. If you lose it, the quotes are lost."),
		El("div", Class("row-tools"), page.Action("seal-kept", "", "", "Seal all saved quotes", At("id", "seal-kept"))))
	aside := page.Action("sealed-aside", "", "", "Put it aside", At("id", "sealed-aside"))
	list := El("a", At("href", "#kept"), Text("list of all that is saved here"))
	switch {
	case p.Copies.Sealed:
		sealing = Many(El("p", Text("Open the sealed quotes first; then all can be sealed again.")),
			El("details", At("id", "fold-sealed-aside"), El("summary", Text("They cannot be opened…")),
				El("p", Text("Put aside, they stay sealed, and the "), list,
					Text(" hands them out. Then others can be sealed.")), aside))
	case p.Copies.Spoiled:
		sealing = El("div", At("id", "sealed-spoiled"), El("p", page.Mark(config.Warn),
			Text(" What stands in the place of sealed quotes was not sealed here, so no quote can be sealed. Put "+
				"aside, it stays as it is, and the "), list, Text(" hands it out.")), aside)
	}
	return El("details", At("id", "fold-leave"),
		page.Summary("h3", "On a computer that others use"), sealing,
		El("h4", Text("Keep nothing")),
		El("p", Text("Everything saved here is deleted: quotes, catalogue, standing answers, signing key, cost "+
			"sheet. From then on nothing is saved on this device; save a quote as a file before you close the page.")),
		El("details", At("id", "fold-keep-off"), El("summary", Text("Delete everything and keep nothing…")),
			page.Action("keep-off", "", "", "Delete it all for good", Class("quiet"), At("id", "keep-off"))))
}
