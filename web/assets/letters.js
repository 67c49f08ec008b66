// Names that somebody gave: a file, a folder, a quote.

const TURNS = /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;
const FROM_RIGHT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/**
 * named is a name to be put into a sentence: it turns the direction of nothing else there.
 * @param {string} name
 */
export function named(name) {
  const plain = name.replace(TURNS, "");
  return FROM_RIGHT.test(plain) ? `\u2068${plain}\u2069` : plain;
}
