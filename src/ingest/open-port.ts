// Opens one serial port, as the few functions that the rest of the program needs of it.
import { ReaderPool } from './reader-pool.ts';

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

/**
 * In a process of its own: the library's reading of a pulled adapter may never end, and its binding keeps to the
 * main thread's loop (`uv_default_loop`), so that a worker thread would not do. The window's program (Electron) cannot
 * start itself as such a process; it hands in its own way to the host.
 */
export const openSerialPort: OpenPort = new ReaderPool().open;
