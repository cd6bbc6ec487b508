// A mark in one line for the log of a report.
import type { Header, Mark } from '../../core/boil/entries.ts';
import {
  formatLength,
  formatMass,
  formatPressure,
  formatTemperature,
  formatVolume,
} from '../../core/quantities/format.ts';
import type { Settings } from '../../protocol/messages.ts';

/** "Back pot: top-up, 2.0 L". */
export function markLine(mark: Mark, header: Header, settings: Settings): string {
  const pan = 'pan' in mark && mark.kind !== 'move-probe' ? mark.pan : undefined;
  const said = [kindWords(mark), ...details(mark, header, settings)].filter((part) => part !== '').join(', ');
  return pan === undefined || pan === null ? capital(said) : `${panTitle(header, pan)}: ${said}`;
}

export function panTitle(header: Header, pan: string): string {
  const name = header.pans?.find(({ id }) => id === pan)?.name;
  return name === undefined || name === '' ? pan : name;
}

function kindWords(mark: Mark): string {
  switch (mark.kind) {
    case 'transfer':
      return 'poured together';
    case 'pressure':
      return 'air pressure';
    case 'water-check':
      return 'check in boiling water';
    case 'reading':
      return 'read by hand';
    case 'move-probe':
      return 'probe moved';
    case 'fuel':
      return 'fuel left';
    case 'no-top-up':
      return 'nothing was poured';
    case 'remind':
      return 'reminder';
    case 'withdraw':
      return 'a mark was taken back';
    default:
      return mark.kind;
  }
}

function details(mark: Mark, header: Header, settings: Settings): string[] {
  switch (mark.kind) {
    case 'top-up':
      return [...amount(mark, settings), ...strength(mark.brix)];
    case 'draw-off':
      return [...amount(mark, settings), ...strength(mark.brix)];
    case 'transfer':
      return [...amount(mark, settings), `from ${panTitle(header, mark.from)} into ${panTitle(header, mark.to)}`];
    case 'flame':
      return [mark.level === 0 ? 'off' : `${Math.round(mark.level * 100)} %`];
    case 'pressure':
      return [formatPressure(mark.hpa, settings.pressure)];
    case 'water-check':
      return [mark.probe, formatTemperature(mark.celsius, settings.temperature)];
    case 'density':
      return densityParts(mark, settings);
    case 'depth':
      return [formatLength(mark.mm, settings.length)];
    case 'reading':
      return [formatTemperature(mark.celsius, settings.temperature)];
    case 'move-probe':
      return [mark.probe, mark.pan === null ? 'into the air' : `into ${panTitle(header, mark.pan)}`];
    case 'fuel':
      return [formatMass(mark.kg, settings.mass)];
    case 'remind':
    case 'note':
      return [mark.text];
    default:
      return [];
  }
}

function amount(
  { litres, all }: { litres?: number | undefined; all?: boolean | undefined },
  { volume }: Settings,
): string[] {
  return [...(all === true ? ['all of it'] : []), ...(litres === undefined ? [] : [formatVolume(litres, volume)])];
}

const strength = (brix: number | undefined): string[] => (brix === undefined ? [] : [`${brix} °Bx`]);

/** As it was read, in the scale of the instrument. */
function densityParts({ brix, baume, sg, celsius }: Extract<Mark, { kind: 'density' }>, settings: Settings): string[] {
  return [
    ...strength(brix),
    ...(baume === undefined ? [] : [`${baume} °Bé`]),
    ...(sg === undefined ? [] : [`specific gravity ${sg}`]),
    ...(celsius === undefined ? [] : [`at ${formatTemperature(celsius, settings.temperature)}`]),
  ];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
