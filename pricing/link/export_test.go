package link

// Forged are links that no page of ours writes, for the seeds of the fuzz test.
var Forged = forged

// NeedIDs are the needs by their place in a link.
var NeedIDs = needIDs
