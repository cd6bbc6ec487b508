// Reads the lines that need no set-up: `T1=101.25C T2=214.3F`, `pan2:99.5`.
import type { LineResult } from '../../core/boil/line-reading.ts';
import { Outcome } from './outcome.ts';
import { isPrintable, readValue } from './value.ts';

const tab = 0x09;
const blank = 0x20;
const comma = 0x2c;
const colon = 0x3a;
const semicolon = 0x3b;
const equals = 0x3d;

const isDigit = (code: number): boolean => code >= 0x30 && code <= 0x39;
const isBlank = (code: number): boolean => code === blank || code === tab;
const partsPieces = (code: number): boolean => isBlank(code) || code === comma || code === semicolon;

/** Readings of a line of name-and-value pairs parted by blanks, commas or semicolons. Never throws; linear in time. */
export function readPairs(line: string): LineResult {
  return new PairScan(line).result();
}

/**
 * A pair is settled only when the next piece is known, because that piece may belong to it: in `T1=12,5` the
 * comma is a decimal mark and 12 would be a wrong value, and in `T1=214 F` the unit stands apart.
 */
class PairScan {
  #line: string;
  #outcome = new Outcome();
  #nameFrom = -1;
  #nameTo = -1;
  #valueTo = -1;
  #readable = true;

  constructor(line: string) {
    this.#line = line;
  }

  result(): LineResult {
    const line = this.#line;
    let from = 0;
    let nameTo = -1;
    let readable = true;
    for (let at = 0; at <= line.length; at++) {
      const code = at === line.length ? blank : line.charCodeAt(at);
      if (partsPieces(code)) {
        if (at > from) this.#piece(from, nameTo, at, readable);
        from = at + 1;
        nameTo = -1;
        readable = true;
      } else if (nameTo < 0 && (code === equals || code === colon)) nameTo = at;
      else if (!isPrintable(code)) readable = false;
    }
    this.#settle();
    return this.#outcome.result();
  }

  #piece(from: number, nameTo: number, to: number, readable: boolean): void {
    if (nameTo > from) {
      this.#settle();
      this.#nameFrom = from;
      this.#nameTo = nameTo;
      this.#valueTo = to;
      this.#readable = readable;
    } else if (nameTo < 0 && this.#isDecimalPart(from)) this.#refusePending('decimal comma', to);
    else if (nameTo < 0 && this.#isUnitApart(from, to)) this.#settle(this.#line[from]);
    else {
      this.#settle();
      this.#outcome.reject(readable ? 'not a name with a value' : 'unreadable bytes', this.#line.slice(from, to));
    }
  }

  #isDecimalPart(from: number): boolean {
    const line = this.#line;
    return this.#valueTo === from - 1 && line.charCodeAt(from - 1) === comma && isDigit(line.charCodeAt(from));
  }

  #isUnitApart(from: number, to: number): boolean {
    const line = this.#line;
    if (this.#valueTo < 0 || to !== from + 1 || !/[cfk]/i.test(line[from]!)) return false;
    for (let at = this.#valueTo; at < from; at++) if (!isBlank(line.charCodeAt(at))) return false;
    return isDigit(line.charCodeAt(this.#valueTo - 1));
  }

  #settle(unitApart?: string): void {
    if (this.#valueTo < 0) return;
    const line = this.#line;
    const channel = line.slice(this.#nameFrom, this.#nameTo);
    if (!this.#readable) this.#refusePending('unreadable bytes', this.#valueTo);
    else if (unitApart === undefined) this.#addPending(channel, readValue(line, this.#nameTo + 1, this.#valueTo));
    else {
      const value = line.slice(this.#nameTo + 1, this.#valueTo) + unitApart;
      this.#addPending(channel, readValue(value, 0, value.length));
    }
    this.#valueTo = -1;
  }

  #addPending(channel: string, read: ReturnType<typeof readValue>): void {
    if (typeof read === 'string') this.#refusePending(read, this.#valueTo);
    else this.#outcome.readings.push({ channel, value: read.value, unit: read.unit });
  }

  #refusePending(reason: string, to: number): void {
    const line = this.#line;
    this.#outcome.refuse(reason, line.slice(this.#nameFrom, this.#nameTo), line.slice(this.#nameFrom, to));
    this.#valueTo = -1;
  }
}
