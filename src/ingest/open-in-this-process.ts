// Opens one serial port by the serial library, in the process that calls it.
import { SerialPort } from 'serialport';
import type { OpenedPort } from './open-port.ts';

export interface Flow {
  pause(): void;
  resume(): void;
}

interface LibraryEvents {
  bytes(chunk: Uint8Array, flow: Flow): void;
  gone(): void;
}

/** Bytes taken at once: about 50 ms of work for the lines in them at the worst, so that alarms are never held up. */
const bytesAtOnce = 16 * 1024;

/** Every opening is a new object, so that nothing of a lost one (listeners, half a line, a read in flight) lives on. */
export const openInThisProcess = (path: string, baudRate: number, events: LibraryEvents): Promise<OpenedPort> =>
  new Promise((resolve, reject) => {
    const port = new SerialPort({ path, baudRate, autoOpen: false, highWaterMark: bytesAtOnce });
    const flow: Flow = { pause: () => port.pause(), resume: () => port.resume() };
    // A failed read or write is followed by `close`; without a listener the error would end the process.
    port.on('error', () => undefined);
    port.open((error) => {
      if (error !== null) return reject(error);
      let closing = false;
      port.on('data', (chunk: Buffer) => events.bytes(chunk, flow));
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
