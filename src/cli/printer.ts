// Standard output: lines are gathered into large writes, and a reader that has gone away is no error.

const PIECE_CHARACTERS = 65_536;

export interface Printer {
  line(text: string): void;
  /** A line that is not held back. */
  lineNow(text: string): void;
  /** Writes what is gathered; resolves when the reader has taken enough of it for more to be worth making. */
  flush(): Promise<void>;
  /** The reader has gone away. */
  readonly isClosed: boolean;
  /** The reader is behind: wait for flush() before making more. */
  readonly isFull: boolean;
}

/** `closed` is called once when the reader goes away. */
export function printer(out: NodeJS.WriteStream = process.stdout, closed: () => void = () => {}): Printer {
  let gathered = '';
  let isClosed = false;

  function close(): void {
    if (!isClosed) closed();
    isClosed = true;
  }

  out.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    close();
  });

  function write(): boolean {
    const piece = gathered;
    gathered = '';
    return isClosed || piece === '' || out.write(piece);
  }

  return {
    line(text) {
      gathered += `${text}\n`;
      if (gathered.length >= PIECE_CHARACTERS) write();
    },
    lineNow(text) {
      gathered += `${text}\n`;
      write();
    },
    async flush() {
      if (!write() || out.writableNeedDrain) await drained(out);
    },
    get isClosed() {
      return isClosed;
    },
    get isFull() {
      return out.writableNeedDrain;
    },
  };
}

/** A reader that goes away never drains: `close` and `error` end the wait too. */
function drained(out: NodeJS.WriteStream): Promise<void> {
  return new Promise((resolve) => {
    const done = () => {
      for (const event of ['drain', 'close', 'error']) out.off(event, done);
      resolve();
    };
    for (const event of ['drain', 'close', 'error']) out.on(event, done);
  });
}
