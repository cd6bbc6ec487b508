// Trades the invitation in the phone's address for a cookie, under the name that the person gives the phone.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';

/** The invitation that stands in the address, or null. */
export function invitationIn(fragment: string): string | null {
  return /^#let-in=([A-Za-z0-9_-]{16,})$/.exec(fragment)?.[1] ?? null;
}

/** Why a phone shows nothing: nobody has let it in. */
export const notLetIn = (): string => say('phone.not_let_in');

/** Null when the phone is let in, else a sentence for the person. The invitation leaves the address either way. */
export async function letIn(token: string, name: string): Promise<string | null> {
  history.replaceState(null, '', location.pathname);
  try {
    const answer = await fetch('let-in', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ token, name }),
    });
    if (answer.ok) return null;
    const { why } = (await answer.json()) as { why?: string };
    return why === undefined ? notLetIn() : hostWords(why);
  } catch {
    return say('phone.not_reached');
  }
}
