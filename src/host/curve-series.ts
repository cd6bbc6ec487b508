// One pan's row of buckets in compact arrays that grow; only buckets that hold a reading take room.

export type Column = 'low' | 'high' | 'water' | 'finish' | 'scorch';
export const COLUMNS: readonly Column[] = ['low', 'high', 'water', 'finish', 'scorch'];

const FIRST_SIZE = 1024;

/** What one reading says, °C; null is not known. */
export type Sample = Record<Column, number | null>;

/** In here NaN stands for "not known"; `at` turns it into null. */
export class CurveSeries {
  #numbers = new Uint32Array(FIRST_SIZE);
  #columns: Record<Column, Float32Array> = {
    low: new Float32Array(FIRST_SIZE),
    high: new Float32Array(FIRST_SIZE),
    water: new Float32Array(FIRST_SIZE),
    finish: new Float32Array(FIRST_SIZE),
    scorch: new Float32Array(FIRST_SIZE),
  };
  #length = 0;

  get length(): number {
    return this.#length;
  }

  /** The number of the bucket that stands in this row. */
  numberAt(row: number): number {
    return this.#numbers[row] ?? 0;
  }

  /** °C, to a thousandth: single precision knows no more. */
  at(name: Column, row: number): number | null {
    const value = this.#columns[name][row] ?? Number.NaN;
    return Number.isNaN(value) ? null : Math.round(value * 1000) / 1000;
  }

  /** The first row whose bucket has this number or a greater one. */
  rowOf(number: number): number {
    let low = 0;
    let high = this.#length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.numberAt(middle) < number) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Adds a sample to its bucket; a bucket before the last one is known already and left as it is. */
  add(number: number, sample: Sample): void {
    const last = this.#length - 1;
    if (last >= 0 && number < this.numberAt(last)) return;
    const row = last >= 0 && number === this.numberAt(last) ? last : this.#newRow(number);
    const { low, high } = this.#columns;
    low[row] = Math.min(this.at('low', row) ?? Number.POSITIVE_INFINITY, sample.low ?? Number.NaN);
    high[row] = Math.max(this.at('high', row) ?? Number.NEGATIVE_INFINITY, sample.high ?? Number.NaN);
    for (const name of ['water', 'finish', 'scorch'] as const) this.#columns[name][row] = sample[name] ?? Number.NaN;
  }

  #newRow(number: number): number {
    const row = this.#length;
    if (row === this.#numbers.length) this.#grow(row * 2);
    this.#numbers[row] = number;
    for (const name of COLUMNS) this.#columns[name][row] = Number.NaN;
    this.#length = row + 1;
    return row;
  }

  #grow(size: number): void {
    const numbers = new Uint32Array(size);
    numbers.set(this.#numbers);
    this.#numbers = numbers;
    for (const name of COLUMNS) {
      const larger = new Float32Array(size);
      larger.set(this.#columns[name]);
      this.#columns[name] = larger;
    }
  }
}
