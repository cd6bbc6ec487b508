// Reads type-K converter chips over SPI and one-wire sensors, and says one line a second at 9600 baud:
//   T1=98.25C T2=open D1=97.0625C D2=97.5C #12*4F
// For the common small 5 V board with an ATmega328P at 16 MHz. Plain C: needs avr-gcc and avr-libc, nothing else.
//   avr-gcc -mmcu=atmega328p -Os -Wall -o probe-lines.elf probe-lines.c
//   avr-objcopy -O ihex probe-lines.elf probe-lines.hex     (and load it as your board's papers say)
#define F_CPU 16000000UL  // Hz; the delays below count on it

#include <avr/io.h>
#include <util/delay.h>

#include "decode.h"

// --- What is wired where: change these lists only. Board pin 9 is PB1, 10 is PB2, 4 is PD4, 5 is PD5. ---
static const uint8_t CONVERTERS[] = {_BV(PB1), _BV(PB2)};  // select pins on port B, in the order T1, T2, …
static const uint8_t ONE_WIRE[] = {_BV(PD4), _BV(PD5)};    // data pins on port D, in the order D1, D2, …
// One sensor on each data pin: one that drops out never lends its name to another, and nobody has to be searched for.
#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

// --- The line: every byte goes through say(), so that the checksum covers all that was said since the last end. ---
static uint8_t line_crc = 0;

static void say(char byte) {
  while (!(UCSR0A & _BV(UDRE0)));
  UDR0 = byte;
  line_crc = crc8(line_crc, byte);
}

static void say_text(const char *text) {
  while (*text) say(*text++);
}

static void say_number(uint16_t number) {
  if (number >= 10) say_number(number / 10);
  say('0' + number % 10);
}

static void say_channel(char kind, uint8_t number, struct reading reading) {
  char text[12];
  write_reading(text, reading);
  say(kind);
  say_number(number);
  say('=');
  say_text(text);
  say(' ');
}

// `#12*4F`: the line's number, and in hex the CRC-8 of every byte before the star. It holds no `=` and no `:`, so a
// reader of pairs passes over it. After a start the number is 0, followed by why the board started, where it knows.
static void say_end(uint16_t count, char started_by) {
  say('#');
  say_number(count);
  if (started_by) say(started_by);
  const uint8_t crc = line_crc;
  say('*');
  say("0123456789ABCDEF"[crc >> 4]);
  say("0123456789ABCDEF"[crc & 15]);
  say('\n');
  line_crc = 0;
}

// --- Converter chips: 32 bits, highest first, at 1 MHz. ---
static void spi_begin(void) {
  for (uint8_t i = 0; i < COUNT(CONVERTERS); i++) {
    PORTB |= CONVERTERS[i];  // high before it becomes an output, so that no chip is selected by accident
    DDRB |= CONVERTERS[i];
  }
  PORTB |= _BV(PB4);  // pull-up on the data line: a chip that is not there reads as all ones
  DDRB |= _BV(PB2) | _BV(PB3) | _BV(PB5);  // PB2 must be an output, or the controller may fall out of its master role
  SPCR = _BV(SPE) | _BV(MSTR) | _BV(SPR0);
}

static struct reading read_converter(uint8_t select) {
  uint32_t bits = 0;
  PORTB &= ~select;
  for (uint8_t i = 0; i < 4; i++) {
    SPDR = 0;
    while (!(SPSR & _BV(SPIF)));
    bits = bits << 8 | SPDR;
  }
  PORTB |= select;
  return decode_converter(bits);
}

// --- One-wire sensors; `pin` is the pin's bit in port D. It pulls low or lets go; a resistor to the supply pulls high. Times in µs are the
// standard-speed ones of the bus. No interrupt is ever on, so nothing stretches a slot. ---
static void pull(uint8_t pin) { DDRD |= pin; }
static void let_go(uint8_t pin) { DDRD &= ~pin; }
static bool is_high(uint8_t pin) { return PIND & pin; }

// MEASURED: a sensor answers. OPEN: nobody answers. FAULT: the line is held low.
static enum state bus_reset(uint8_t pin) {
  if (!is_high(pin)) return FAULT;
  pull(pin);
  _delay_us(480);
  let_go(pin);
  _delay_us(70);
  const bool nobody = is_high(pin);
  _delay_us(410);
  if (!is_high(pin)) return FAULT;
  return nobody ? OPEN : MEASURED;
}

// A slot is for both ways: 1 is written by letting go at once, and then whoever sends 0 holds the line low.
static bool slot(uint8_t pin, bool bit) {
  pull(pin);
  _delay_us(3);
  if (bit) let_go(pin);
  _delay_us(6);  // with the steps between, under 15 µs after the edge: a sensor promises its bit no longer
  const bool seen = is_high(pin);
  _delay_us(55);
  let_go(pin);
  _delay_us(8);
  return seen;
}

static uint8_t transfer(uint8_t pin, uint8_t byte) {
  uint8_t seen = 0;
  for (uint8_t bit = 0; bit < 8; bit++) seen |= (uint8_t)slot(pin, byte >> bit & 1) << bit;
  return seen;
}

// 0xCC speaks to the only sensor there is on this pin.
static enum state command(uint8_t pin, uint8_t code) {
  const enum state state = bus_reset(pin);
  if (state != MEASURED) return state;
  transfer(pin, 0xCC);
  transfer(pin, code);
  return MEASURED;
}

static void write_mark(uint8_t pin) {
  if (command(pin, 0x4E) != MEASURED) return;
  transfer(pin, MARK_HIGH);
  transfer(pin, MARK_LOW);
  transfer(pin, 0x7F);  // 12 bits, so sixteenths; a measurement then takes up to 750 ms
}

static void start_measuring(uint8_t pin) { command(pin, 0x44); }

// What was started a second ago. A byte spoiled on a long lead is asked for again.
static struct reading read_one_wire(uint8_t pin) {
  struct reading reading = broken(FAULT);
  for (uint8_t attempt = 0; attempt < 3 && reading.state == FAULT; attempt++) {
    const enum state state = command(pin, 0xBE);
    if (state != MEASURED) return broken(state);
    uint8_t scratchpad[9];
    for (uint8_t i = 0; i < 9; i++) scratchpad[i] = transfer(pin, 0xFF);
    reading = decode_one_wire(scratchpad);
  }
  return reading;
}

// --- The whole. ---
static void begin(void) {
  UBRR0 = F_CPU / 16 / 9600 - 1;
  UCSR0B = _BV(TXEN0);
  spi_begin();
  // Timer 1 counts to one second: 16 MHz / 1024 = 15625.
  OCR1A = 15625 - 1;
  TCCR1B = _BV(WGM12) | _BV(CS12) | _BV(CS10);
  for (uint8_t i = 0; i < COUNT(ONE_WIRE); i++) {
    write_mark(ONE_WIRE[i]);
    start_measuring(ONE_WIRE[i]);
  }
}

// p power, b brown-out (the supply sagged: too long or thin a lead), w watchdog, r reset key or the port was opened.
static char why_started(uint8_t flags) {
  if (flags & _BV(PORF)) return 'p';
  if (flags & _BV(BORF)) return 'b';
  if (flags & _BV(WDRF)) return 'w';
  if (flags & _BV(EXTRF)) return 'r';
  return 0;  // a boot loader may have cleared them
}

int main(void) {
  char started_by = why_started(MCUSR);
  MCUSR = 0;
  begin();
  // A start may have cut a line in the middle of a number. This spoils the half that is left, so that nobody
  // reads 9 of what was to be 98.25; alone it means nothing.
  if (started_by != 'p') say_text("#\n");
  line_crc = 0;
  for (uint16_t count = 0;; count++) {
    while (!(TIFR1 & _BV(OCF1A)));
    TIFR1 = _BV(OCF1A);
    for (uint8_t i = 0; i < COUNT(CONVERTERS); i++) say_channel('T', i + 1, read_converter(CONVERTERS[i]));
    for (uint8_t i = 0; i < COUNT(ONE_WIRE); i++) {
      const struct reading reading = read_one_wire(ONE_WIRE[i]);
      say_channel('D', i + 1, reading);
      if (reading.state != MEASURED) write_mark(ONE_WIRE[i]);
      start_measuring(ONE_WIRE[i]);
    }
    say_end(count, started_by);
    started_by = 0;
  }
}
