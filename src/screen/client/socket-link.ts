// The link over a WebSocket: connects, reconnects for ever, and passes messages on as they come.
import { say } from '../language/say.ts';
import { exchangeToken } from './session.ts';
import type { FileAnswer, Link, LinkEvent } from './link.ts';
import type { HostMessage } from './types.ts';

const SHORTEST_PAUSE_MS = 250;
const LONGEST_PAUSE_MS = 4000;

/** Milliseconds before the nth new try (0 for the first). */
export function pauseBeforeTryMs(failures: number): number {
  return Math.min(LONGEST_PAUSE_MS, SHORTEST_PAUSE_MS * 2 ** failures);
}

function socketAddress(): string {
  const address = new URL('socket', location.href.split('#')[0]);
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
  return address.href;
}

/** A program that answers but does not let the page in has another token by now. */
async function isShutOut(): Promise<boolean> {
  try {
    const answer = await fetch('session', { headers: { accept: 'application/json' } });
    return answer.status === 401 || answer.status === 403;
  } catch {
    return false;
  }
}

async function hand(way: 'import' | 'opened', recording: Blob): Promise<FileAnswer> {
  try {
    const answer = await fetch(way, {
      method: 'POST',
      headers: { 'content-type': 'application/x-ndjson' },
      body: recording,
    });
    const said = (await answer.json()) as { boil?: string; why?: string; message?: string };
    if (answer.ok && said.boil !== undefined) return { ok: true, boil: said.boil };
    return { ok: false, why: said.why ?? said.message ?? say('client.file_refused') };
  } catch {
    return { ok: false, why: say('client.file_not_handed') };
  }
}

export interface Entrance {
  /** Lets the page in before it connects: null when all is well, else a sentence for the person. */
  enter: () => Promise<string | null>;
  /** What a page is told that is let in no more. */
  shutOut: () => string;
}

const BY_TOKEN: Entrance = {
  enter: exchangeToken,
  shutOut: () => say('client.started_anew'),
};

/** The link of a page in a browser. */
export function socketLink({ enter, shutOut }: Entrance = BY_TOKEN): Link {
  let socket: WebSocket | null = null;

  function listen(hear: (event: LinkEvent) => void): () => void {
    let failures = 0;
    let stopped = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    /** Who is let in no more stays so through every new try, until one is let in: else old numbers would come back between. */
    let isRefused = false;

    function refuse(why: string): void {
      isRefused = true;
      hear({ kind: 'state', now: { state: 'refused', why } });
    }

    function trying(state: 'connecting' | 'lost'): void {
      if (!isRefused) hear({ kind: 'state', now: { state } });
    }

    async function connect(): Promise<void> {
      trying('connecting');
      const trouble = await enter();
      if (trouble !== null) refuse(trouble);
      if (stopped || trouble !== null) return;
      const opened = new WebSocket(socketAddress());
      socket = opened;
      opened.onopen = () => {
        failures = 0;
        isRefused = false;
        hear({ kind: 'state', now: { state: 'open' } });
      };
      opened.onmessage = (event) => {
        hear({ kind: 'message', message: JSON.parse(String(event.data)) as HostMessage });
      };
      opened.onclose = () => void tryAgain();
    }

    async function tryAgain(): Promise<void> {
      if (stopped) return;
      trying('lost');
      if (await isShutOut()) refuse(shutOut());
      timer = setTimeout(() => void connect(), pauseBeforeTryMs(failures));
      failures += 1;
    }

    void connect();
    return () => {
      stopped = true;
      clearTimeout(timer);
      socket?.close();
    };
  }

  return {
    listen,
    hand,
    send(command) {
      if (socket?.readyState !== WebSocket.OPEN) return false;
      socket.send(JSON.stringify(command));
      return true;
    },
  };
}
