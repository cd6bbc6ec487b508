// What was seen of each pan at even moments of a boil, in compact arrays that grow: for the strip, and for what was known when.
import type { StrengthSeen } from '../../core/tuning/truth.ts';
import type { PanReading } from '../../core/pan/reading.ts';

/** A look each so often, ms: a pan's readings are gathered into blocks of this length. */
export const LOOK_MS = 5000;

const COLUMNS = ['celsius', 'brix', 'water', 'finish', 'evaporation', 'in', 'inLow', 'inHigh'] as const;
export type LookColumn = (typeof COLUMNS)[number];

const FIRST_SIZE = 1024;

/** In here NaN stands for "not known"; `at` turns it into null. */
export class Looks {
  readonly #pans = new Map<string, Record<LookColumn, Float32Array>>();
  /** One more than the number of the last look. */
  #count = 0;

  get pans(): string[] {
    return [...this.#pans.keys()];
  }

  get count(): number {
    return this.#count;
  }

  /** At a whole multiple of LOOK_MS, in order; `finishC` is the temperature of the pan's finish, °C. */
  take(t: number, readings: readonly PanReading[], finishC: (pan: string) => number | null): void {
    const number = Math.round(t / LOOK_MS);
    this.#count = number + 1;
    for (const reading of readings) {
      const columns = this.#columnsOf(reading.pan, number);
      const put = (name: LookColumn, value: number | null): void => void (columns[name][number] = value ?? Number.NaN);
      put('celsius', reading.temperature_c);
      put('brix', reading.brix);
      put('water', reading.water_c);
      put('finish', finishC(reading.pan));
      put('evaporation', reading.evaporation_l_per_h);
      put('in', reading.finish_in_s);
      put('inLow', reading.finish_low_s);
      put('inHigh', reading.finish_high_s);
    }
  }

  /** Single precision knows seven digits; what is shown has at most six. */
  at(pan: string, name: LookColumn, number: number): number | null {
    const value = number < this.#count ? (this.#pans.get(pan)?.[name][number] ?? Number.NaN) : Number.NaN;
    return Number.isNaN(value) ? null : Math.round(value * 1000) / 1000;
  }

  /** Every strength that was known, by pan, in order of time. */
  strengths(): Map<string, StrengthSeen[]> {
    const seen = (pan: string): StrengthSeen[] =>
      Array.from({ length: this.#count }, (_, number) => number).flatMap((number) => {
        const brix = this.at(pan, 'brix', number);
        return brix === null ? [] : [{ t: number * LOOK_MS, brix }];
      });
    return new Map(this.pans.map((pan) => [pan, seen(pan)]));
  }

  #columnsOf(pan: string, number: number): Record<LookColumn, Float32Array> {
    let columns = this.#pans.get(pan);
    const size = columns?.celsius.length ?? 0;
    if (columns === undefined || number >= size) {
      columns = enlarged(columns, Math.max(FIRST_SIZE, 2 ** Math.ceil(Math.log2(number + 1))));
      this.#pans.set(pan, columns);
    }
    return columns;
  }
}

function enlarged(
  columns: Record<LookColumn, Float32Array> | undefined,
  size: number,
): Record<LookColumn, Float32Array> {
  const pairs = COLUMNS.map((name) => {
    const larger = new Float32Array(size).fill(Number.NaN);
    if (columns !== undefined) larger.set(columns[name]);
    return [name, larger] as const;
  });
  return Object.fromEntries(pairs) as Record<LookColumn, Float32Array>;
}
