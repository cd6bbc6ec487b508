// Trades the invitation in the phone's address for a cookie, under the name that the person gives the phone.

/** The invitation that stands in the address, or null. */
export function invitationIn(fragment: string): string | null {
  return /^#let-in=([A-Za-z0-9_-]{16,})$/.exec(fragment)?.[1] ?? null;
}

export const NOT_LET_IN =
  'This phone is not let in. On the screen by the pans, open Settings, Phones, and scan the code there.';

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
    return ((await answer.json()) as { why?: string }).why ?? NOT_LET_IN;
  } catch {
    return 'The program could not be reached: is this phone in the same network, and the program running?';
  }
}
