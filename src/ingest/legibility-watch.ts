// Notices that data comes from a port but no reading can be found in it, and says the likely cause.
import type { PortFormat } from '../core/boil/entries.ts';
import type { LineReading } from '../core/boil/line-reading.ts';
import { temperatureCelsius } from '../core/boil/probe-value.ts';
import { isPrintable } from './formats/value.ts';
import { readLine } from './read-line.ts';

/** A board that starts prints its boot text for up to 3 s; a wrong baud rate is to be said within 5 s. */
const patienceMs = 4000;
/** Fewer bytes than this say nothing: half a line may be left over from before a pause. */
const fewestBytes = 16;

/** `reason` is what readLine said of the last line; null when no line ended at all. */
export type Illegible = { kind: 'wrong-baud' } | { kind: 'no-readings'; reason: string | null };

/** One watch serves one opening of a port. Times are in ms. */
export class LegibilityWatch {
  #format: PortFormat | undefined;
  #since: number | null = null;
  #bytes = 0;
  #printable = 0;
  #said = false;
  #reason: string | null = null;

  constructor(format: PortFormat | undefined) {
    this.#format = format;
  }

  /** Takes bytes and the lines that they completed; gives what is wrong once, until readings come again. */
  take(bytes: Uint8Array, lines: string[], now: number): Illegible | null {
    if (lines.some((line) => this.#hasReadings(line))) {
      this.#startOver();
      return null;
    }
    this.#since ??= now;
    this.#bytes += bytes.length;
    for (const byte of bytes)
      if (isPrintable(byte) || byte === 0x0a || byte === 0x0d || byte === 0x09) this.#printable += 1;
    if (this.#said || now - this.#since < patienceMs || this.#bytes < fewestBytes) return null;
    this.#said = true;
    // Random bytes are printable two times in five; plain text nearly always.
    const isText = this.#printable >= 0.9 * this.#bytes;
    return isText ? { kind: 'no-readings', reason: this.#reason } : { kind: 'wrong-baud' };
  }

  #hasReadings(line: string): boolean {
    const { readings, rejected } = readLine(line, this.#format);
    this.#reason = rejected[0] ?? (readings.length > 0 ? 'out of range' : null);
    return readings.some(canBeMeant);
  }

  #startOver(): void {
    this.#said = false;
    this.#since = null;
    this.#bytes = 0;
    this.#printable = 0;
  }
}

/** A number without a unit may be ohms or millivolts, so any will do; a temperature must be one. */
function canBeMeant(reading: LineReading): boolean {
  return reading.unit === null || temperatureCelsius(reading) !== 'implausible';
}
