// A pan's vessel in the form of a boil: its shape with the sizes that shape needs, or a table of measured fills.
import type { Pan, Settings } from '../client/types.ts';
import { litresOf, litresShown, mmOf, mmShown, typedNumber, unitSymbols } from '../words/amounts.ts';

type Vessel = NonNullable<Pan['vessel']>;
export type Shape = '' | Vessel['shape'];

/** A depth and how much is then in the vessel, as typed in the units shown. */
export interface FillRow {
  depth: string;
  volume: string;
}

/** Every size is as typed, in the unit shown; those that the shape does not need are kept for when it is chosen again. */
export interface VesselDraft {
  shape: Shape;
  /** Round: across; sloped: across the bottom. */
  diameter: string;
  length: string;
  width: string;
  /** Sloped: across the top, and how high the wall is. */
  top: string;
  height: string;
  fill: FillRow[];
}

export type Size = Exclude<keyof VesselDraft, 'shape' | 'fill'>;

const EMPTY_ROW: FillRow = { depth: '', volume: '' };
const EMPTY: VesselDraft = {
  shape: '',
  diameter: '',
  length: '',
  width: '',
  top: '',
  height: '',
  fill: [EMPTY_ROW, EMPTY_ROW],
};

/** The sizes that a shape needs, in the order in which they are asked. */
export const SIZES: Record<Shape, readonly { size: Size; label: string }[]> = {
  '': [],
  round: [{ size: 'diameter', label: 'Width across' }],
  rectangular: [
    { size: 'length', label: 'Length' },
    { size: 'width', label: 'Width' },
  ],
  'round-sloped': [
    { size: 'diameter', label: 'Width across the bottom' },
    { size: 'top', label: 'Width across the top' },
    { size: 'height', label: 'Height between the two' },
  ],
  measured: [],
};

const plain = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

export function vesselDraft(vessel: Pan['vessel'], settings: Settings): VesselDraft {
  if (vessel === undefined) return EMPTY;
  const size = (mm: number): string => plain(mmShown(mm, settings), 2);
  const { shape } = vessel;
  if (shape === 'round') return { ...EMPTY, shape, diameter: size(vessel.diameter_mm) };
  if (shape === 'rectangular') return { ...EMPTY, shape, length: size(vessel.length_mm), width: size(vessel.width_mm) };
  if (shape === 'round-sloped') {
    const { bottom_diameter_mm: bottom, top_diameter_mm: top, height_mm: height } = vessel;
    return { ...EMPTY, shape, diameter: size(bottom), top: size(top), height: size(height) };
  }
  const fill = vessel.fill.map(({ mm, litres }) => ({
    depth: size(mm),
    volume: plain(litresShown(litres, settings), 3),
  }));
  return { ...EMPTY, shape, fill };
}

/** One more row to measure. */
export const withRow = (draft: VesselDraft): VesselDraft => ({ ...draft, fill: [...draft.fill, EMPTY_ROW] });

/** A table is two rows at least. */
export const LEAST_ROWS = 2;

/** What is wrong with the vessel, without the pan's name; null when it can be used. */
export function problemInVessel(draft: VesselDraft, settings: Settings): string | null {
  const [least, greatest] = settings.length === 'mm' ? [50, 5000] : [2, 200];
  for (const { size, label } of SIZES[draft.shape]) {
    const what = label.charAt(0).toLowerCase() + label.slice(1);
    if (draft[size].trim() === '') return `${what}: type a number.`;
    const value = typedNumber(draft[size]);
    if (value === null) return `${what}: “${draft[size]}” is no plain number.`;
    if (value < least || value > greatest) return `${what}: ${draft[size]} is outside of ${least} to ${greatest}.`;
  }
  return draft.shape === 'measured' ? problemInFill(draft.fill, settings) : null;
}

function problemInFill(fill: readonly FillRow[], settings: Settings): string | null {
  const rows = fill.map(({ depth, volume }) => ({ depth: typedNumber(depth), volume: typedNumber(volume) }));
  for (const [i, { depth, volume }] of rows.entries()) {
    if (depth === null || volume === null || depth < 0 || volume < 0)
      return `fill table, row ${i + 1}: type a depth in ${unitSymbols(settings).length} and how many ${unitSymbols(settings).volume} are in it then.`;
    const before = rows[i - 1];
    const rises = before === undefined || (depth > (before.depth ?? 0) && volume > (before.volume ?? 0));
    if (!rises) return `fill table, row ${i + 1}: both numbers have to be more than in the row above.`;
  }
  return rows.length < LEAST_ROWS ? 'fill table: measure at least two depths.' : null;
}

/** The vessel of a checked draft. */
export function vesselOf(draft: VesselDraft, settings: Settings): Pan['vessel'] {
  const mm = (typed: string): number => mmOf(typedNumber(typed) ?? 0, settings);
  const { shape } = draft;
  switch (shape) {
    case '':
      return undefined;
    case 'round':
      return { shape, diameter_mm: mm(draft.diameter) };
    case 'rectangular':
      return { shape, length_mm: mm(draft.length), width_mm: mm(draft.width) };
    case 'round-sloped':
      return {
        shape,
        bottom_diameter_mm: mm(draft.diameter),
        top_diameter_mm: mm(draft.top),
        height_mm: mm(draft.height),
      };
    case 'measured': {
      const litres = (typed: string): number => litresOf(typedNumber(typed) ?? 0, settings);
      return { shape, fill: draft.fill.map((row) => ({ mm: mm(row.depth), litres: litres(row.volume) })) };
    }
  }
}
