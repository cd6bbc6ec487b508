// The forms for a probe that is moved, a reminder and a note.
import { panName, probeName } from '../words/pan-words.ts';
import { numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace, Quick } from './mark-form.ts';

function movable({ now, header, pan }: MarkPlace): Quick[] {
  return (header.probes ?? []).flatMap((probe): Quick[] => {
    const sits = now.probes.find((each) => each.id === probe.id)?.pan ?? null;
    const name = probeName(header, probe.id);
    if (sits === pan) {
      return [{ label: `${name}: hangs in the air`, mark: { kind: 'move-probe', probe: probe.id, pan: null } }];
    }
    const from = sits === null ? 'from the air' : `from ${panName(header, sits)}`;
    return [{ label: `${name}: here, ${from}`, mark: { kind: 'move-probe', probe: probe.id, pan } }];
  });
}

export const probeMoved: MarkForm = {
  kind: 'move-probe',
  key: 'M',
  word: 'Probe moved',
  question: 'Which probe was moved?',
  quicks: movable,
  fields: () => [],
};

const remindOf = (label: string, text: string, minutes: number): Quick => ({
  label,
  mark: { kind: 'remind', text, seconds: minutes * 60 },
});

export const reminder: MarkForm = {
  kind: 'remind',
  key: 'I',
  word: 'Reminder',
  question: 'Call me in …',
  quicks: ({ header, pan }) => [
    ...[5, 10, 15, 30, 60].map((minutes) => remindOf(`${minutes} min`, `Look at ${panName(header, pan)}`, minutes)),
    remindOf('Skim in 15 min', `Skim ${panName(header, pan)}`, 15),
  ],
  fields: ({ header, pan }) => [
    { name: 'text', label: 'What about', words: true, start: `Look at ${panName(header, pan)}` },
    { name: 'minutes', label: 'In', unit: 'minutes', least: 1, greatest: 1440 },
  ],
  build: (values) => ({
    kind: 'remind',
    text: (values['text'] ?? '').trim(),
    seconds: Math.round((numberOf(values, 'minutes') ?? 1) * 60),
  }),
};

export const note: MarkForm = {
  kind: 'note',
  key: 'N',
  word: 'Note',
  question: 'What should be remembered?',
  quicks: ({ pan }) =>
    ['Skimmed', 'Foam, a drop of fat in', 'Wood fed', 'Sheets off the spoon', 'Cylinder changed'].map((text) => ({
      label: text,
      mark: { kind: 'note', text, pan },
    })),
  fields: () => [{ name: 'text', label: 'Or in your own words', words: true }],
  build: (values, { pan }) => ({ kind: 'note', text: (values['text'] ?? '').trim(), pan }),
};
