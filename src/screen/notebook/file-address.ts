// Where the files are that the host makes for somebody to take away: they are written in the language of the screen.
import { language } from '../language/language.ts';

/** "export/2027-04-18-first-boil.pdf?paper=a4&language=fr". */
export function fileAddress(name: string, asked: Readonly<Record<string, string>> = {}): string {
  return `export/${encodeURIComponent(name)}?${new URLSearchParams({ ...asked, language: language.value })}`;
}
