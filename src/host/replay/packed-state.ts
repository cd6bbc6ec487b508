// A state of the fold as few bytes, and back again, the same to the bit.
import { deserialize, serialize } from 'node:v8';
import { constants, zstdCompressSync, zstdDecompressSync } from 'node:zlib';
import { byName } from '../../core/boil/by-name.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import type { Happening } from '../../core/pan/course.ts';
import type { PanModel } from '../../core/pan/pan-state.ts';
import { BLOCK_ORDER } from '../../core/pan/timeline.ts';

/** Packed 6 times smaller in 1 ms, and unpacked in less. */
const PACKING = { params: { [constants.ZSTD_c_compressionLevel]: 1 } };

/** Nothing of the state is changed or kept. */
export function packState(state: BoilState): Buffer {
  const pans = Object.entries(state.pans).map(([id, pan]): [string, PackedPan] => [id, withRows(pan)]);
  return zstdCompressSync(serialize({ ...state, pans: Object.fromEntries(pans) }), PACKING);
}

/** Each call gives a state of its own. */
export function unpackState(bytes: Buffer): BoilState {
  const state = deserialize(zstdDecompressSync(bytes)) as Omit<BoilState, 'pans'> & { pans: Record<string, PackedPan> };
  const pans = Object.entries(state.pans).map(([id, pan]): [string, PanModel] => [id, withHappenings(pan)]);
  return withTables({ ...state, pans: Object.fromEntries(pans) });
}

type Block = Extract<Happening, { what: 'block' }>;

/**
 * What happened to a pan is nearly all blocks, and they are most of a state. As rows of numbers they take a third of the
 * time and room that they take as objects, each with the names of its fields.
 */
interface PackedHappenings {
  /** t, riseC, noiseC and stepC of each block. */
  rows: Float64Array;
  /** All else, with its place among all. */
  others: { place: number; one: Happening }[];
}

type PackedPan = Omit<PanModel, 'past'> & {
  past: Omit<PanModel['past'], 'happened'> & { happened: PackedHappenings };
};

const FIELDS = 4;

function withRows(pan: PanModel): PackedPan {
  const { happened } = pan.past;
  const rows = new Float64Array(FIELDS * happened.length);
  const others: PackedHappenings['others'] = [];
  let at = 0;
  happened.forEach((one, place) => {
    if (one.what !== 'block' || one.order !== BLOCK_ORDER) others.push({ place, one });
    else {
      rows[at++] = one.t;
      rows[at++] = one.riseC;
      rows[at++] = one.noiseC;
      rows[at++] = one.stepC;
    }
  });
  return { ...pan, past: { ...pan.past, happened: { rows: rows.slice(0, at), others } } };
}

function withHappenings(pan: PackedPan): PanModel {
  const { rows, others } = pan.past.happened;
  const happened: Happening[] = [];
  let next = 0;
  for (let at = 0; at < rows.length; at += FIELDS) {
    while (others[next]?.place === happened.length) happened.push(others[next++]!.one);
    happened.push(blockOf(rows[at]!, rows[at + 1]!, rows[at + 2]!, rows[at + 3]!));
  }
  while (next < others.length) happened.push(others[next++]!.one);
  return { ...pan, past: { ...pan.past, happened } };
}

function blockOf(t: number, riseC: number, noiseC: number, stepC: number): Block {
  return { t, order: BLOCK_ORDER, what: 'block', riseC, noiseC, stepC };
}

const TABLES = [
  'ports',
  'probes',
  'coldJunctions',
  'strays',
  'probePan',
  'panProbes',
  'tips',
  'designs',
  'around',
  'corrections',
  'pans',
] as const satisfies readonly (keyof BoilState)[];

/** Packing gives the tables by name the usual prototype, in which more than the names is found. */
function withTables(state: BoilState): BoilState {
  const tables = TABLES.map((name) => [name, byName(Object.entries<unknown>(state[name]))] as const);
  return Object.assign(state, Object.fromEntries(tables));
}
