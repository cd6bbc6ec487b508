// A mark in one line for the log of a report.
import { isHeardNote } from '../../protocol/sound-check.ts';
import type { Header, Mark } from '../../core/boil/entries.ts';
import {
  formatLength,
  formatMass,
  formatPressure,
  formatTemperature,
  formatVolume,
} from '../../core/quantities/format.ts';
import { MARK_KINDS } from '../../language/mark-kinds.ts';
import { hostWords } from '../../language/host-words.ts';
import type { MessageKey, Tongue } from '../../language/tongue.ts';
import type { Settings } from '../../protocol/messages.ts';

/** On paper it is told of a note that was taken back, not of a press. */
const KIND_WORDS: Record<Mark['kind'], MessageKey> = { ...MARK_KINDS, withdraw: 'paper.mark.withdraw' };

interface MarkWriting {
  header: Header;
  settings: Settings;
  tongue: Tongue;
  /** It is a pour into an empty pan. */
  first?: boolean;
}

/** "Back pot: top-up, 2.0 L". */
export function markLine(mark: Mark, { header, settings, tongue, first = false }: MarkWriting): string {
  const pan = 'pan' in mark && mark.kind !== 'move-probe' ? mark.pan : undefined;
  if (mark.kind === 'transfer' && mark.all === true && mark.litres === undefined)
    return tongue.say('paper.mark.poured_all', poured(mark, header));
  // That it is a note stands before it.
  if (mark.kind === 'note' && (pan === undefined || pan === null)) return noteText(mark, tongue);
  const words = [
    tongue.say(first ? 'marks.filling' : KIND_WORDS[mark.kind]),
    ...details(mark, header, settings, tongue),
  ]
    .filter((part) => part !== '')
    .join(', ');
  if (pan === undefined || pan === null) return words;
  return tongue.say('mark.of_pan', { pan: panTitle(header, pan), words: small(words, tongue) });
}

/** What a person called the pan, else its id. */
export function panTitle(header: Header, pan: string): string {
  const name = header.pans?.find(({ id }) => id === pan)?.name;
  return name === undefined || name === '' ? pan : name;
}

function details(mark: Mark, header: Header, settings: Settings, tongue: Tongue): string[] {
  switch (mark.kind) {
    case 'top-up':
    case 'draw-off':
      return [
        ...amount(mark, settings, tongue),
        ...strength(mark.brix, tongue),
        ...(mark.kind === 'top-up' ? warmth(mark.celsius, settings, tongue) : []),
      ];
    case 'transfer':
      return [...amount(mark, settings, tongue), tongue.say('paper.mark.poured', poured(mark, header))];
    case 'flame':
      return [mark.level === 0 ? tongue.say('mark.flame.off') : `${Math.round(mark.level * 100)} %`];
    case 'pressure':
      return [tongue.amount(formatPressure(mark.hpa, settings.pressure))];
    case 'water-check':
      return [
        mark.probe ?? small(tongue.say('mark.hand_thermometer'), tongue),
        tongue.amount(formatTemperature(mark.celsius, settings.temperature)),
      ];
    case 'density':
      return densityParts(mark, settings, tongue);
    case 'depth':
      return [tongue.amount(formatLength(mark.mm, settings.length))];
    case 'reading':
      return [tongue.amount(formatTemperature(mark.celsius, settings.temperature))];
    case 'move-probe':
      return [
        mark.probe,
        mark.pan === null
          ? tongue.say('paper.mark.into_air')
          : tongue.say('paper.mark.into', { pan: panTitle(header, mark.pan) }),
      ];
    case 'fuel':
      return [tongue.amount(formatMass(mark.kg, settings.mass))];
    case 'note':
      return [noteText(mark, tongue)];
    case 'remind':
      return [mark.text];
    default:
      return [];
  }
}

const poured = ({ from, to }: Extract<Mark, { kind: 'transfer' }>, header: Header): { from: string; to: string } => ({
  from: panTitle(header, from),
  to: panTitle(header, to),
});

/** What the program itself wrote is in the language of the paper. */
const noteText = (mark: Extract<Mark, { kind: 'note' }>, tongue: Tongue): string =>
  isHeardNote(mark) ? hostWords(mark.text, tongue) : mark.text;

function amount(
  { litres, all }: { litres?: number | undefined; all?: boolean | undefined },
  { volume }: Settings,
  tongue: Tongue,
): string[] {
  return [
    ...(all === true ? [tongue.say('mark.all')] : []),
    ...(litres === undefined ? [] : [tongue.amount(formatVolume(litres, volume))]),
  ];
}

const strength = (brix: number | undefined, tongue: Tongue): string[] =>
  brix === undefined ? [] : [tongue.digits(`${brix} °Bx`)];

const warmth = (celsius: number | undefined, settings: Settings, tongue: Tongue): string[] =>
  celsius === undefined
    ? []
    : [tongue.say('paper.mark.at', { temperature: tongue.amount(formatTemperature(celsius, settings.temperature)) })];

/** As it was read, in the scale of the instrument. */
function densityParts(
  { brix, baume, sg, celsius }: Extract<Mark, { kind: 'density' }>,
  settings: Settings,
  tongue: Tongue,
): string[] {
  return [
    ...strength(brix, tongue),
    ...(baume === undefined ? [] : [tongue.digits(`${baume} °Bé`)]),
    ...(sg === undefined ? [] : [tongue.say('mark.gravity', { sg: tongue.digits(String(sg)) })]),
    ...warmth(celsius, settings, tongue),
  ];
}

/** As it stands within a line: the catalogue has it with a capital. */
const small = (text: string, { tag }: Tongue): string => text.slice(0, 1).toLocaleLowerCase(tag) + text.slice(1);
