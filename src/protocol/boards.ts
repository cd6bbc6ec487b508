// Says of a board what a person knows it by, and which pans it watches, alike on the screen and in what goes out another way.
import type { Header, PanSetup } from '../core/boil/entries.ts';

/** What the system lists of a board. */
interface ListedBoard {
  maker: string | null;
  serialNumber: string | null;
  /** Other ports whose board gives the same serial number. */
  alike: readonly string[];
}

/** A long serial number is told by its end, where boards of one maker differ. */
const WHOLE_SERIAL = 8;
const SERIAL_END = 4;
const LONGEST_WORD = 24;

/**
 * A name for a board that still tells which it was when its port is called otherwise: "Tarn Works 7353", by its maker and
 * the end of its serial number; where no serial number is its own, the name that its port has: "ttyUSB0".
 * @param listed what the system says of the board; undefined for a path that it does not list
 */
export function boardName(path: string, listed?: ListedBoard): string {
  const port = portName(path);
  const serial = listed === undefined || listed.alike.length > 0 ? '' : plain(listed.serialNumber ?? '');
  if (serial === '') return port;
  const end = serial.length > WHOLE_SERIAL ? serial.slice(-SERIAL_END) : serial;
  const maker = plain((listed?.maker ?? '').replace(/\(.*\)/, ''));
  return `${maker === '' ? port : maker} ${end}`;
}

/** "ttyUSB0" of "/dev/ttyUSB0", "pts 3" of "/dev/pts/3", "COM3". */
function portName(path: string): string {
  const parts = path.split(/[\\/]+/).filter((part) => /\w/.test(part));
  const last = parts.slice(/^\d+$/.test(parts.at(-1) ?? '') ? -2 : -1).join(' ');
  return plain(last) || path;
}

/** Without what would part a sentence or a list. */
const plain = (words: string): string =>
  words
    .replace(/[^\p{L}\p{N} _.-]+/gu, ' ')
    .replace(/ {2,}/g, ' ')
    .trim()
    .slice(0, LONGEST_WORD)
    .trim();

/** A setup may still number its boards by letters, which nobody was told. */
const LETTER = /^[A-Z]\d*$/;

/** What the board of a port is called: by the port's id, which names it; where that is a letter alone, by the port's path. */
export const portCalled = ({ id, path }: { id: string; path?: string | undefined }): string =>
  LETTER.test(id) && path !== undefined ? boardName(path) : id;

/** As portCalled, of a port by its id; the id itself where the header has no such port. */
export const boardCalled = (header: Header | null, port: string): string =>
  portCalled(header?.ports?.find(({ id }) => id === port) ?? { id: port });

/** The pans that a probe of the port watches; none for a port that the header does not have. */
export function pansOfBoard({ probes = [], pans = [] }: Header, port: string): PanSetup[] {
  const own = probes.flatMap((probe) => (probe.port === port ? [probe.id] : []));
  return pans.filter(({ probe }) => [probe ?? []].flat().some((id) => own.includes(id)));
}
