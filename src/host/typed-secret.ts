// A secret that may have to be typed from one screen into another: 128 random bits in as few keys as that takes without capitals.
import { randomBytes } from 'node:crypto';

const BITS = 128;
/** Digits and small letters without i, l, o and u (Crockford's base 32, memory): what is easily misread is read as what it looks like. */
const SIGNS = '0123456789abcdefghjkmnpqrstvwxyz';
const LENGTH = Math.ceil(BITS / Math.log2(SIGNS.length));

/** A new one, of 26 signs. */
export function newTypedSecret(): string {
  let rest = BigInt(`0x${randomBytes(BITS / 8).toString('hex')}`);
  let text = '';
  for (let place = 0; place < LENGTH; place += 1) {
    text = `${SIGNS[Number(rest % 32n)]}${text}`;
    rest /= 32n;
  }
  return text;
}

/** What somebody typed, as it was meant: capitals, gaps and look-alikes do not count. */
export function asMeant(typed: string): string {
  return typed.toLowerCase().replace(/[\s-]/g, '').replace(/o/g, '0').replace(/[il]/g, '1');
}
