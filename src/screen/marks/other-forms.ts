// The forms for a probe that is moved, a reminder and a note.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { panName, probeName } from '../words/pan-words.ts';
import type { Header } from '../client/types.ts';
import { hasProbe, numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace, Quick } from './mark-form.ts';

function movable({ now, header, pan }: MarkPlace): Quick[] {
  return (header.probes ?? []).flatMap((probe): Quick[] => {
    const sits = now.probes.find((each) => each.id === probe.id)?.pan ?? null;
    const name = { probe: probeName(header, probe.id) };
    if (sits === pan) {
      return [
        { label: say('marks.hangs_in_air', { ...name }), mark: { kind: 'move-probe', probe: probe.id, pan: null } },
      ];
    }
    const label =
      sits === null
        ? say('marks.here_from_air', { ...name })
        : say('marks.here_from_pan', { ...name, pan: panName(header, sits) });
    return [{ label, mark: { kind: 'move-probe', probe: probe.id, pan } }];
  });
}

export const probeMoved: MarkForm = {
  kind: 'move-probe',
  key: 'M',
  word: 'marks.move_probe',
  question: 'marks.move_probe.question',
  without: ({ header }) => (hasProbe(header) ? null : say('marks.move_probe.no_probe')),
  quicks: movable,
  fields: () => [],
};

const remindOf = (label: string, text: string, minutes: number): Quick => ({
  label,
  mark: { kind: 'remind', text, seconds: minutes * 60 },
});

const lookAt = (header: Header, pan: string): string => say('marks.look_at', { pan: panName(header, pan) });

export const reminder: MarkForm = {
  kind: 'remind',
  anewByPan: true,
  key: 'I',
  word: 'marks.remind',
  question: 'marks.remind.question',
  quicks: ({ header, pan }) => [
    ...[5, 10, 15, 30, 60].map((minutes) =>
      remindOf(say('marks.minutes', { minutes: String(minutes) }), lookAt(header, pan), minutes),
    ),
    remindOf(say('marks.skim_in', { minutes: '15' }), say('marks.skim', { pan: panName(header, pan) }), 15),
  ],
  fields: ({ header, pan }) => [
    { name: 'text', label: say('marks.what_about'), words: true, start: lookAt(header, pan) },
    { name: 'minutes', label: say('marks.in'), unit: say('marks.minutes_unit'), least: 1, greatest: 1440 },
  ],
  build: (values) => ({
    kind: 'remind',
    text: (values['text'] ?? '').trim(),
    seconds: Math.round((numberOf(values, 'minutes') ?? 1) * 60),
  }),
};

const USUAL_NOTES: readonly MessageKey[] = [
  'marks.skimmed',
  'marks.foam',
  'marks.wood_fed',
  'marks.sheets',
  'marks.cylinder',
];

export const note: MarkForm = {
  kind: 'note',
  key: 'N',
  word: 'marks.note',
  question: 'marks.note.question',
  quicks: ({ pan }) =>
    USUAL_NOTES.map((key): Quick => {
      const text = say(key);
      return { label: text, mark: { kind: 'note', text, pan } };
    }),
  fields: () => [{ name: 'text', label: say('marks.own_words'), words: true }],
  build: (values, { pan }) => ({ kind: 'note', text: (values['text'] ?? '').trim(), pan }),
};
