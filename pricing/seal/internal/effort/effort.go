// Package effort says how much work it takes to try a passphrase.
package effort

// Cost is what scrypt is asked for: 1<<LogN blocks of Blocks*128 bytes, gone through
// Rounds times.
type Cost struct{ LogN, Blocks, Rounds byte }

// Shipped takes 32 MiB of memory, three times over: about a second in a page, and at
// that price for each guess.
var Shipped = Cost{LogN: 15, Blocks: 8, Rounds: 3}

// Sealing is what a file is sealed with. Only tests of other things change it.
var Sealing = Shipped
