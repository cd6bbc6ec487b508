// The pure parts of the sketch against published examples: they are compiled for the controller and run there.
import { expect, test } from 'vitest';
import { compile, hasCompiler } from './compile.ts';
import { SimulatedBoard } from './simulated-board.ts';

const bytes = (values: number[]): string => values.map((value) => `0x${value.toString(16)}`).join(', ');

/** What a program says whose `main` ends with a line feed. */
function saidBy(body: string): string {
  const program = compile(`
    #define F_CPU 16000000UL
    #include <avr/io.h>
    #include "decode.h"
    static void say(const char *text) {
      for (; *text; text++) { while (!(UCSR0A & _BV(UDRE0))); UDR0 = *text; }
    }
    int main(void) {
      UBRR0 = F_CPU / 16 / 9600 - 1;
      UCSR0B = _BV(TXEN0);
      char text[12];
      (void)text;
      ${body}
      say("\\n");
      for (;;);
    }`);
  return new SimulatedBoard(program).lines(1)[0]!.trim();
}

const decoded = (expressions: string[]): string[] =>
  saidBy(expressions.map((one) => `write_reading(text, ${one}); say(text); say(" ");`).join('\n')).split(' ');

test.runIf(hasCompiler)('the CRC is that of the example of application note 27 of the bus', () => {
  // "Understanding and Using Cyclic Redundancy Checks with 1-Wire and iButton Products", example 2:
  // ROM 02 1C B8 01 00 00 00, CRC A2 (read in copies of its text and in a public test that cites it).
  const rom = bytes([0x02, 0x1c, 0xb8, 0x01, 0x00, 0x00, 0x00, 0xa2]);
  const sum = (count: number): string => `
    { const uint8_t rom[] = {${rom}}; uint8_t crc = 0;
      for (uint8_t i = 0; i < ${count}; i++) crc = crc8(crc, rom[i]);
      say(crc == ${count === 7 ? '0xA2' : '0'} ? "same " : "other "); }`;
  expect(saidBy(sum(7) + sum(8))).toBe('same same');
});

test.runIf(hasCompiler)('the words of a converter chip are those of its data sheet', () => {
  // Data sheet of the 14-bit type-K converter chip, table 4 (bits 31 to 18); with table 5's 25 °C as cold junction.
  const table: [string, string][] = [
    ['01100100000000', '1600.0C'],
    ['00111110100000', '1000.0C'],
    ['00000110010011', '100.75C'],
    ['00000001100100', '25.0C'],
    ['00000000000000', '0.0C'],
    ['11111111111111', '-0.25C'],
    ['11111111111100', '-1.0C'],
    ['11110000011000', '-250.0C'],
  ];
  const word = (tip: string, low = '0001100100000000') => `decode_converter(0b${tip}00${low}UL)`;
  expect(decoded(table.map(([bits]) => word(bits)))).toEqual(table.map(([, text]) => text));
  // Table 3: D0 open, D1 to ground, D2 to the supply, D16 any of them; D17 and D3 always 0.
  const faults = ['0x10001', '0x10002', '0x10004', '0x10000', '0x20000', '0x8', '0', '0xFFFFFFFF'];
  expect(decoded(faults.map((bits) => `decode_converter(${bits === '0' ? '0' : `0x01900000UL | ${bits}UL`})`))).toEqual(
    ['open', ...Array<string>(7).fill('fault')],
  );
});

test.runIf(hasCompiler)('the bytes of a one-wire sensor are those of its data sheet', () => {
  // Data sheet of the 12-bit one-wire sensor, table 1.
  const table: [number, string][] = [
    [0x07d0, '125.0C'],
    [0x0550, '85.0C'],
    [0x0191, '25.0625C'],
    [0x00a2, '10.125C'],
    [0x0008, '0.5C'],
    [0x0000, '0.0C'],
    [0xfff8, '-0.5C'],
    [0xff5e, '-10.125C'],
    [0xfe6f, '-25.0625C'],
    [0xfc90, '-55.0C'],
  ];
  const read = (value: number): string => {
    const first = bytes([value & 0xff, value >> 8]);
    return `({ uint8_t b[9] = {${first}, MARK_HIGH, MARK_LOW, 0x7F, 0xFF, 0x0C, 0x10}, crc = 0;
      for (uint8_t i = 0; i < 8; i++) crc = crc8(crc, b[i]);
      b[8] = crc; decode_one_wire(b); })`;
  };
  expect(decoded(table.map(([value]) => read(value).replace('({', '__extension__ ({')))).toEqual(
    table.map(([, text]) => text),
  );
});

test.runIf(hasCompiler)(
  'a sensor that just got its supply gives no 85: nine bytes as one was seen to send them',
  () => {
    // 50 05 4B 46 7F FF 0C 10 with CRC 1C: the widely published power-on bytes, from memory; the CRC bears them out.
    const nine = bytes([0x50, 0x05, 0x4b, 0x46, 0x7f, 0xff, 0x0c, 0x10, 0x1c]);
    const set = `const uint8_t b[9] = {${nine}}; uint8_t crc = 0; for (uint8_t i = 0; i < 9; i++) crc = crc8(crc, b[i]);`;
    expect(saidBy(`${set} say(crc ? "spoilt " : "whole "); write_reading(text, decode_one_wire(b)); say(text);`)).toBe(
      'whole fault',
    );
  },
);
