// Says a message of the catalogue in the language of the screen, with its values put in.
import type { ComponentChildren, VNode } from 'preact';
import { IntlMessageFormat } from 'intl-messageformat';
import { language, patternOf } from './language.ts';
import type { MessageKey } from './language.ts';

export type { MessageKey } from './language.ts';

type Values = Readonly<Record<string, string | number>>;
type Rich = Readonly<Record<string, string | number | VNode | ((words: ComponentChildren[]) => VNode)>>;

const formats = new Map<string, IntlMessageFormat>();

/** Read once for each language: a card is drawn many times a minute. */
function formatOf(key: MessageKey): IntlMessageFormat {
  const tag = language.value;
  const name = `${tag} ${key}`;
  let format = formats.get(name);
  if (format === undefined) formats.set(name, (format = new IntlMessageFormat(patternOf(key, tag), tag)));
  return format;
}

/** The message in the language of the screen. Throws when a value that it names is not given. */
export function say(key: MessageKey, values?: Values): string {
  const text = formatOf(key).format<never>(values);
  return typeof text === 'string' ? text : String(text);
}

/** As `say`, for a message with marked words (`<b>…</b>`) or with parts that are drawn. */
export function sayDrawn(key: MessageKey, values: Rich): ComponentChildren {
  return formatOf(key).format<ComponentChildren>(values as never) as ComponentChildren;
}
