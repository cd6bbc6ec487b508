// Which language the window's own words are in: the one of the settings, else the system's as the page hears of it.
import { app } from 'electron';
import { languages } from '../src/host/languages.ts';
import { hostWords as toldIn } from '../src/language/host-words.ts';
import type { MessageKey, Tongue, Values } from '../src/language/tongue.ts';
import type { HostMessage } from '../src/protocol/messages.ts';

let wish = 'system';

/** Before Electron is ready it knows no language; the runtime's own does then. */
const systemLanguage = (): string =>
  app.isReady() ? app.getLocale() : new Intl.DateTimeFormat().resolvedOptions().locale;

/** The language that is spoken now. */
export const spoken = (): Tongue => languages().tongueFor(wish, [systemLanguage()]);

/** Hears which language was chosen. */
export function hearLanguage(message: HostMessage): void {
  if (message.kind === 'hello' || message.kind === 'settings') wish = message.settings.language;
}

/** A message of the catalogue. */
export const say = (key: MessageKey, values?: Values): string => spoken().say(key, values);

/** What the host wrote down in English. */
export const hostWords = (sentence: string): string => toldIn(sentence, spoken());
