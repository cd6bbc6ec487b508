// The small 8-bit board in a simulator, cycle by cycle: its program, its pins with what hangs on them, and what it says.
import { AVRIOPort, AVRSPI, AVRTimer, AVRUSART, avrInstruction, CPU, PinState, portBConfig, portDConfig } from 'avr8js';
import { spiConfig, timer1Config, usart0Config } from 'avr8js';
import type { OneWireSensor, Pin } from './one-wire-sensor.ts';

const HERTZ = 16_000_000;
const SRAM_BYTES = 2048;
/** Reset flags of the controller (MCUSR), by cause; after its data sheet. */
const MCUSR = 0x54;
const CAUSES = { power: 1, key: 2, 'brown-out': 4, watchdog: 8 };
/** Where the chips' select pins and the sensors' data pins are: PB1, PB2 and PD4, PD5, as in the sketch. */
const SELECT_PINS = [1, 2];
const DATA_PINS = [4, 5];

/** What a converter chip answers, 32 bits; null for one that is not there. */
export type Converter = { bits: number | null };

export class SimulatedBoard {
  /** Every byte said since the beginning, as text; restarts do not clear it. */
  said = '';
  /** Called with each byte as it goes out. */
  onByte: (byte: number) => void = () => undefined;
  #program: Uint16Array;
  #converters: Converter[];
  #sensors: (OneWireSensor | null)[];
  #cpu!: CPU;

  constructor(program: Uint16Array, converters: Converter[] = [], sensors: (OneWireSensor | null)[] = []) {
    this.#program = program;
    this.#converters = converters;
    this.#sensors = sensors;
    this.restart('power');
  }

  /** The controller begins anew, in the middle of whatever it did; chips and sensors keep their supply. */
  restart(cause: keyof typeof CAUSES): void {
    const cpu = new CPU(this.#program, SRAM_BYTES);
    this.#cpu = cpu;
    cpu.data[MCUSR] = CAUSES[cause];
    new AVRTimer(cpu, timer1Config);
    const uart = new AVRUSART(cpu, usart0Config, HERTZ);
    uart.onByteTransmit = (byte) => {
      if (uart.baudRate !== 9615 && uart.baudRate !== 9600)
        throw new Error(`the board speaks at ${uart.baudRate} baud`);
      this.said += String.fromCharCode(byte);
      this.onByte(byte);
    };
    this.#wireConverters(cpu);
    this.#wireSensors(cpu);
  }

  /** Runs for so many simulated milliseconds. */
  run(milliseconds: number): void {
    const until = this.#cpu.cycles + (milliseconds * HERTZ) / 1000;
    const cpu = this.#cpu;
    const loop = new PollingLoop(cpu);
    while (cpu.cycles < until) {
      const from = cpu.pc;
      avrInstruction(cpu);
      // Only what has an appointed cycle can end a loop that changes nothing, so the cycles until then are left out.
      if (cpu.pc < from && loop.isUnchanged()) cpu.cycles = Math.max(cpu.cycles, Math.min(nextEvent(cpu), until));
      cpu.tick();
    }
  }

  /** Runs until it has ended so many more lines; gives them. */
  lines(count: number): string[] {
    const from = this.said.length;
    const limit = this.#cpu.cycles + (count + 2) * 1.5 * HERTZ;
    while (this.said.slice(from).split('\n').length <= count) {
      if (this.#cpu.cycles > limit) throw new Error(`it only said ${JSON.stringify(this.said.slice(from))}`);
      this.run(10);
    }
    return this.said.slice(from).split('\n').slice(0, count);
  }

  #wireConverters(cpu: CPU): void {
    const port = new AVRIOPort(cpu, portBConfig);
    const spi = new AVRSPI(cpu, spiConfig, HERTZ);
    let place = 0;
    // A chip lays its first bit out when it is selected, so each selection begins at the highest byte.
    port.addListener(() => (place = 0));
    spi.onByte = () => {
      const selected = SELECT_PINS.flatMap((pin, i) => (port.pinState(pin) === PinState.Low ? [i] : []));
      if (selected.length > 1) throw new Error('two chips are selected at once');
      const bits = selected.length === 1 ? (this.#converters[selected[0]!]?.bits ?? null) : null;
      const byte = bits === null ? 0xff : (bits >>> (24 - 8 * place)) & 0xff;
      place += 1;
      cpu.addClockEvent(() => spi.completeTransfer(byte), spi.transferCycles);
    };
  }

  #wireSensors(cpu: CPU): void {
    const port = new AVRIOPort(cpu, portDConfig);
    const edges = DATA_PINS.map((index, i) => {
      const pin: Pin = {
        micros: () => (cpu.cycles / HERTZ) * 1e6,
        after: (micros, todo) => void cpu.addClockEvent(todo, Math.round((micros * HERTZ) / 1e6)),
        set: (high) => port.setPin(index, high),
      };
      port.setPin(index, true);
      const sensor = this.#sensors[i];
      sensor?.plugInto(pin);
      let wasLow = false;
      return () => {
        const isLow = port.pinState(index) === PinState.Low;
        if (isLow !== wasLow) sensor?.masterPulls((wasLow = isLow));
      };
    });
    port.addListener(() => edges.forEach((look) => look()));
  }
}

/** The cycle for which the simulator's next event is appointed. */
function nextEvent(cpu: CPU): number {
  const { nextClockEvent } = cpu as unknown as { nextClockEvent: { cycles: number } | null };
  return nextClockEvent?.cycles ?? cpu.cycles;
}

/** Sees that the program came back to where it was with all its registers as they were. */
class PollingLoop {
  #cpu: CPU;
  #pc = -1;
  #registers = new Uint8Array(96);

  constructor(cpu: CPU) {
    this.#cpu = cpu;
  }

  isUnchanged(): boolean {
    const { data, pc } = this.#cpu;
    let same = pc === this.#pc && data[95] === this.#registers[95];
    for (let at = 0; same && at < 32; at++) same = data[at] === this.#registers[at];
    if (same) return true;
    this.#pc = pc;
    for (let at = 0; at < 32; at++) this.#registers[at] = data[at]!;
    this.#registers[95] = data[95]!;
    return false;
  }
}
