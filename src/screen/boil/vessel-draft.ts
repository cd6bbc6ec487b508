// A pan's vessel in the form of a boil: its shape with the sizes that shape needs, or a table of measured fills.
import type { Pan, Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { litresOf, litresShown, mmOf, mmShown, noNumber, outside, typedNumber, unitSymbols } from '../words/amounts.ts';

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
  /** Sloped: across the top. */
  top: string;
  /** How high the wall is; sloped needs it. */
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

interface SizeAsked {
  size: Size;
  label: MessageKey;
  /** The vessel is of use without it. */
  isOptional?: true;
}

const WALL: SizeAsked = { size: 'height', label: 'boil.vessel.wall', isOptional: true };

/** The sizes of a shape, in the order in which they are asked. */
export const SIZES: Record<Shape, readonly SizeAsked[]> = {
  '': [],
  round: [{ size: 'diameter', label: 'boil.vessel.across' }, WALL],
  rectangular: [{ size: 'length', label: 'boil.vessel.length' }, { size: 'width', label: 'boil.vessel.width' }, WALL],
  'round-sloped': [
    { size: 'diameter', label: 'boil.vessel.across_bottom' },
    { size: 'top', label: 'boil.vessel.across_top' },
    { size: 'height', label: 'boil.vessel.between' },
  ],
  measured: [],
};

/** A vessel of a header as it stands in the form, in the units shown; of none, one without a shape. */
export function vesselDraft(vessel: Pan['vessel'], settings: Settings): VesselDraft {
  if (vessel === undefined) return EMPTY;
  const size = (mm: number): string => inField(mmShown(mm, settings), 2);
  const { shape } = vessel;
  const wall = (mm: number | undefined): string => (mm === undefined ? '' : size(mm));
  if (shape === 'round') return { ...EMPTY, shape, diameter: size(vessel.diameter_mm), height: wall(vessel.height_mm) };
  if (shape === 'rectangular') {
    const { length_mm: length, width_mm: width, height_mm: height } = vessel;
    return { ...EMPTY, shape, length: size(length), width: size(width), height: wall(height) };
  }
  if (shape === 'round-sloped') {
    const { bottom_diameter_mm: bottom, top_diameter_mm: top, height_mm: height } = vessel;
    return { ...EMPTY, shape, diameter: size(bottom), top: size(top), height: size(height) };
  }
  const fill = vessel.fill.map(({ mm, litres }) => ({
    depth: size(mm),
    volume: inField(litresShown(litres, settings), 3),
  }));
  return { ...EMPTY, shape, fill };
}

/** One more row to measure. */
export const withRow = (draft: VesselDraft): VesselDraft => ({ ...draft, fill: [...draft.fill, EMPTY_ROW] });

/** A table is two rows at least. */
export const LEAST_ROWS = 2;

const isBlank = (typed: string): boolean => typed.trim() === '';

/** Whether a size that the shape needs is still to be typed. */
export const isVesselUnfinished = ({ shape, fill, ...sizes }: VesselDraft): boolean =>
  SIZES[shape].some(({ size, isOptional }) => isOptional !== true && isBlank(sizes[size])) ||
  (shape === 'measured' && fill.some(({ depth, volume }) => isBlank(depth) || isBlank(volume)));

const begunSmall = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** What is wrong with what was typed for one size, which is called `what` in the sentence; null for nothing, and where nothing is typed. */
export function problemInSize(draft: VesselDraft, size: Size, what: string, settings: Settings): string | null {
  if (isBlank(draft[size])) return null;
  const [narrowest, greatest] = settings.length === 'mm' ? [50, 5000] : [2, 200];
  const lowest = settings.length === 'mm' ? 10 : 0.5;
  const least = size === 'height' ? lowest : narrowest;
  const value = typedNumber(draft[size]);
  if (value === null) return noNumber(what, draft[size]);
  if (value >= least && value <= greatest) return null;
  return outside({ field: what, typed: draft[size], least, greatest, unit: unitSymbols(settings).length });
}

/** What is wrong with the vessel, without the pan's name; null when it can be used. */
export function problemInVessel(draft: VesselDraft, settings: Settings): string | null {
  for (const { size, label, isOptional } of SIZES[draft.shape]) {
    const what = begunSmall(say(label));
    if (isBlank(draft[size]) && isOptional !== true) return say('boil.problem.needed', { field: what });
    const wrong = problemInSize(draft, size, what, settings);
    if (wrong !== null) return wrong;
  }
  return draft.shape === 'measured' ? problemInFill(draft.fill, settings) : null;
}

function problemInFill(fill: readonly FillRow[], settings: Settings): string | null {
  const rows = fill.map(({ depth, volume }) => ({ depth: typedNumber(depth), volume: typedNumber(volume) }));
  for (const [i, { depth, volume }] of rows.entries()) {
    if (depth === null || volume === null || depth < 0 || volume < 0) {
      const { length, volume: volumes } = unitSymbols(settings);
      return say('boil.problem.fill_row', { row: String(i + 1), length, volume: volumes });
    }
    const before = rows[i - 1];
    const rises = before === undefined || (depth > (before.depth ?? 0) && volume > (before.volume ?? 0));
    if (!rises) return say('boil.problem.fill_rises', { row: String(i + 1) });
  }
  return rows.length < LEAST_ROWS ? say('boil.problem.fill_short') : null;
}

/** The vessel of a checked draft. */
export function vesselOf(draft: VesselDraft, settings: Settings): Pan['vessel'] {
  const mm = (typed: string): number => mmOf(typedNumber(typed) ?? 0, settings);
  const wall = isBlank(draft.height) ? {} : { height_mm: mm(draft.height) };
  const { shape } = draft;
  switch (shape) {
    case '':
      return undefined;
    case 'round':
      return { shape, diameter_mm: mm(draft.diameter), ...wall };
    case 'rectangular':
      return { shape, length_mm: mm(draft.length), width_mm: mm(draft.width), ...wall };
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
