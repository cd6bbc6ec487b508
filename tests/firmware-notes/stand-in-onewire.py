# Stands in for MicroPython's `onewire` module in the test: sensors that answer the bus's commands, by pin.
import machine

POWER_ON = b"\x50\x05\x4b\x46\x7f\xff\x0c\x10"
sensors = {}  # by pin


class StandInSensor:
    def __init__(self, sixteenths):
        self.sixteenths = sixteenths
        self.pad = bytearray(POWER_ON)
        self.spoilt = 0  # so many of the next answers are turned over on the lead
        self.heard = b""

    def lose_power(self):
        self.pad = bytearray(POWER_ON)

    def hear(self, byte):
        self.heard += bytes([byte])
        assert self.heard[0] == 0xCC
        if self.heard[1:] == b"\x44":
            raw = self.sixteenths & 0xFFFF
            self.pad[0:2] = bytes([raw & 255, raw >> 8])
        if self.heard[1:2] == b"\x4e" and len(self.heard) == 5:
            self.pad[2:5] = self.heard[2:]


def crc(data):
    register = 0
    for byte in data:
        for bit in range(8):
            mix = ((byte >> bit) ^ register) & 1
            register = (register >> 1) ^ (0b10001100 if mix else 0)
    return register


class OneWire:
    def __init__(self, pin):
        self.pin = pin.number

    def reset(self):
        sensor = sensors.get(self.pin)
        if sensor is None or self.pin in machine.low:
            return False
        sensor.heard = b""
        return True

    def writebyte(self, byte):
        sensors[self.pin].hear(byte)

    def readinto(self, data):
        sensor = sensors[self.pin]
        assert sensor.heard[1:] == b"\xbe"
        data[:] = bytes(sensor.pad) + bytes([crc(sensor.pad)])
        if sensor.spoilt:
            sensor.spoilt -= 1
            data[0] ^= 4
