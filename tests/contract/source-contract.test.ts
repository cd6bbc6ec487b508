// One contract for all sources: serial over pseudo terminals and the real binding, replay, practice.
import type { Entry } from '../../src/core/boil/entries.ts';
import { practiceScenario } from '../../src/core/simulation/practice-scenario.ts';
import { practiceSource } from '../../src/ingest/practice-source.ts';
import { replaySource } from '../../src/ingest/replay-source.ts';
import { serialSource } from '../../src/ingest/serial-source.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { sourceContract } from './source-contract.ts';

const nothing = async (): Promise<void> => undefined;

sourceContract('serial', async (timekeeper) => {
  const board = pretendBoard();
  await board.plugIn();
  return {
    source: serialSource({ ports: [{ id: 'A', path: board.path, baud: 9600 }], timekeeper }),
    provoke: () => board.send('\nT1=98.5\nT1=98.6\n'),
    clearUp: () => board.remove(),
  };
});

sourceContract('replay', async (timekeeper) => {
  const lines = Array.from({ length: 400 }, (_, n): Entry => ({ t: 50 + 50 * n, port: 'A', line: `T1=${n}` }));
  const entries: Entry[] = [{ t: 0, port: 'A', state: 'open' }, ...lines];
  return { source: replaySource({ entries, timekeeper }), provoke: nothing, clearUp: nothing };
});

sourceContract('practice', async (timekeeper) => {
  const calm = practiceScenario(1);
  // Ten lines a second, so that the real time of this suite is enough for them.
  const scenario = { ...calm, ports: calm.ports.map((port) => ({ ...port, periodMs: 100 })) };
  return { source: practiceSource({ seed: 1, timekeeper, scenario }), provoke: nothing, clearUp: nothing };
});
