// One boil of the forecast bench step by step: what was true, what the program said beside it, and every mark and call.
import type { PanReading } from '../../../src/core/pan/reading.ts';
import type { Kind } from './kinds/kind.ts';
import { play, READING_MS, type Played } from './play.ts';
import { SAMPLE_MS, witness, type Sample, type Witnessed } from './witness.ts';

const STEP_MS = 5 * 60_000;

const figure = (value: number | null, digits = 1): string => (value === null ? '–' : value.toFixed(digits));
const inMinutes = (seconds: number | null): string => figure(seconds === null ? null : seconds / 60);

export async function printTrace(kind: Kind, seed: number): Promise<void> {
  const boil = witness(kind.scenario(seed));
  const played = await play(boil.recording);
  console.log(`\n  ${kind.name}, seed ${seed}: ${kind.about}`);
  for (const line of events(boil, played)) console.log(line);
  for (const { id } of boil.pans) tracePan(id, boil, played);
}

function events({ marks, moments }: Witnessed, { calls }: Played): string[] {
  const all = [
    ...marks.map(({ t, mark }) => ({ t, text: `mark   ${JSON.stringify(mark)}` })),
    ...moments.map(({ t, what, pan, brix, litres, depth_mm: mm }) => ({
      t,
      text: `truth  ${what} ${pan ?? ''} ${figure(brix ?? null)} °Bx ${figure(litres ?? null)} L ${figure(mm ?? null, 0)} mm`,
    })),
    ...calls.map(({ t, alarm, pan, event, priority, why }) => ({
      t,
      text: `call   ${pan ?? ''} ${alarm} ${event} ${priority}: ${why}`,
    })),
  ];
  return all.toSorted((a, b) => a.t - b.t).map(({ t, text }) => `  ${(t / 60_000).toFixed(1).padStart(7)} ${text}`);
}

function tracePan(id: string, { samples, moments }: Witnessed, { readings }: Played): void {
  console.log(
    `\n  ${id}   min | truly °Bx      L   mm left min | said °Bx (range)            L   mm   min left (range)       stage`,
  );
  for (let t = 0; t / SAMPLE_MS < samples[id]!.length; t += STEP_MS) {
    const sample = samples[id]![t / SAMPLE_MS]!;
    const reading = readings[id]?.[t / READING_MS];
    const finish = moments.find((moment) => moment.what === 'reached-finish' && moment.pan === id && moment.t >= t);
    if (reading !== undefined) console.log(traceLine(sample, reading, finish === undefined ? null : finish.t - t));
  }
}

function traceLine(sample: Sample, said: PanReading, leftMs: number | null): string {
  const truly = [
    [figure(sample.t / 60_000, 0), 8],
    [figure(sample.brix), 11],
    [figure(sample.litres), 7],
    [figure(sample.depthMm, 0), 5],
    [inMinutes(leftMs === null ? null : leftMs / 1000), 9],
  ] as const;
  const claimed = [
    [`${figure(said.brix)} (${figure(said.brix_low)}–${figure(said.brix_high)})`, 21],
    [figure(said.litres), 8],
    [figure(said.depth_mm, 0), 5],
    [`${inMinutes(said.finish_in_s)} (${inMinutes(said.finish_low_s)}–${inMinutes(said.finish_high_s)})`, 24],
    [said.stage, 14],
  ] as const;
  const columns = (cells: readonly (readonly [string, number])[]): string =>
    cells.map(([text, width]) => text.padStart(width)).join('');
  return `  ${columns(truly)} |${columns(claimed)}`;
}
