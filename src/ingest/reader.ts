// A process of its own that reads one serial port, so that it can be ended when the port's driver never returns.
import { openInThisProcess } from './open-in-this-process.ts';
import type { OpenedPort } from './open-port.ts';
import type { FromReader, ToReader } from './reader-messages.ts';

const BEAT_MS = 1000;
const MICROSECONDS_PER_MS = 1000;

const say = (message: FromReader): void => void process.send?.(message);

let port: OpenedPort | null = null;
let resume: () => void = () => undefined;

async function open({ path, baud }: { path: string; baud: number }): Promise<void> {
  try {
    port = await openInThisProcess(path, baud, {
      bytes: (bytes, flow) => {
        // One piece at a time: while it is dealt with, the system's own buffer holds the rest.
        flow.pause();
        resume = flow.resume;
        say({ bytes });
      },
      gone: () => say({ gone: true }),
    });
    say({ opened: true });
  } catch (error) {
    say({ failed: error instanceof Error ? error.message : String(error) });
  }
}

async function close(): Promise<void> {
  await port?.close();
  port = null;
  say({ closed: true });
}

process.on('message', (message: ToReader) => {
  if ('open' in message) void open(message.open);
  else if ('next' in message) resume();
  else void close();
});
// It lives as long as the program does, which closes its ports in order when it is interrupted.
process.on('disconnect', () => process.exit());
process.on('SIGINT', () => undefined);
process.on('SIGTERM', () => undefined);

let before = process.cpuUsage();
setInterval(() => {
  const { user, system } = process.cpuUsage(before);
  before = process.cpuUsage();
  say({ beat: (user + system) / MICROSECONDS_PER_MS });
}, BEAT_MS);
