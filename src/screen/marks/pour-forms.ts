// The forms for what goes in and out of a pan and for the flame under it.
import { heldLitres } from '../../protocol/held-litres.ts';
import { plannedFill, strengthTaken, WARMTH_TAKEN_C } from '../../protocol/planned-pour.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { brixOf, exactStrength, litresOf, litresShown, roundTemperature, unitSymbols } from '../words/amounts.ts';
import { panName, panNamed } from '../words/pan-words.ts';
import { pouredShown } from '../words/poured-words.ts';
import type { Mark, Settings } from '../client/types.ts';
import { given, isFilling, numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace, NumberField, Quick } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

const LITRE_STEPS = [0.5, 1, 2, 3, 5, 10, 20];
const GALLON_STEPS = [0.25, 0.5, 1, 2, 3, 5];

function steps(settings: Settings): number[] {
  return settings.volume === 'litre' ? LITRE_STEPS : GALLON_STEPS;
}

/** From a ladle to what few pots hold, for pans whose size or fire is known. */
const FINE_LITRES = [0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10, 20];
const FINE_GALLONS = [0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5];
const MOST_STEPS = 6;

const fineSteps = (settings: Settings): number[] => (settings.volume === 'litre' ? FINE_LITRES : FINE_GALLONS);

/** Those that a pan can hold; all of them where that is not known, or it holds less than any. */
function within(shown: readonly number[], litres: number | null, settings: Settings): number[] {
  const held = litres === null ? [] : shown.filter((each) => litresOf(each, settings) <= litres);
  return held.length === 0 ? [...shown] : held;
}

/** The most of them that the pan's card advises is among them, for that is what is poured most often. */
function pourSteps(place: MarkPlace): number[] {
  const { now, header, pan, settings } = place;
  const room = now.advice.find((each) => each.pan === pan)?.roomLitres ?? null;
  // As the card prints it, to a tenth.
  const advised = room === null || isFilling(place) ? 0 : Math.round(litresShown(room, settings) * 10) / 10;
  const fine = fineSteps(settings);
  const first = fine.findLastIndex((each) => each <= advised);
  const from = Math.min(first, fine.length - MOST_STEPS);
  return within(
    first < 0 ? steps(settings) : fine.slice(from, from + MOST_STEPS),
    heldLitres(panNamed(header, pan)?.vessel ?? null),
    settings,
  );
}

const MOST_DRAWN = 5;

/** No more than is in it. */
function drawSteps({ now, pan, settings }: MarkPlace): number[] {
  const litres = now.readings.find((each) => each.pan === pan)?.litres ?? null;
  const usual = steps(settings).slice(0, MOST_DRAWN);
  if (litres === null || usual.every((each) => litresOf(each, settings) <= litres)) return usual;
  return within(fineSteps(settings), litres, settings).slice(-MOST_DRAWN);
}

function shortVolume(shown: number, settings: Settings): string {
  return localDigits(`${shown} ${settings.volume === 'litre' ? 'L' : 'gal'}`);
}

function volumeField(settings: Settings, label: string): NumberField {
  return { name: 'volume', label, unit: unitSymbols(settings).volume, least: 0.01, greatest: 2000 };
}

/** Anything that is poured, from water to syrup. */
const POURED = {
  brix: { least: 0, greatest: 85 },
  baume: { least: 0, greatest: 46 },
  sg: { least: 1, greatest: 1.46 },
} as const;

/** From half frozen sap to syrup off the boil, °C. */
const POURED_C = [-5, 110] as const;

function strengthField({ strength }: Settings, unit: string): NumberField {
  return { name: 'strength', label: say('marks.its_strength'), unit, ...POURED[strength], optional: true };
}

function brixIn(values: Record<string, string>, settings: Settings): number | undefined {
  const shown = numberOf(values, 'strength');
  return shown === undefined ? undefined : brixOf(shown, settings);
}

function litresIn(values: Record<string, string>, settings: Settings): number | undefined {
  const shown = numberOf(values, 'volume');
  return shown === undefined ? undefined : litresOf(shown, settings);
}

export const topUp: MarkForm = {
  kind: 'top-up',
  key: 'T',
  word: 'marks.top_up',
  question: 'marks.top_up.question',
  first: { word: 'marks.filling', question: 'marks.filling.question' },
  // A depth tells litres only where the vessel is known.
  otherWay: (place) =>
    place.again === undefined && isFilling(place) && panNamed(place.header, place.pan)?.vessel !== undefined
      ? { words: say('marks.filling.by_depth'), kind: 'depth' }
      : null,
  quicks: (place) => {
    const { pan, settings } = place;
    const poured = (shown: number, label: string): Quick => ({
      label,
      mark: { kind: 'top-up', pan, litres: litresOf(shown, settings) },
    });
    const usual = pourSteps(place).map((shown) => poured(shown, shortVolume(shown, settings)));
    const filled = isFilling(place) ? plannedFill(place.header, pan) : null;
    if (filled === null) return usual;
    // As finely as the plan says it.
    const exact = litresShown(filled, settings);
    const shown = Number(exact.toFixed(exact < 10 ? 1 : 0));
    return shown === 0
      ? usual
      : [poured(shown, say('marks.as_planned', { amount: shortVolume(shown, settings) })), ...usual];
  },
  fields: (place) => {
    const { settings, pour } = place;
    const brix = strengthTaken(place.header, place.now.marks, place.again?.mark.id);
    const strength = strengthField(settings, unitSymbols(settings).strength);
    const warm = (label: string): NumberField => temperatureField(settings, label, { optional: true, range: POURED_C });
    return [
      { ...volumeField(settings, say('marks.poured_in')), ...(pour && { start: pouredShown(pour, settings) }) },
      // Whoever reads what is taken need not type it again with every pour.
      ...(brix === null
        ? [strength, warm(say('marks.how_warm'))]
        : [
            { ...strength, label: say('marks.its_strength_taken', { strength: exactStrength(brix, settings) }) },
            warm(say('marks.how_warm_taken', { temperature: roundTemperature(WARMTH_TAKEN_C, settings) })),
          ]),
    ];
  },
  build: (values, { pan, settings }) =>
    given({
      kind: 'top-up',
      pan,
      litres: litresIn(values, settings),
      brix: brixIn(values, settings),
      celsius: celsiusIn(values, settings),
    } satisfies Mark),
};

export const drawOff: MarkForm = {
  kind: 'draw-off',
  key: 'D',
  word: 'marks.draw_off',
  question: 'marks.draw_off.question',
  quicks: (place) => [
    { label: say('marks.all'), mark: { kind: 'draw-off', pan: place.pan, all: true } },
    ...drawSteps(place).map((shown): Quick => ({
      label: shortVolume(shown, place.settings),
      mark: { kind: 'draw-off', pan: place.pan, litres: litresOf(shown, place.settings) },
    })),
  ],
  fields: ({ settings }) => [
    volumeField(settings, say('marks.drawn_off')),
    strengthField(settings, unitSymbols(settings).strength),
  ],
  build: (values, { pan, settings }) =>
    given({
      kind: 'draw-off',
      pan,
      litres: litresIn(values, settings),
      brix: brixIn(values, settings),
    } satisfies Mark),
};

function otherPans({ header, pan }: MarkPlace): string[] {
  return (header.pans ?? []).filter((each) => each.id !== pan && each.role !== 'reference').map((each) => each.id);
}

export const pourTogether: MarkForm = {
  kind: 'transfer',
  anewByPan: true,
  key: 'P',
  word: 'marks.transfer',
  pressFirst: true,
  question: 'marks.transfer.question',
  without: (place) => (otherPans(place).length > 0 ? null : say('marks.transfer.one_pan')),
  quicks: (place) =>
    otherPans(place).map((to) => ({
      label: say('marks.all_into', { pan: panName(place.header, to) }),
      mark: { kind: 'transfer', from: place.pan, to, all: true },
    })),
  fields: (place) => [
    {
      name: 'to',
      label: say('marks.part_into'),
      options: otherPans(place).map((id) => ({ value: id, label: panName(place.header, id) })),
    },
    volumeField(place.settings, say('marks.how_much')),
  ],
  build: (values, place) =>
    given({
      kind: 'transfer',
      from: place.pan,
      to: values['to'] ?? otherPans(place)[0] ?? place.pan,
      litres: litresIn(values, place.settings),
    } satisfies Mark),
};

const FLAMES: [MessageKey, number][] = [
  ['marks.flame_off', 0],
  ['marks.flame_low', 0.25],
  ['marks.flame_half', 0.5],
  ['marks.flame_full', 1],
];

export const flame: MarkForm = {
  kind: 'flame',
  key: 'F',
  word: 'marks.flame',
  pressFirst: true,
  question: 'marks.flame.question',
  quicks: ({ pan }) => FLAMES.map(([key, level]) => ({ label: say(key), mark: { kind: 'flame', pan, level } })),
  fields: () => [
    { name: 'percent', label: say('marks.flame'), unit: say('marks.percent_of_full'), least: 0, greatest: 100 },
  ],
  build: (values, { pan }) => ({ kind: 'flame', pan, level: (numberOf(values, 'percent') ?? 0) / 100 }),
};
