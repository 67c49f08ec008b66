package session

// Saved is a quote kept in the browser.
type Saved struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Line string `json:"line"`
	When string `json:"when"`
	Here bool   `json:"here"` // the one being worked on

	Number string `json:"number,omitempty"` // of a signed quote
	Rev    int    `json:"rev,omitempty"`    // of a signed quote
}

// Copies is what the page knows of copies outside the browser, and of how safe what is
// saved in it is.
type Copies struct {
	When    string `json:"when,omitempty"`    // of the last copy; empty: none was made here
	Changed int    `json:"changed,omitempty"` // saved quotes that changed since
	Able    bool   `json:"able,omitempty"`    // the browser lets the page write into a folder that was chosen
	Folder  string `json:"folder,omitempty"`  // its name, when every change goes there too
	Waits   bool   `json:"waits,omitempty"`   // the browser wants to ask again before anything goes there
	Lasting bool   `json:"lasting,omitempty"` // the browser says that it clears nothing by itself
	Sealed  bool   `json:"sealed,omitempty"`  // quotes are saved behind a passphrase
	Spoiled bool   `json:"spoiled,omitempty"` // what stands in their place was never sealed here
}

// Moment is an earlier or a later state of the quote in work.
type Moment struct {
	N    int    `json:"n"`
	Said string `json:"said"`
	When string `json:"when"`
	Here bool   `json:"here"`
}
