// Trades the one-time token of the page's address for a session cookie, and takes the token out of the address.
import { say } from '../language/say.ts';

/** The token in a fragment such as `#token=abc`, or null when the fragment is a route or empty. */
export function tokenOfFragment(fragment: string): string | null {
  const found = /^#(?:token=)?([A-Za-z0-9_-]{16,})$/.exec(fragment);
  return found?.[1] ?? null;
}

/**
 * Exchanges the token, once. Returns null when all is well (also when there was no token: the cookie
 * may still be good), else a sentence for the person.
 */
export async function exchangeToken(): Promise<string | null> {
  const token = tokenOfFragment(location.hash);
  if (token === null) return null;
  history.replaceState(null, '', '#/pans');
  try {
    const answer = await fetch('session', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ token }),
    });
    if (answer.ok) return null;
  } catch {
    return say('client.not_reached');
  }
  return say('client.used_up');
}
