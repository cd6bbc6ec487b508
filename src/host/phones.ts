// The phones that may look at the pans: which are let in, what each may do, and whether their page is switched on.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { networkInterfaces } from 'node:os';
import { z } from 'zod';
import type { Notebook } from '../notebook/contract.ts';
import type { PhoneCommand, PhoneInvitation, PhonesView } from '../protocol/phone-messages.ts';
import { isoWithOffset } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import { asMeant, newTypedSecret } from './typed-secret.ts';

const SETTING = 'phones';
const SECRET_BYTES = 24;
const INVITATION_MINUTES = 10;
const MOST_PHONES = 20;
const LONGEST_NAME = 40;

const keptSchema = z.object({
  on: z.boolean(),
  address: z.string().nullable(),
  /** The same port each time, or a phone's address would be new with each start; 0 before the first. */
  port: z.number().int(),
  phones: z.array(
    z.object({ id: z.string(), name: z.string(), digest: z.string(), may_answer: z.boolean(), let_in: z.string() }),
  ),
});
type Kept = z.infer<typeof keptSchema>;
export type KeptPhone = Kept['phones'][number];
export type OwnAddress = PhonesView['addresses'][number];

/** Serves the page of the phones; handed in by who has a server. */
export interface PhoneServing {
  url: string;
  port: number;
  connected(): ReadonlySet<string>;
  /** Ends what that phone has open. */
  putOut(id: string): void;
  /** Tells it anew what it may do. */
  tellAgain(id: string): void;
  close(): Promise<void>;
}
export type ServePhones = (where: { address: string; port: number }) => Promise<PhoneServing>;

export class PhoneDesk {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #addresses: () => OwnAddress[];
  #kept: Kept;
  #serve: ServePhones | null = null;
  #serving: PhoneServing | null = null;
  #trouble: string | null = null;
  #invitation: { digest: string; untilMs: number } | null = null;

  /** `addresses` are this machine's own, looked up anew each time. */
  constructor(notebook: Notebook, machine: MachineClock, addresses: () => OwnAddress[] = ownAddresses) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#addresses = addresses;
    this.#kept = keptSchema
      .catch({ on: false, address: null, port: 0, phones: [] })
      .parse(notebook.setting(SETTING) ?? null);
  }

  /** Whoever can serve says so once; a page that was on is then on again. */
  async servedBy(serve: ServePhones): Promise<void> {
    this.#serve = serve;
    if (this.#kept.on) await this.#open();
  }

  async close(): Promise<void> {
    await this.#serving?.close();
    this.#serving = null;
  }

  async do(command: PhoneCommand): Promise<Outcome> {
    if ('phones_switch' in command) await this.#switch(command.phones_switch);
    else if ('phone_invite' in command) return this.#invite();
    else if ('phone_change' in command) this.#change(command.phone_change);
    else if ('phone_out' in command) this.#putOut(command.phone_out.id);
    return { ok: true, data: this.#view() };
  }

  /** Trades an invitation, once, for what the phone shows from then on; null for a wrong or an old one. */
  letIn(token: string, name: string): { phone: KeptPhone; secret: string } | null {
    if (!this.#uses(token)) return null;
    const secret = randomBytes(SECRET_BYTES).toString('base64url');
    const phone = {
      id: randomBytes(6).toString('base64url'),
      name: nameOf(name) || 'A phone',
      digest: digestOf(secret),
      may_answer: false,
      let_in: isoWithOffset(this.#machine.wallMs()),
    };
    this.#keep({ ...this.#kept, phones: [...this.#kept.phones, phone].slice(-MOST_PHONES) });
    return { phone, secret };
  }

  /** A phone that is let in already uses an invitation up, too, and may be called otherwise from then on. */
  letInAgain(id: string, token: string, name: string): void {
    if (!this.#uses(token)) return;
    const phones = this.#kept.phones.map((phone) =>
      phone.id === id ? { ...phone, name: nameOf(name) || phone.name } : phone,
    );
    this.#keep({ ...this.#kept, phones });
    this.#serving?.tellAgain(id);
  }

  /** Whether the invitation is good; it is then used up. */
  #uses(token: string): boolean {
    const invitation = this.#standing();
    if (invitation === null || !isSame(digestOf(asMeant(token)), invitation.digest)) return false;
    this.#invitation = null;
    return true;
  }

  #standing(): { digest: string } | null {
    const invitation = this.#invitation;
    return invitation !== null && this.#machine.monotonicMs() <= invitation.untilMs ? invitation : null;
  }

  /** The phone that shows this secret; null for none. */
  known(secret: string | undefined): KeptPhone | null {
    if (secret === undefined) return null;
    const digest = digestOf(secret);
    return this.#kept.phones.find((phone) => isSame(phone.digest, digest)) ?? null;
  }

  phone(id: string): KeptPhone | null {
    return this.#kept.phones.find((phone) => phone.id === id) ?? null;
  }

  async #switch({ on, address }: { on: boolean; address: string | null }): Promise<void> {
    this.#keep({ ...this.#kept, on, address });
    this.#trouble = null;
    await this.close();
    if (on) await this.#open();
  }

  async #open(): Promise<void> {
    const { address, port } = this.#kept;
    const there = this.#addresses();
    const chosen = there.find((one) => one.address === address) ?? there[0];
    if (this.#serve === null) this.#trouble = 'This program serves no pages: start it with its screen.';
    else if (chosen === undefined)
      this.#trouble = 'This machine is in no network: join one, then switch this on again.';
    else
      try {
        this.#serving = await this.#serve({ address: chosen.address, port });
        this.#keep({ ...this.#kept, address: chosen.address, port: this.#serving.port });
      } catch (error) {
        this.#trouble = (error as Error).message;
      }
  }

  #invite(): Outcome {
    if (this.#serving === null) return refused(this.#trouble ?? 'The page for phones is switched off.');
    const token = newTypedSecret();
    this.#invitation = { digest: digestOf(token), untilMs: this.#machine.monotonicMs() + INVITATION_MINUTES * 60_000 };
    const data: PhoneInvitation = { url: `${this.#serving.url}#let-in=${token}`, minutes: INVITATION_MINUTES };
    return { ok: true, data };
  }

  #change({ id, may_answer }: { id: string; may_answer: boolean }): void {
    const phones = this.#kept.phones.map((phone) => (phone.id === id ? { ...phone, may_answer } : phone));
    this.#keep({ ...this.#kept, phones });
    this.#serving?.tellAgain(id);
  }

  #putOut(id: string): void {
    this.#keep({ ...this.#kept, phones: this.#kept.phones.filter((phone) => phone.id !== id) });
    this.#serving?.putOut(id);
  }

  #keep(kept: Kept): void {
    this.#kept = kept;
    this.#notebook.keepSetting(SETTING, kept);
  }

  #view(): PhonesView {
    const connected = this.#serving?.connected() ?? new Set();
    return {
      on: this.#kept.on,
      addresses: this.#addresses(),
      url: this.#serving?.url ?? null,
      invites: this.#standing() !== null,
      trouble: this.#kept.on && this.#serving === null ? this.#trouble : null,
      phones: this.#kept.phones.map(({ id, name, may_answer, let_in }) => ({
        id,
        name,
        may_answer,
        let_in,
        connected: connected.has(id),
      })),
    };
  }
}

/** IPv4 in the machine's own networks; where it has none but itself, itself: then only this machine can look. */
function ownAddresses(): OwnAddress[] {
  const all = Object.entries(networkInterfaces()).flatMap(([name, found]) =>
    (found ?? [])
      .filter(({ family }) => family === 'IPv4')
      .map(({ address, internal }) => ({ name, address, internal })),
  );
  const outside = all.filter(({ internal }) => !internal);
  return (outside.length > 0 ? outside : all).map(({ address, name }) => ({ address, name }));
}

const nameOf = (typed: string): string => typed.trim().slice(0, LONGEST_NAME);

const digestOf = (text: string): string => createHash('sha256').update(text).digest('base64url');

/** Both are digests, so of one length. */
function isSame(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
}
