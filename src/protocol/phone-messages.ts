// What host and screen say to each other of phones: switching their page on, letting one in, what it may do, and putting it out.
import { z } from 'zod';
import { answerSchema } from './entry-schemas.ts';

const ref = z.string().min(1).max(100);
const id = z.string().min(1).max(100);

export const phoneCommands = [
  /** data: PhonesView */
  z.strictObject({ ref, phones: z.literal(true) }),
  /** Off until switched on; the address is one that this machine has. data: PhonesView */
  z.strictObject({ ref, phones_switch: z.strictObject({ on: z.boolean(), address: z.string().max(100).nullable() }) }),
  /** An address that lets one phone in, once; data: PhoneInvitation */
  z.strictObject({ ref, phone_invite: z.literal(true) }),
  /** data: PhonesView */
  z.strictObject({ ref, phone_change: z.strictObject({ id, may_answer: z.boolean() }) }),
  /** It is let in no more, at once; data: PhonesView */
  z.strictObject({ ref, phone_out: z.strictObject({ id }) }),
] as const;

const KEYS = ['phones', 'phones_switch', 'phone_invite', 'phone_change', 'phone_out'] as const;
export type PhoneCommand = z.infer<(typeof phoneCommands)[number]>;

/** Whether a command is one of these. */
export const isPhoneCommand = (command: object): command is PhoneCommand => KEYS.some((key) => key in command);

export interface PhoneListed {
  id: string;
  name: string;
  /** It may silence and acknowledge. */
  may_answer: boolean;
  connected: boolean;
  /** ISO 8601. */
  let_in: string;
}

export interface PhonesView {
  on: boolean;
  /** Where this machine can be reached in its own networks. */
  addresses: { address: string; name: string }[];
  /** Where the page is served; null while it is not. */
  url: string | null;
  /** An invitation stands: made less than ten minutes ago, and not used up. */
  invites: boolean;
  /** Why it is not served though it is switched on; null where it is. */
  trouble: string | null;
  phones: PhoneListed[];
}

export interface PhoneInvitation {
  url: string;
  minutes: number;
}

/** All that a phone may ask for, and only where it was allowed to answer. */
export const phoneWish = z.strictObject({ ref, answer: answerSchema }).refine(({ answer }) => !('put_aside' in answer));

/** First of all a phone is told what it may do; after that it hears what a page hears, cut down to the pans. */
export interface PhoneHello {
  kind: 'phone';
  name: string;
  may_answer: boolean;
}
