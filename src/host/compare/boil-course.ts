// Works out a boil's course, in slices, and keeps it in the notebook until other entries come or another version of this program does it otherwise.
import { sapKey } from '../../core/boil/sap-key.ts';
import type { Header } from '../../core/boil/entries.ts';
import { startBoil } from '../../core/boil/fold.ts';
import { type BoilCourse, COURSE_EVERY_MS, type PanCourse } from '../../core/compare/course.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { MachineClock } from '../clock.ts';
import { figuresKey } from '../figures-key.ts';
import { foldSteps } from '../fold-steps.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';
import { BoilSeen } from '../replay/boil-seen.ts';
import { LOOK_MS, type LookColumn, type Looks } from '../replay/looks.ts';
import { inSlices } from '../slices.ts';
import { withHandReadings } from './hand-course.ts';

const COURSE_KEY = figuresKey('course', 5);

/** null while it is not worked out. */
export const courseOf = (notebook: Pick<Notebook, 'figures'>, boil: string): BoilCourse | null =>
  notebook.figures(boil, COURSE_KEY) as BoilCourse | null;

/** Folds the whole boil, never holding anything up for longer than a slice, and keeps what comes of it. */
export async function workOutCourse(
  notebook: Pick<Notebook, 'header' | 'entries' | 'keepFigures'>,
  boil: string,
  machine: MachineClock,
): Promise<void> {
  const seen = new BoilSeen();
  const folding: Folding = new Folding(
    startBoil(notebook.header(boil)),
    foldTools,
    {
      alarm: (transition) => seen.calls.take(transition),
      readings: (t, readings) => seen.look(t, readings, folding.state),
    },
    LOOK_MS,
  );
  for await (const { entry } of inSlices(foldSteps(notebook.entries(boil), folding), machine)) {
    if (entry !== null) seen.note(entry);
  }
  const { state } = folding;
  const course: BoilCourse = {
    pans: seen.looks.pans
      .flatMap((pan) => panCourse(state.header, seen.looks, pan) ?? [])
      .map((pan) => withHandReadings(pan, state)),
    finishes: seen.finishes(state, true),
  };
  notebook.keepFigures(boil, COURSE_KEY, course);
}

/** A pan of plain water has none. */
function panCourse(header: Header, looks: Looks, id: string): PanCourse | null {
  const setup = header.pans?.find((pan) => pan.id === id);
  if (setup?.role === 'reference') return null;
  const each = COURSE_EVERY_MS / LOOK_MS;
  const column = (name: LookColumn, digits: number): (number | null)[] =>
    Array.from({ length: Math.ceil(looks.count / each) }, (_, minute) => {
      // A reading by hand may stand for less than a minute until its pan is drawn off: the first look of the minute that knows.
      for (let look = minute * each; look < Math.min((minute + 1) * each, looks.count); look += 1) {
        const value = looks.at(id, name, look);
        if (value !== null) return Number(value.toFixed(digits));
      }
      return null;
    });
  return {
    id,
    name: setup?.name ?? id,
    sap: sapKey(setup?.sap),
    celsius: column('celsius', 2),
    water: column('water', 2),
    brix: column('brix', 2),
    evaporation: column('evaporation', 3),
  };
}
