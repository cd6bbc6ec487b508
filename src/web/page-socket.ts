// One page's WebSocket: its commands go to the host, the host's messages to it; a page that cannot keep up is dropped.
import type { Host } from '../host/host.ts';
import type { HostMessage } from '../protocol/messages.ts';

/** A page that leaves this much unread has stopped reading. */
const MOST_UNREAD_BYTES = 4_000_000;
const MOST_UNANSWERED = 50;

/** As much of a socket of the `ws` package as is used here. */
export interface PageSocket {
  readonly bufferedAmount: number;
  readonly readyState: number;
  send(text: string): void;
  terminate(): void;
  on(event: 'message', hear: (data: Buffer, isBinary: boolean) => void): void;
  on(event: 'close', hear: () => void): void;
}

const OPEN = 1;

/** One message goes to every page, and its text is made once. */
const texts = new WeakMap<HostMessage, string>();

function textOf(message: HostMessage): string {
  const text = texts.get(message) ?? JSON.stringify(message);
  texts.set(message, text);
  return text;
}

/** Tells a page what the host tells, and the host what the page asks; a page that does not read, or asks without end, is put off. */
export function attachPage(socket: PageSocket, host: Host): void {
  let unanswered = 0;

  function send(message: HostMessage): void {
    if (socket.readyState !== OPEN) return;
    if (socket.bufferedAmount > MOST_UNREAD_BYTES) socket.terminate();
    else socket.send(textOf(message));
  }

  socket.on('message', (data, isBinary) => {
    if (unanswered >= MOST_UNANSWERED) {
      socket.terminate();
      return;
    }
    unanswered += 1;
    void host.command(isBinary ? undefined : parsed(data.toString('utf8'))).then((answer) => {
      unanswered -= 1;
      send(answer);
    });
  });
  socket.on('close', host.subscribe(send));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
