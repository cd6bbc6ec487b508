// A one-wire temperature sensor for tests: it hears the line's edges to the cycle, answers as its data sheet says, and notes what breaks the bus's times.

/** The line's end at the sensor; times in microseconds. */
export interface Pin {
  micros(): number;
  after(micros: number, todo: () => void): void;
  set(high: boolean): void;
}

/** CRC of the bus, bit by bit after its shift register (application note 27 of the bus's maker): not the sketch's own code. */
export function busCrc(bytes: number[]): number {
  let register = 0;
  for (const byte of bytes)
    for (let bit = 0; bit < 8; bit++) {
      const mix = ((byte >> bit) ^ register) & 1;
      register = (register >> 1) ^ (mix ? 0b1000_1100 : 0);
    }
  return register;
}

/** After a loss of supply: 85 °C, and the alarm bytes from the lasting memory (0x4B, 0x46 when new). */
const AT_POWER_ON = [0x50, 0x05, 0x4b, 0x46, 0x7f, 0xff, 0x0c, 0x10];
const MEASURING_US = 750_000;
const skipRom = 0xcc;
const measure = 0x44;
const readScratchpad = 0xbe;
const writeScratchpad = 0x4e;

export class OneWireSensor {
  celsius: number;
  /** Wires off: it neither hears nor answers. */
  unplugged = false;
  /** Bits of the next bytes read that a long lead turns over, one number a reading. */
  spoilt: number[] = [];
  /** What the board did that the bus does not allow. */
  readonly violations: string[] = [];
  #shorted = false;
  #scratchpad = [...AT_POWER_ON];
  #power = 0;
  #pin!: Pin;
  #fellAt = 0;
  #roseAt = -1;
  #masterLow = false;
  #hold = 0;
  #heard: number[] = [];
  #sending: number[] = [];
  #commands: number[] = [];

  constructor(celsius: number) {
    this.celsius = celsius;
  }

  plugInto(pin: Pin): void {
    this.#pin = pin;
    this.#masterLow = false;
    this.#roseAt = -1;
    this.#forget();
    this.#level();
  }

  /** The data wire touches ground. */
  set shorted(is: boolean) {
    this.#shorted = is;
    this.#level();
  }

  /** The supply goes away for a moment, in the middle of whatever it did. */
  losePower(): void {
    this.#scratchpad = [...AT_POWER_ON];
    this.#power += 1;
    this.#forget();
  }

  masterPulls(low: boolean): void {
    this.#masterLow = low;
    this.#level();
    if (this.unplugged || this.#shorted) return;
    const now = this.#pin.micros();
    if (low) this.#fell(now);
    else this.#rose(now);
  }

  #fell(now: number): void {
    if (this.#roseAt >= 0 && now - this.#roseAt < 1) this.violations.push('under 1 µs between two slots');
    if (this.#roseAt >= 0 && now - this.#fellAt < 60) this.violations.push('a slot under 60 µs');
    this.#fellAt = now;
    if (this.#sending.length > 0) {
      // A bit is promised for 15 µs after the edge and no longer.
      if (this.#sending.shift() === 0) this.#holdLow(15);
      return;
    }
    // It looks 30 µs after the edge, in the middle of the 15 to 60 µs that it is allowed.
    this.#pin.after(30, () => this.#hearBit(this.#masterLow ? 0 : 1));
  }

  #rose(now: number): void {
    const low = now - this.#fellAt;
    this.#roseAt = now;
    if (low < 1) this.violations.push(`low for ${low.toFixed(1)} µs, under 1 µs`);
    else if (low >= 480 && low <= 960) {
      this.#forget();
      this.#pin.after(30, () => this.#holdLow(120));
    } else if (low > 120 || (low > 15 && low < 60)) this.violations.push(`low for ${low.toFixed(1)} µs`);
  }

  #hearBit(bit: number): void {
    this.#heard.push(bit);
    if (this.#heard.length < 8) return;
    const byte = this.#heard.reduce((sum, one, place) => sum + (one << place), 0);
    this.#heard = [];
    this.#commands.push(byte);
    this.#obey();
  }

  #obey(): void {
    const [rom, command, ...data] = this.#commands;
    if (rom !== skipRom) this.violations.push(`ROM command ${rom}`);
    if (command === measure) this.#measure();
    if (command === readScratchpad && data.length === 0) this.#send([...this.#scratchpad, busCrc(this.#scratchpad)]);
    if (command === writeScratchpad && data.length === 3) this.#scratchpad.splice(2, 3, ...data);
  }

  #measure(): void {
    const power = this.#power;
    const celsius = this.celsius;
    this.#pin.after(MEASURING_US, () => {
      if (power !== this.#power) return;
      const sixteenths = Math.round(celsius * 16) & 0xffff;
      this.#scratchpad.splice(0, 2, sixteenths & 0xff, sixteenths >> 8);
    });
  }

  #send(bytes: number[]): void {
    const turned = this.spoilt.shift();
    if (turned !== undefined) bytes[0]! ^= turned;
    this.#sending = bytes.flatMap((byte) => Array.from({ length: 8 }, (_, bit) => (byte >> bit) & 1));
  }

  #holdLow(micros: number): void {
    this.#hold += 1;
    this.#level();
    this.#pin.after(micros, () => {
      this.#hold = Math.max(0, this.#hold - 1);
      this.#level();
    });
  }

  #forget(): void {
    this.#heard = [];
    this.#sending = [];
    this.#commands = [];
    this.#hold = 0;
  }

  #level(): void {
    const pulled = !this.unplugged && this.#hold > 0;
    this.#pin.set(!this.#masterLow && !pulled && !this.#shorted);
  }
}
