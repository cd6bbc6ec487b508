// The one interface through which the screen reaches its host: a socket in a browser, a bridge in the desktop window.
import type { Command, HostMessage } from './types.ts';

export type LinkState =
  | { state: 'connecting' }
  | { state: 'open' }
  | { state: 'lost' }
  /** The host does not let this page in; `why` says what to do. */
  | { state: 'refused'; why: string };

export type LinkEvent = { kind: 'message'; message: HostMessage } | { kind: 'state'; now: LinkState };

/** What became of a file: the id under which its boil can be replayed, or one sentence why not. */
export type FileAnswer = { ok: true; boil: string } | { ok: false; why: string };

export interface Link {
  /** Sends one command; its answer comes as an `answered` message. False when nothing could be sent. */
  send(command: Command): boolean;
  /** Starts the link and hears everything from it; returns the way to stop. */
  listen(hear: (event: LinkEvent) => void): () => void;
  /** Hands a recording over: `import` keeps it in the notebook, `opened` only opens it. */
  hand(way: 'import' | 'opened', recording: Blob): Promise<FileAnswer>;
}

declare global {
  interface Window {
    /** Put there by the desktop window's preload. */
    panwarden?: Link;
  }
}
