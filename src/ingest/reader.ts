// A process of its own that reads one serial port, so that it can be ended when the port's driver never returns.
import { openInThisProcess } from './open-in-this-process.ts';
import type { OpenedPort } from './open-port.ts';
import type { FromReader, ToReader } from './reader-messages.ts';

const BEAT_MS = 1000;
const MICROSECONDS_PER_MS = 1000;

/** How the window's runtime lets such a process speak and hear; Node has its own channel. */
interface ParentPort {
  postMessage(message: FromReader): void;
  on(event: 'message', listener: (event: { data: ToReader }) => void): void;
}
const { parentPort } = process as { parentPort?: ParentPort };

function say(message: FromReader): void {
  if (parentPort === undefined) process.send?.(message);
  else parentPort.postMessage(message);
}

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

function hear(message: ToReader): void {
  if ('open' in message) void open(message.open);
  else if ('next' in message) resume();
  else void close();
}
if (parentPort === undefined) process.on('message', hear);
else parentPort.on('message', ({ data }) => hear(data));
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
