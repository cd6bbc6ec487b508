// One phone's WebSocket: it is shown the pans of the boil that runs, and may answer calls only where that was allowed.
import type { Host } from '../../host/host.ts';
import type { HostMessage, Now } from '../../protocol/messages.ts';
import { phoneWish } from '../../protocol/phone-messages.ts';
import type { PhoneHello } from '../../protocol/phone-messages.ts';
import type { PageSocket } from '../page-socket.ts';

export type RawSocket = PageSocket & { close(code: number, why: string): void };

/** A phone that leaves this much unread has gone out of reach. */
const MOST_UNREAD_BYTES = 500_000;
const MOST_UNANSWERED = 5;
const OPEN = 1;
const POLICY = 1008;

export class PhoneSocket {
  readonly phone: string;
  readonly ip: string;
  readonly #raw: RawSocket;
  readonly #host: Host;
  #unanswered = 0;

  constructor(raw: RawSocket, host: Host, phone: string, ip: string) {
    this.phone = phone;
    this.ip = ip;
    this.#raw = raw;
    this.#host = host;
    this.tellWhatItMay();
    raw.on('message', (data, isBinary) => void this.#hear(isBinary ? '' : data.toString('utf8')));
    raw.on(
      'close',
      host.subscribe((message) => this.#show(message)),
    );
  }

  onClose(act: () => void): void {
    this.#raw.on('close', act);
  }

  end(): void {
    this.#raw.close(POLICY, 'put out');
  }

  tellWhatItMay(): void {
    const phone = this.#host.phones.phone(this.phone);
    if (phone === null) return this.end();
    this.#send({ kind: 'phone', name: phone.name, may_answer: phone.may_answer } satisfies PhoneHello);
  }

  #show(message: HostMessage): void {
    const shown = forPhone(message, this.#host);
    if (shown !== null) this.#send(shown);
  }

  #send(message: unknown): void {
    if (this.#raw.readyState !== OPEN) return;
    if (this.#raw.bufferedAmount > MOST_UNREAD_BYTES) this.#raw.terminate();
    else this.#raw.send(JSON.stringify(message));
  }

  async #hear(text: string): Promise<void> {
    if (this.#unanswered >= MOST_UNANSWERED) return this.#raw.terminate();
    this.#unanswered += 1;
    this.#send(await this.#answer(text));
    this.#unanswered -= 1;
  }

  async #answer(text: string): Promise<unknown> {
    const wish = phoneWish.safeParse(parsed(text));
    const refused = (why: string) => ({ kind: 'answered', ref: wish.success ? wish.data.ref : null, ok: false, why });
    if (!wish.success) return refused('A phone may silence and acknowledge calls, nothing else.');
    const phone = this.#host.phones.phone(this.phone);
    if (phone?.may_answer !== true)
      return refused('This phone may only look: allow it on the screen by the pans, under Settings.');
    const { answer } = wish.data;
    // The screen by the pans tells who has seen it, and who made it quiet.
    return this.#host.command({ ...wish.data, answer: { ...answer, by: phone.name } });
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** What is of no use or no business on a phone stays away; null for what is left out whole. */
function forPhone(message: HostMessage, { season }: Host): HostMessage | null {
  if (message.kind === 'hello') {
    const { version, saps, settings } = message;
    return { kind: 'hello', version, saps, folder: '', lan: true, unchosen: false, settings: plainSettings(settings) };
  }
  if (message.kind === 'settings') return { kind: 'settings', settings: plainSettings(message.settings) };
  if (message.kind !== 'now' || message.view !== 'live') return null;
  const isOver = message.ended && message.mode === 'live' && message.boil !== null;
  return { ...plainNow(message), syrup: isOver ? season.syrupOf(message.boil!) : null };
}

type Settings = Extract<HostMessage, { kind: 'settings' }>['settings'];

/** Units and looks are the person's; commands and folders are the machine's. */
const plainSettings = (settings: Settings): Settings => ({
  ...settings,
  second_channel: { command: [] },
  backup_folder: '',
});

/** What `pouredLitres` counts by: a depth that was noted first tells what had been filled in. */
const POURS: ReadonlySet<Now['marks'][number]['mark']['kind']> = new Set(['top-up', 'transfer', 'depth']);

/**
 * Notes and the past stay on the screen by the pans; a hand reading tells how old a pan's number is, and what was poured
 * in how much of the planned sap is still to come.
 */
function plainNow(now: Now): Now {
  const { header } = now;
  const standing = now.marks.filter(({ withdrawn }) => !withdrawn);
  const read = standing.filter(({ mark }) => mark.kind === 'reading');
  const poured = standing.filter(({ mark }) => POURS.has(mark.kind));
  return {
    ...now,
    header: header === null ? null : { ...header, ports: [], probes: header.probes, learnt: undefined },
    history: { ...now.history, raisings: [] },
    marks: [...read.slice(-20), ...poured],
    ports: [],
    notices: [],
    pours: [],
    sleep: null,
  };
}
