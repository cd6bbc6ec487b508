// The pure parts of the sketch: what the bytes of a sensor mean, and the checksum. No pin, no clock, no library.
#ifndef DECODE_H
#define DECODE_H

#include <stdbool.h>
#include <stdint.h>

enum state { MEASURED, OPEN, FAULT };

// `sixteenths` are sixteenths of a degree Celsius; they mean something only when the state is MEASURED.
struct reading {
  enum state state;
  int16_t sixteenths;
};

static inline struct reading broken(enum state state) {
  const struct reading reading = {state, 0};
  return reading;
}

// CRC-8 of the one-wire bus: polynomial x^8 + x^5 + x^4 + 1, lowest bit first, begins with 0.
// Over data and their own CRC together it gives 0.
static inline uint8_t crc8(uint8_t crc, uint8_t byte) {
  crc ^= byte;
  for (uint8_t bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >> 1) ^ 0x8C : crc >> 1;
  return crc;
}

// 32 bits of a type-K converter chip:
//   31..18 tip, signed, quarter degrees    17 always 0    16 any fault
//   15..4  cold junction                    3 always 0    2 short to the supply  1 short to ground  0 open
static inline struct reading decode_converter(uint32_t bits) {
  // A chip that is not there, or has no supply, reads as all zeros or all ones: neither is a temperature.
  if (bits == 0 || bits & 0x00020008) return broken(FAULT);
  if (bits & 1) return broken(OPEN);
  if (bits & 0x00010006) return broken(FAULT);
  const int16_t quarters = (int16_t)(bits >> 16) >> 2;  // avr-gcc and every common compiler keep the sign
  const struct reading reading = {MEASURED, quarters * 4};
  return reading;
}

// What the sketch writes into the two alarm bytes of a one-wire sensor, and never into its lasting memory.
// A sensor that lost its supply has loaded the lasting ones again: so the mark is gone, and its 85 is no temperature.
#define MARK_HIGH 0x55
#define MARK_LOW 0x2A

static inline bool has_mark(const uint8_t scratchpad[9]) {
  return scratchpad[2] == MARK_HIGH && scratchpad[3] == MARK_LOW;
}

// The nine bytes of a one-wire sensor: 0, 1 the temperature in sixteenths, low byte first; 2, 3 the alarm bytes;
// 4 the resolution; 5..7 reserved; 8 the CRC of the rest.
static inline struct reading decode_one_wire(const uint8_t scratchpad[9]) {
  uint8_t crc = 0;
  bool all_zero = true;  // a bus that is held low: its CRC would be right
  for (uint8_t i = 0; i < 9; i++) {
    crc = crc8(crc, scratchpad[i]);
    all_zero = all_zero && scratchpad[i] == 0;
  }
  if (crc != 0 || all_zero || !has_mark(scratchpad)) return broken(FAULT);
  const struct reading reading = {MEASURED, (int16_t)((uint16_t)scratchpad[1] << 8 | scratchpad[0])};
  return reading;
}

// Writes `98.25C`, `98.0625C`, `-0.5C`, `open` or `fault` and a zero byte; `text` has room for 12 bytes.
static inline void write_reading(char *text, struct reading reading) {
  if (reading.state != MEASURED) {
    for (const char *word = reading.state == OPEN ? "open" : "fault"; *word;) *text++ = *word++;
    *text = 0;
    return;
  }
  int16_t rest = reading.sixteenths;
  if (rest < 0) *text++ = '-';
  const uint16_t size = rest < 0 ? -(uint16_t)rest : (uint16_t)rest;
  uint16_t whole = size / 16;
  uint16_t ten_thousandths = size % 16 * 625;
  char digits[5];
  uint8_t count = 0;
  do digits[count++] = '0' + whole % 10;
  while (whole /= 10);
  while (count) *text++ = digits[--count];
  *text++ = '.';
  // At least one place, no zeros after that: 98.0, 98.25, 98.0625.
  do {
    *text++ = '0' + ten_thousandths / 1000;
    ten_thousandths = ten_thousandths % 1000 * 10;
  } while (ten_thousandths);
  *text++ = 'C';
  *text = 0;
}

#endif
