// Puts back what the packer leaves out of the core because it can be counted up:
// the numbers of the functions in the table, and in each call the place to come
// back to, which is the function's own number with the place within it. The
// packer, web/pack/strip, says more and checks that all of it comes back.

const TABLE = 9;
const CODE = 10;
const FIRST = 0x1000; // number of the first function
const FILLER = 0x9d;

export function unfold(module) {
  let at = 8;
  const number = () => {
    let n = 0;
    for (let shift = 0; ; shift += 7) {
      const b = module[at++];
      n |= (b & 127) << shift;
      if (b < 128) return n;
    }
  };
  const put = (n) => {
    for (; n > 127; n >>= 7) module[at++] = (n & 127) | 128;
    module[at++] = n;
  };

  const table = () => {
    at += 3; // one segment, of the usual kind, whose place is a constant
    number();
    at++;
    let count = number();
    for (let n = number(); --count; ) put(++n);
  };

  // A call says i64.const, five bytes, i64.store. Where they were left out four of
  // the five are a filler, and the fifth is how far on the place is.
  const places = (own, end) => {
    let place = 0;
    for (; (at = module.indexOf(0x42, at)) >= 0 && at < end; ) {
      at++;
      if (module[at] !== FILLER || module[at + 1] !== FILLER || module[at + 2] !== FILLER || module[at + 3] !== FILLER || module[at + 4] > 127 || module[at + 5] !== 0x37 || module[at + 6] !== 3) continue;
      place += module[at + 4];
      put(own * 65536 + place);
    }
    at = end;
  };

  while (at < module.length) {
    const kind = module[at++];
    const end = number() + at;
    if (kind === TABLE) table();
    else if (kind === CODE) for (let own = FIRST, count = number(); count--; own++) places(own, number() + at);
    at = end;
  }
  return module;
}
