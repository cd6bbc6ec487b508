// The last field of the sketches' lines in the fold: it makes no value, no channel and no complaint, and changes nothing else.
import { expect, test } from 'vitest';
import type { Entry } from '../../src/core/boil/entries.ts';
import { boilView } from '../../src/core/boil/view.ts';
import { foldAll, tarnHollow } from '../core/boil/tarn-hollow.ts';

const MINUTE = 60_000;
const heard = (last: (count: number) => string): Entry[] =>
  Array.from({ length: 60 }, (_, count) => ({
    t: count * 1000,
    port: 'A',
    line: `T1=${(98 + (count % 4) / 4).toFixed(2)}C T2=open${last(count)}`,
  }));

const header = tarnHollow({
  probes: ['T1', 'T2'].map((channel) => ({ id: `A/${channel}`, port: 'A', channel })),
  pans: ['T1', 'T2'].map((channel) => ({ id: channel, name: channel, probe: `A/${channel}` })),
});

test('with the field and without, a boil is the same', () => {
  const shown = (last: (count: number) => string) => {
    const { state, transitions } = foldAll(header, heard(last), MINUTE);
    return { view: boilView(state, MINUTE), transitions, strays: Object.keys(state.strays) };
  };
  const bare = shown(() => '');
  const marked = shown((count) => ` #${count}${count === 0 ? 'b' : ''}*${count.toString(16).padStart(2, '0')}`);
  expect(marked).toEqual(bare);
  expect(marked.strays).toEqual([]);
  expect(marked.view.ports[0]).toMatchObject({ lines: 60, unreadable: 0 });
  expect(marked.view.notices).toEqual([]);
  expect(marked.view.readings[0]!.temperature_c).not.toBeNull();
});
