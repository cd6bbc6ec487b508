// Opens one serial port by the serial library, as the few functions that the rest of the program needs of it.
import { SerialPort } from 'serialport';

export interface PortEvents {
  bytes(chunk: Uint8Array): void;
  /** The port is closed for good, by its own loss and not by close(); comes once at most. */
  gone(): void;
}

export interface OpenedPort {
  /** Resolves when the port is free again; safe when it is gone already. */
  close(): Promise<void>;
}

/** Rejects when the port cannot be opened. No event comes before the promise has resolved. */
export type OpenPort = (path: string, baud: number, events: PortEvents) => Promise<OpenedPort>;

/** Bytes taken at once: about 50 ms of work for the lines in them at the worst, so that alarms are never held up. */
const bytesAtOnce = 16 * 1024;

/** Every opening is a new object, so that nothing of a lost one (listeners, half a line, a read in flight) lives on. */
export const openSerialPort: OpenPort = (path, baudRate, events) =>
  new Promise((resolve, reject) => {
    const port = new SerialPort({ path, baudRate, autoOpen: false, highWaterMark: bytesAtOnce });
    // A failed read or write is followed by `close`; without a listener the error would end the process.
    port.on('error', () => undefined);
    port.open((error) => {
      if (error !== null) return reject(error);
      let closing = false;
      port.on('data', events.bytes);
      port.once('end', () => void closed(port));
      port.once('close', () => {
        port.removeAllListeners('data');
        if (!closing) events.gone();
      });
      resolve({
        close() {
          closing = true;
          return closed(port);
        },
      });
    });
  });

/** A close that fails leaves nothing to be done: the port is gone. */
function closed(port: SerialPort): Promise<void> {
  return new Promise((resolve) => {
    if (!port.isOpen) resolve();
    else port.close(() => resolve());
  });
}
