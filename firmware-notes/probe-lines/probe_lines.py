# Reads type-K converter chips over SPI and one-wire sensors with MicroPython, and prints one line a second, as
# probe-lines.c does:  T1=98.25C T2=open D1=97.0625C #12*4F
# Copy it to the board as main.py.
import time

import machine
from onewire import OneWire

# What is wired where: change these lines only, after your board's papers.
SPI_BUS = 0
SELECT_PINS = (9, 10)  # one for each converter, in the order T1, T2, ...
ONE_WIRE_PINS = (4, 5)  # one sensor on each, in the order D1, D2, ...

LINE_EVERY_MS = 1000  # a one-wire sensor takes up to 750 ms to measure, so not less

# Written into the sensor's alarm bytes, never into its lasting memory: a sensor that lost its supply has loaded the
# lasting ones again, so the mark is gone, and its 85 degrees are no temperature. Then 12 bits.
MARK = b"\x55\x2a"
SETTING = b"\x4e" + MARK + b"\x7f"


def crc8(data):
    """CRC-8 of the one-wire bus; over data and their own CRC together it is 0."""
    crc = 0
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ 0x8C if crc & 1 else crc >> 1
    return crc


def degrees(sixteenths):
    """`98.25C` from sixteenths of a degree; exact, for four decimals hold a sixteenth."""
    whole, part = divmod(abs(sixteenths), 16)
    decimals = "%04d" % (part * 625)
    while len(decimals) > 1 and decimals[-1] == "0":
        decimals = decimals[:-1]
    return "%s%d.%sC" % ("-" if sixteenths < 0 else "", whole, decimals)


def signed(bits, size):
    return bits - (1 << size) if bits >> (size - 1) else bits


def converter_text(four):
    """Text of a converter's four bytes: 31..18 tip in quarter degrees, 16 and 2..0 faults, 17 and 3 always 0."""
    bits = int.from_bytes(four, "big")
    # A chip that is not there, or has no supply, reads as all zeros or all ones.
    if bits == 0 or bits & 0x00020008:
        return "fault"
    if bits & 1:
        return "open"
    if bits & 0x00010006:
        return "fault"
    return degrees(signed(bits >> 18, 14) * 4)


def one_wire_text(nine):
    """Text of a sensor's nine bytes: 0, 1 the temperature in sixteenths, 2, 3 the mark, 8 the CRC."""
    # All zeros have a right CRC, too, but no mark.
    if crc8(nine) != 0 or nine[2:4] != MARK:
        return "fault"
    return degrees(signed(nine[0] | nine[1] << 8, 16))


class Converter:
    def __init__(self, spi, pin):
        self.spi = spi
        self.select = machine.Pin(pin, machine.Pin.OUT, value=1)

    def text(self):
        four = bytearray(4)
        self.select.value(0)
        self.spi.readinto(four)
        self.select.value(1)
        return converter_text(four)


class Sensor:
    def __init__(self, pin):
        self.pin = machine.Pin(pin)
        self.bus = OneWire(self.pin)
        self.begin(True)

    def command(self, data):
        """False where nobody answers. 0xCC speaks to the only sensor there is on this pin."""
        if not self.bus.reset():
            return False
        for byte in b"\xcc" + data:
            self.bus.writebyte(byte)
        return True

    def begin(self, mark):
        if mark:
            self.command(SETTING)
        self.command(b"\x44")

    def text(self):
        """What was begun a second ago, and begins the next. A byte spoiled on a long lead is asked for again."""
        said = "fault"
        for _ in range(3):
            if not self.command(b"\xbe"):
                said = "open" if self.pin.value() else "fault"  # a line held low is a short
                break
            nine = bytearray(9)
            self.bus.readinto(nine)
            said = one_wire_text(bytes(nine))
            if said != "fault":
                break
        self.begin(not said.endswith("C"))
        return said


def why_started():
    causes = (("PWRON_RESET", "p"), ("WDT_RESET", "w"), ("HARD_RESET", "r"))
    for name, letter in causes:  # not every board knows every cause
        if getattr(machine, name, None) == machine.reset_cause():
            return letter
    return ""


def line(channels, count, started_by):
    """`#12*4F` ends it: its number, and the CRC-8 of every byte before the star. A reader of pairs passes over it."""
    pairs = ["%s=%s" % (name, source.text()) for name, source in channels]
    body = " ".join(pairs + ["#%d%s" % (count, started_by)])
    return "%s*%02X" % (body, crc8(body.encode()))


def next_second(due):
    due = time.ticks_add(due, LINE_EVERY_MS)
    wait = time.ticks_diff(due, time.ticks_ms())
    if wait > 0:
        time.sleep_ms(wait)
    return due


def run(pause=next_second):
    spi = machine.SPI(SPI_BUS, baudrate=1_000_000, polarity=0, phase=0)
    channels = [("T%d" % (i + 1), Converter(spi, pin)) for i, pin in enumerate(SELECT_PINS)]
    channels += [("D%d" % (i + 1), Sensor(pin)) for i, pin in enumerate(ONE_WIRE_PINS)]
    started_by = why_started()
    if started_by != "p":
        print("#")  # spoils the half of a number that was cut by the start; alone it means nothing
    count = 0
    due = time.ticks_ms()
    while True:
        due = pause(due)
        print(line(channels, count, started_by))
        count = (count + 1) & 0xFFFF
        started_by = ""


if __name__ == "__main__":
    run()
