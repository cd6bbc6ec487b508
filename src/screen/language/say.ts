// Says a message of the catalogue in the language of the screen, with its values put in.
import type { ComponentChildren, VNode } from 'preact';
import { pointedOnce } from '../../language/tongue.ts';
import type { MessageKey, Values } from '../../language/tongue.ts';
import { spoken } from './language.ts';

export type { MessageKey } from '../../language/tongue.ts';

type Rich = Readonly<Record<string, string | number | VNode | ((words: ComponentChildren[]) => VNode)>>;

/** The message in the language of the screen. Throws when a value that it names is not given. */
export const say = (key: MessageKey, values?: Values): string => spoken().say(key, values);

/** The parts one after another, set apart as the language sets them: "a; b". Empty where there is none. */
export const setApart = (parts: readonly string[]): string =>
  parts.length === 0 ? '' : parts.reduce((some, more) => say('words.apart', { some, more }));

/** As `say`, for a message with marked words (`<b>…</b>`) or with parts that are drawn. */
export const sayDrawn = (key: MessageKey, values: Rich): ComponentChildren => {
  const said = spoken()
    .formatOf(key)
    .format<ComponentChildren>(values as never) as ComponentChildren;
  const once = (part: ComponentChildren): ComponentChildren => (typeof part === 'string' ? pointedOnce(part) : part);
  return Array.isArray(said) ? said.map(once) : once(said);
};
