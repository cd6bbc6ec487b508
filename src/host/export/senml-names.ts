// Names of SenML records: any text in the few characters that RFC 8428, 4.5.1, allows, and back.
import { createHash } from 'node:crypto';
import type { Header } from '../../core/boil/entries.ts';

/** What our packs' names begin with. */
export const OWN_PREFIX = 'panwarden:';

/**
 * "panwarden:2027-04-18-sundays-run:0f3a…:": the boil's id, and a figure of its header that tells boils of two notebooks
 * apart, for a name has to be the only one of its kind anywhere.
 */
export function baseNameOf(boil: string, header: Header): string {
  const figure = createHash('sha256').update(JSON.stringify(header)).digest('hex').slice(0, 16);
  return `${OWN_PREFIX}${plainName(boil)}:${figure}:`;
}

/** Letters and digits of ASCII, "-" and "." stay; any other character is its code point in hex between two "_". */
export function plainName(text: string): string {
  return text.replaceAll(/[^A-Za-z0-9.-]/gu, (character) => `_${character.codePointAt(0)?.toString(16)}_`);
}

/** What plainName was given; text that it cannot have made comes back as it is. */
export function nameOfPlain(plain: string): string {
  return plain.replaceAll(/_([0-9a-f]{1,6})_/gu, (whole, hex: string) => {
    const code = Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
