// Reads one or two type-K converter chips over SPI and writes one line a second: T1=98.25C T2=open
// For the usual small 5 V board. Each chip sends 32 bits: a signed temperature in quarter degrees, and fault bits.

#include <SPI.h>

const byte SELECT_PINS[] = {9, 10};  // one for each chip, in the order T1, T2; take one out for a single probe
const byte PROBES = sizeof(SELECT_PINS);
const unsigned long LINE_EVERY_MS = 1000;  // a chip needs about 100 ms for a new value, so do not go below 250

unsigned long lastLineMs = 0;

void setup() {
  Serial.begin(9600);
  for (byte probe = 0; probe < PROBES; probe++) {
    digitalWrite(SELECT_PINS[probe], HIGH);  // before it becomes an output, so that no chip is selected by accident
    pinMode(SELECT_PINS[probe], OUTPUT);
  }
  SPI.begin();
}

void loop() {
  // The difference stays right when millis() starts over after 49 days.
  if (millis() - lastLineMs < LINE_EVERY_MS) return;
  lastLineMs += LINE_EVERY_MS;
  for (byte probe = 0; probe < PROBES; probe++) {
    if (probe > 0) Serial.print(' ');
    Serial.print('T');
    Serial.print(probe + 1);
    Serial.print('=');
    printReading(readChip(SELECT_PINS[probe]));
  }
  Serial.println();
}

unsigned long readChip(byte selectPin) {
  unsigned long bits = 0;
  SPI.beginTransaction(SPISettings(1000000, MSBFIRST, SPI_MODE0));
  digitalWrite(selectPin, LOW);
  for (byte i = 0; i < 4; i++) bits = (bits << 8) | SPI.transfer(0);
  digitalWrite(selectPin, HIGH);
  SPI.endTransaction();
  return bits;
}

// A chip that is not there reads as all ones or all zeros; neither may pass as a temperature.
void printReading(unsigned long bits) {
  const bool noChip = bits == 0 || bits == 0xFFFFFFFF;
  const bool openCircuit = bits & 1;  // bits 1 and 2 are shorts to ground and to the supply, bit 16 is any of the three
  if (noChip) {
    Serial.print(F("fault"));
  } else if (openCircuit) {
    Serial.print(F("open"));
  } else if (bits & 0x10006) {
    Serial.print(F("fault"));
  } else {
    const int quarterDegrees = (int)(int16_t)(bits >> 16) >> 2;  // bits 31 to 18, sign kept
    Serial.print(quarterDegrees * 0.25, 2);
    Serial.print('C');
  }
}
