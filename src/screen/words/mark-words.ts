// A mark in one short line, for the log of marks and the flags on a chart.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { MARK_KINDS } from '../../language/mark-kinds.ts';
import { isFirstPour } from '../../protocol/first-pour.ts';
import { isHeardNote } from '../../protocol/sound-check.ts';
import { hostWords } from '../language/host-words.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { depth, exactStrength, mass, pressure, temperature, volume } from './amounts.ts';
import { panName, probeName } from './pan-words.ts';
import type { Header, Mark, MarkKind, MarkView, Now, Settings } from '../client/types.ts';

/** What a kind of mark is called; `first` where it is a pour into an empty pan. */
export function kindWords(kind: MarkKind, first = false): string {
  return say(first && kind === 'top-up' ? 'marks.filling' : MARK_KINDS[kind]);
}

function flameWords(level: number): string {
  if (level <= 0) return say('mark.flame.off');
  if (level < 0.4) return say('mark.flame.low');
  return level < 0.8 ? say('mark.flame.half') : say('mark.flame.full');
}

/** How much, how strong and how warm, as far as somebody said it: "2.0 L, 0.9 °Bx, 4.4 °C". */
function amountOf(
  mark: {
    litres?: number | undefined;
    all?: boolean | undefined;
    brix?: number | undefined;
    celsius?: number | undefined;
  },
  settings: Settings,
): string {
  const { litres, brix, celsius } = mark;
  const parts = [
    ...(mark.all === true ? [say('mark.all')] : []),
    ...(litres === undefined || mark.all === true ? [] : [say('mark.amount', { amount: volume(litres, settings) })]),
    ...(brix === undefined ? [] : [exactStrength(brix, settings)]),
    ...(celsius === undefined ? [] : [temperature(celsius, settings)]),
  ];
  return parts.join(', ');
}

function intoWords(mark: Extract<Mark, { kind: 'transfer' }>, header: Header | null, settings: Settings): string {
  const pan = panName(header, mark.to);
  if (mark.all === true) return say('mark.all_into', { pan });
  const amount = mark.litres === undefined ? '' : volume(mark.litres, settings);
  return say('mark.into', { amount, pan }).trim();
}

/** As it was read, with the sample's warmth where that was said: "28 °Bx at 82.2 °C". */
function densityWords(mark: Extract<Mark, { kind: 'density' }>, settings: Settings): string {
  const read = shownByInstrument(mark);
  return mark.celsius === undefined
    ? read
    : say('mark.read_at', { read, temperature: temperature(mark.celsius, settings) });
}

function shownByInstrument(mark: Extract<Mark, { kind: 'density' }>): string {
  if (mark.brix !== undefined) return localDigits(`${mark.brix}\u00a0°Bx`);
  if (mark.baume !== undefined) return localDigits(`${mark.baume} °Bé`);
  return mark.sg === undefined ? '' : say('mark.gravity', { sg: localDigits(String(mark.sg)) });
}

const PRESSURE_FROM = {
  station: 'mark.pressure.station',
  altimeter: 'mark.pressure.altimeter',
  'sea-level': 'mark.pressure.sea_level',
} as const;

function pressureWords(mark: Extract<Mark, { kind: 'pressure' }>, settings: Settings): string {
  return say(PRESSURE_FROM[mark.at ?? 'station'], { pressure: pressure(mark.hpa, settings) });
}

function details(mark: Mark, header: Header | null, settings: Settings): string {
  switch (mark.kind) {
    case 'top-up':
    case 'draw-off':
      return amountOf(mark, settings);
    case 'transfer':
      return intoWords(mark, header, settings);
    case 'flame':
      return flameWords(mark.level);
    case 'pressure':
      return pressureWords(mark, settings);
    case 'water-check':
      return mark.probe === undefined
        ? say('mark.checked_by_hand', { temperature: temperature(mark.celsius, settings) })
        : say('mark.checked', {
            probe: probeName(header, mark.probe),
            temperature: temperature(mark.celsius, settings),
          });
    case 'density':
      return densityWords(mark, settings);
    case 'depth':
      return depth(mark.mm, settings);
    case 'reading':
      return temperature(mark.celsius, settings);
    case 'move-probe':
      return mark.pan === null
        ? say('mark.probe_out', { probe: probeName(header, mark.probe) })
        : say('mark.probe_to', { probe: probeName(header, mark.probe), pan: panName(header, mark.pan) });
    case 'fuel':
      return mass(mark.kg, settings);
    case 'remind':
      return say('mark.remind_in', { text: mark.text, time: lengthOfTime(mark.seconds) });
    case 'note':
      return say('mark.noted', { text: isHeardNote(mark) ? hostWords(mark.text) : mark.text });
    case 'no-top-up':
    case 'withdraw':
      return '';
  }
}

/** The pan that a mark is about, or null. */
export function panOfMark(mark: Mark): string | null {
  if ('pan' in mark) return mark.pan ?? null;
  return mark.kind === 'transfer' ? mark.from : null;
}

/** A note among those of its boil, as far as its words hang on them. */
type Noted = Pick<MarkView, 'mark' | 'at' | 't'>;
type Boil = Pick<Now, 'header' | 'marks'>;

/** "Top-up 2.0 L", where its pan is told already; "Filling 2.0 L" of a pour into an empty pan. */
export const markWithin = (each: Noted, { header, marks }: Boil, settings: Settings): string =>
  wordsWithin(each.mark, header, settings, isFirstPour(each, marks));

const wordsWithin = (mark: Mark, header: Header | null, settings: Settings, first: boolean): string =>
  `${kindWords(mark.kind, first)} ${details(mark, header, settings)}`.trim();

/** "Back pot: Top-up 2.0 L"; `first` where it is a pour into an empty pan. */
export function markWords(mark: Mark, header: Header | null, settings: Settings, first = false): string {
  const pan = mark.kind === 'move-probe' ? null : panOfMark(mark);
  const words = wordsWithin(mark, header, settings, first);
  return pan === null ? words : say('mark.of_pan', { pan: panName(header, pan), words });
}

/** The same of a note of the boil: the others tell whether it filled an empty pan. */
export const notedWords = (each: Noted, { header, marks }: Boil, settings: Settings): string =>
  markWords(each.mark, header, settings, isFirstPour(each, marks));

/** "28 °Bx at 82.2 °C", and what a density reading came to where that is another number: "…, so 35.2 °Bx". */
export function markViewWords(each: Noted & Pick<MarkView, 'cameTo'>, boil: Boil, settings: Settings): string {
  const { mark, cameTo } = each;
  const words = notedWords(each, boil, settings);
  if (mark.kind !== 'density' || cameTo === null) return words;
  const isAsShown = mark.brix !== undefined && Math.abs(mark.brix - cameTo) < SAME_BRIX;
  return isAsShown ? words : say('mark.came_to', { words, strength: exactStrength(cameTo, settings) });
}

/** So little is no other number, °Bx. */
const SAME_BRIX = 0.25;
