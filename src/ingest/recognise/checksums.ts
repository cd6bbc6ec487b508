// Finds checksums at the ends of lines that carry no mark of their own: `=9C`, `/5D`, `|AD`, `;4F2A`.
const LAST = /(?<=[=/|,; ~:] ?)(?:[0-9A-F]{2}|[0-9A-F]{4}|[0-9A-F]{8})(?=[\s\x00-\x1f]*$)/i;
/** Of 16 lines with two such digits each, only one in 1,800 has no letter in any. */
const FEW_LINES = 6;
const MOST_LINES = 0.6;

/**
 * The lines with blanks for the checksums at their ends, each character else in its place. Hexadecimal digits of one
 * length end most lines, letters are among them, and they are rarely the same twice in a row.
 */
export function withoutChecksums(lines: readonly string[]): string[] {
  const ends = lines.map((line) => LAST.exec(line));
  const texts = ends.flatMap((end) => (end === null ? [] : [end[0]]));
  const isOneLength = new Set(texts.map((text) => text.length)).size === 1;
  const mixed = texts.filter((text) => /[A-F]/i.test(text) && !/^[A-Z][A-Z]+$/i.test(text)).length;
  const changes = texts.filter((text, at) => at > 0 && text !== texts[at - 1]).length;
  const areChecksums =
    texts.length >= FEW_LINES &&
    texts.length >= lines.length * MOST_LINES &&
    isOneLength &&
    mixed >= texts.length / 4 &&
    changes >= (texts.length - 1) / 2;
  if (!areChecksums) return [...lines];
  return lines.map((line, at) => {
    const end = ends[at];
    if (end === null || end === undefined) return line;
    return line.slice(0, end.index) + ' '.repeat(end[0].length) + line.slice(end.index + end[0].length);
  });
}
