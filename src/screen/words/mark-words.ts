// A mark in one short line, for the log of marks and the flags on a chart.
import { depth, mass, pressure, temperature, volume } from './amounts.ts';
import { lengthOfTime } from './clock.ts';
import { panName, probeName } from './pan-words.ts';
import type { Header, Mark, MarkKind, Settings } from '../client/types.ts';

const KIND_WORDS: Record<MarkKind, string> = {
  'top-up': 'Top-up',
  transfer: 'Poured together',
  'draw-off': 'Draw-off',
  flame: 'Flame',
  pressure: 'Air pressure',
  'water-check': 'Check in boiling water',
  density: 'Density',
  depth: 'Depth',
  reading: 'Read by hand',
  'move-probe': 'Probe moved',
  fuel: 'Fuel left',
  'no-top-up': 'Nothing was poured',
  remind: 'Reminder',
  note: 'Note',
  withdraw: 'Taken back',
};

export function kindWords(kind: MarkKind): string {
  return KIND_WORDS[kind];
}

function flameWords(level: number): string {
  if (level <= 0) return 'off';
  if (level < 0.4) return 'low';
  return level < 0.8 ? 'half' : 'full';
}

function amountOf(mark: { litres?: number | undefined; all?: boolean | undefined }, settings: Settings): string {
  if (mark.all === true) return 'all of it';
  return mark.litres === undefined ? '' : volume(mark.litres, settings);
}

function densityWords(mark: Extract<Mark, { kind: 'density' }>): string {
  if (mark.brix !== undefined) return `${mark.brix} °Bx`;
  if (mark.baume !== undefined) return `${mark.baume} °Bé`;
  return mark.sg === undefined ? '' : `specific gravity ${mark.sg}`;
}

const PRESSURE_FROM = { station: '', altimeter: " by an airfield's setting", 'sea-level': ' at sea level' } as const;

function pressureWords(mark: Extract<Mark, { kind: 'pressure' }>, settings: Settings): string {
  return `${pressure(mark.hpa, settings)}${PRESSURE_FROM[mark.at ?? 'station']}`;
}

function details(mark: Mark, header: Header | null, settings: Settings): string {
  switch (mark.kind) {
    case 'top-up':
    case 'draw-off':
      return amountOf(mark, settings);
    case 'transfer':
      return `${amountOf(mark, settings)} into ${panName(header, mark.to)}`.trim();
    case 'flame':
      return flameWords(mark.level);
    case 'pressure':
      return pressureWords(mark, settings);
    case 'water-check':
      return `${probeName(header, mark.probe)}: ${temperature(mark.celsius, settings)}`;
    case 'density':
      return densityWords(mark);
    case 'depth':
      return depth(mark.mm, settings);
    case 'reading':
      return temperature(mark.celsius, settings);
    case 'move-probe':
      return `${probeName(header, mark.probe)} ${mark.pan === null ? 'hangs in the air' : `to ${panName(header, mark.pan)}`}`;
    case 'fuel':
      return mass(mark.kg, settings);
    case 'remind':
      return `${mark.text}, in ${lengthOfTime(mark.seconds)}`;
    case 'note':
      return mark.text;
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

/** "Back pot: Top-up 2.0 L". */
export function markWords(mark: Mark, header: Header | null, settings: Settings): string {
  const pan = mark.kind === 'move-probe' ? null : panOfMark(mark);
  const who = pan === null ? '' : `${panName(header, pan)}: `;
  return `${who}${kindWords(mark.kind)} ${details(mark, header, settings)}`.trim();
}
