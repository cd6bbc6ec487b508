// A program for the power-cut tests: keeps a boil as a watch does, and writes down each count once it has been kept.
import { closeSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { tarnHollow } from './tarn-hollow.ts';
import { entryOf } from './told-entry.ts';

const [folder = '', words = '5000', seedWords = '1'] = process.argv.slice(2);
let seed = Number(seedWords);
const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;
const told = openSync(join(folder, 'told'), 'w');
const tell = (kept: number) => writeSync(told, `${kept}\n`);

/** As the recorder does: what failed is tried again. */
function again(work: () => number): number {
  for (let round = 0; ; round += 1) {
    try {
      return work();
    } catch (error) {
      if (round === 20) throw error;
    }
  }
}

const notebook = openNotebook(folder);
let boil = '';
again(() => {
  boil = notebook.begin(tarnHollow, 'live').boil;
  return 0;
});
let kept = 0;
while (kept < Number(words)) {
  const count = 1 + Math.floor(random() * 40);
  const texts = Array.from({ length: count }, (_, index) => entryOf(kept + index));
  kept = again(() => notebook.append(boil, texts));
  tell(kept);
  if (random() < 0.02) again(() => (notebook.keepPage(boil, { notes: `at ${kept}` }), 0));
}
again(() => notebook.end(boil, kept));
notebook.close();
closeSync(told);
