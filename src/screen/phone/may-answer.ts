// Whether this phone may answer calls, and what it is called: the host says so, and may say otherwise at any time.
import { signal } from '@preact/signals';
import type { PhoneHello } from '../../protocol/phone-messages.ts';
import type { Link } from '../client/link.ts';

export const phone = signal<{ name: string; mayAnswer: boolean } | null>(null);

const isHello = (message: { kind: string }): message is PhoneHello => message.kind === 'phone';

/** The link, with what is said of the phone itself taken out of it. */
export function hearingWhatItMay(link: Link): Link {
  return {
    ...link,
    listen: (hear) =>
      link.listen((event) => {
        const message: { kind: string } | null = event.kind === 'message' ? event.message : null;
        if (message !== null && isHello(message)) phone.value = { name: message.name, mayAnswer: message.may_answer };
        else hear(event);
      }),
  };
}
