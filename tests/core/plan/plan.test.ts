// A plan against the exact balance, a published heat of boiling down, rules of the trade, and what must follow from more fire.
import { expect, test } from 'vitest';
import type { PanSetup } from '../../../src/core/boil/entries.ts';
import { planBoil } from '../../../src/core/plan/plan.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import type { PlanInput } from '../../../src/core/plan/plan.ts';
import { planUnderWay } from '../../../src/core/plan/under-way.ts';

/** Tarn Hollow, invented: three pots of birch sap. */
const pots: PanSetup[] = [
  ['p1', 400, 16_000],
  ['p2', 360, 12_000],
  ['p3', 220, 5_000],
].map(([id, diameter_mm, power_w]) => ({
  id: id as string,
  vessel: { shape: 'round', diameter_mm: diameter_mm as number },
  heat: { kind: 'propane', power_w: power_w as number },
}));
const day: PlanInput = { sap: 'birch', litres: 140, brix: 0.9, celsius: 5, finish: { brix: 67 }, pans: pots };

test('what is dissolved stays: syrup by the exact balance', () => {
  const made = planBoil(day)!;
  // By hand with water of 0.9982 kg/L, sap of 1.0017 and syrup of 1.329 kg/L at 20 °C (CRC table of sucrose).
  const syrupKg = (140 * 1.0017 * 0.9) / 67;
  expect(made.syrup_kg / syrupKg).toBeCloseTo(1, 2);
  expect(made.syrup_litres / (syrupKg / 1.329)).toBeCloseTo(1, 2);
  expect(made.evaporate_litres / ((140 * 1.0017 - syrupKg) / 0.9982)).toBeCloseTo(1, 2);
});

test('400,000 Btu boil 2 % sap of 40 °F down to a US gallon of syrup (Ohio State University Extension, read)', () => {
  const gallon = { ...day, sap: 'maple', brix: 2, celsius: 4.4, finish: { brix: 66 } } as const;
  const litres = (3.785 / planBoil({ ...gallon, litres: 100 })!.syrup_litres) * 100;
  const btuPerHour = 0.29307;
  const heat = { kind: 'electric', power_w: (400_000 * btuPerHour) / 0.8 } as const;
  const { hours } = planBoil({ ...gallon, litres, pans: [{ id: 'p1', heat }] })!;
  expect(hours).toBeGreaterThan(0.97);
  expect(hours).toBeLessThan(1.04);
});

test('a square foot boils a US gallon of water off in an hour (a rule of the trade), where nobody says a power', () => {
  const side = Math.sqrt(0.09290304) * 1000;
  const vessel = { shape: 'rectangular', length_mm: side, width_mm: side } as const;
  const made = planBoil({ ...day, celsius: 99, pans: [{ id: 'p1', vessel, heat: { kind: 'wood' } }] })!;
  expect(made.evaporate_litres / 3.785 / made.hours!).toBeGreaterThan(0.85);
  expect(made.evaporate_litres / 3.785 / made.hours!).toBeLessThan(1.05);
});

test('pans are poured together as the liquid falls, and the smallest finishes alone', () => {
  const { stages, hours } = planBoil(day)!;
  expect(stages.map(({ pans }) => [...pans].sort().join())).toEqual(['p1,p2,p3', 'p2,p3', 'p3']);
  expect(stages.reduce((sum, stage) => sum + stage.hours, 0)).toBeCloseTo(hours!, 9);
  expect(stages.map(({ brix }) => brix)).toEqual(stages.map(({ brix }) => brix).sort((a, b) => a - b));
});

test('another burner never takes longer; three pots are surer than one', () => {
  const three = planBoil(day)!;
  const two = planBoil({ ...day, pans: pots.slice(1) })!;
  const one = planBoil({ ...day, pans: pots.slice(2) })!;
  expect(three.hours!).toBeLessThan(two.hours!);
  expect(two.hours!).toBeLessThan(one.hours!);
  const width = ({ hours_low, hours_high, hours }: typeof three) => (hours_high! - hours_low!) / 2 / hours!;
  expect(width(three)).toBeLessThan(0.3);
  expect(width(one)).toBeGreaterThan(width(three));
});

const wide: PanSetup = { id: 'flat', vessel: { shape: 'rectangular', length_mm: 610, width_mm: 610 } };
const small: PanSetup = { id: 'pot', vessel: { shape: 'round', diameter_mm: 305 } };

test.each([
  ['a pot over a weak fire', { ...small, heat: { kind: 'propane', power_w: 2000 } }],
  ['a pot reckoned by its size', small],
  ['a second wide pan over a weak fire', { ...wide, id: 'flat2', heat: { kind: 'wood', power_w: 6000 } }],
] as const)(
  'one vessel more, %s, never takes longer or gives less by the leaving, where all can be finished without it',
  (_, more) => {
    for (const litres of [245, 260, 300, 500, 900])
      for (const stay_hours of [undefined, 20, 24, 30, 40, 60]) {
        const input = { sap: 'maple', litres, brix: 2, stay_hours } as const;
        const without = planBoil({ ...input, pans: [wide] })!;
        const withIt = planBoil({ ...input, pans: [wide, more] })!;
        if (without.ends_shallow) continue;
        expect(withIt.syrup_litres, `${litres} L in ${stay_hours} h`).toBeGreaterThan(without.syrup_litres * 0.999);
        expect(withIt.ends_shallow).toBe(false);
        if (stay_hours === undefined) expect(withIt.hours!).toBeLessThanOrEqual(without.hours!);
      }
  },
);

test('where only a small pot can finish, it does, however slow: nothing ends too shallow to save time', () => {
  const input = { sap: 'maple', litres: 95, brix: 2 } as const;
  expect(planBoil({ ...input, pans: [wide] })!.ends_shallow).toBe(true);
  const both = planBoil({ ...input, pans: [wide, small] })!;
  expect(both.ends_shallow).toBe(false);
  expect(both.stages.at(-1)?.pans).toEqual(['pot']);
});

const flat = (id: string): PanSetup => ({
  id,
  vessel: { shape: 'rectangular', length_mm: 500, width_mm: 400 },
  heat: { kind: 'wood', power_w: 20_000 },
});
const stove: PanSetup = {
  id: 'stove',
  for_end: true,
  vessel: { shape: 'round', diameter_mm: 240 },
  heat: { kind: 'electric', power_w: 2000 },
};
const broad: PlanInput = { ...day, litres: 100, pans: [flat('a'), flat('b')] };

test('a pot for the end stays cold and empty until the pans are poured into it, and burns only then', () => {
  const made = planBoil({ ...broad, pans: [...broad.pans, stove] })!;
  expect(made.stages.map(({ pans }) => pans.join())).toEqual(['a,b', 'a', 'stove']);
  const [, , last] = made.stages;
  // A broad pan is poured out at half as much again as its least: 0.2 m² by 15 mm, hot.
  expect(last!.litres).toBeCloseTo((1.5 * 0.2 * 15) / 1.04, 1);
  expect(made.fuel.find(({ kind }) => kind === 'electric')!.amount).toBeCloseTo(2 * last!.hours, 6);
  expect(made.pans.map(({ fill_litres: litres }) => litres === null)).toEqual([false, false, true]);
  expect([made.ends_shallow, made.draw_off]).toEqual([false, null]);
  // Nobody tells how long it takes in a pot of which neither size nor power is known.
  expect(planBoil({ ...broad, pans: [...broad.pans, { id: 'stove', for_end: true }] })!.hours).toBeNull();
});

/** Invented: 60 US gal of maple sap in a flat pan and a wide pot, and a kitchen pot that is kept for the end. */
const yard: PanSetup[] = [
  {
    id: 'flat',
    vessel: { shape: 'rectangular', length_mm: 838, width_mm: 610 },
    heat: { kind: 'propane', power_w: 17_600 },
  },
  { id: 'stock', vessel: { shape: 'round', diameter_mm: 406 }, heat: { kind: 'propane', power_w: 17_600 } },
];
const kitchen: PanSetup = {
  id: 'kitchen',
  for_end: true,
  vessel: { shape: 'round', diameter_mm: 254 },
  heat: { kind: 'electric' },
};
const gallons: PlanInput = { sap: 'maple', litres: 227, brix: 2, pans: [...yard, kitchen] };

test('the end is boiled in the pot that is kept for it, also where another could finish: time and fuel follow', () => {
  const without = planBoil({ ...gallons, pans: yard })!;
  expect(without.ends_shallow).toBe(false);
  const made = planBoil(gallons)!;
  const last = made.stages.at(-1)!;
  expect([last.pans, last.fits]).toEqual([['kitchen'], true]);
  // Not before it fits: half its width deep, hot, where nobody said how high its wall is; 5.3 L of syrup stand 108 mm deep.
  expect(last.litres).toBeCloseTo((Math.PI * 0.127 ** 2 * 127) / 1.04, 2);
  expect(made.hours!).toBeGreaterThan(without.hours!);
  expect(made.fuel.map(({ kind }) => kind)).toEqual(['propane', 'electric']);
  expect([made.end_unused, made.ends_shallow, last.too_full]).toEqual([null, false, []]);
  // Of a tall pot half as much again as the syrup goes in, not half of the boil.
  const tall = { ...kitchen, vessel: { shape: 'round', diameter_mm: 406, height_mm: 400 } } as const;
  const inTall = planBoil({ ...gallons, pans: [yard[0]!, tall] })!;
  expect(inTall.stages.at(-1)!.litres).toBeGreaterThan(1.49 * inTall.syrup_litres);
});

test('a pot for the end that the syrup would overflow stays cold, and so does one that is too wide where another is not', () => {
  const low = { ...kitchen, vessel: { shape: 'round', diameter_mm: 254, height_mm: 130 } } as const;
  const small = planBoil({ ...gallons, pans: [...yard, low] })!;
  expect(small.end_unused).toEqual({ pans: ['kitchen'], why: 'small' });
  expect(small.stages).toEqual(planBoil({ ...gallons, pans: yard })!.stages);
  // Half the sap's syrup fits, so it ends there; who can stay only so long is planned for that.
  expect(planBoil({ ...gallons, litres: 113, pans: [...yard, low] })!.stages.at(-1)!.pans).toEqual(['kitchen']);
  const broadPot = { ...kitchen, vessel: { shape: 'round', diameter_mm: 700 } } as const;
  const wideEnd = planBoil({ ...gallons, litres: 200, pans: [...yard, broadPot] })!;
  expect(wideEnd.end_unused).toEqual({ pans: ['kitchen'], why: 'wide' });
  expect([wideEnd.ends_shallow, wideEnd.stages.at(-1)!.pans]).toEqual([false, ['stock']]);
});

test('where all pans are for the end, all are lit at the start', () => {
  const pans = pots.map((pot) => ({ ...pot, for_end: true }));
  expect(planBoil({ ...day, pans })!.stages).toEqual(planBoil(day)!.stages);
});

test('what ends too shallow in every pan leaves the last at half as much again as its least, before it is done', () => {
  const { ends_shallow: isShallow, draw_off: out, stages } = planBoil(broad)!;
  const last = stages.at(-1)!;
  expect([isShallow, last.pans]).toEqual([true, ['b']]);
  expect(out!.litres).toBeCloseTo((1.5 * 0.2 * 15) / 1.04, 1);
  expect(out!.from_hours).toBeGreaterThan(last.from_hours);
  expect(out!.from_hours).toBeLessThan(last.from_hours + last.hours);
  expect(planBoil(day)!.draw_off).toBeNull();
});

test('a wall whose height is told is filled to three quarters, and what is poured together goes in as far as that', () => {
  const walled = (pan: PanSetup, height_mm: number): PanSetup =>
    ({ ...pan, vessel: { ...pan.vessel, height_mm } }) as PanSetup;
  const made = planBoil({ ...broad, pans: [walled(flat('a'), 65), walled(flat('b'), 65), walled(stove, 100)] })!;
  expect(made.pans[0]!.fill_mm).toBeCloseTo(0.75 * 65, 6);
  expect(made.pans[0]!.fill_litres).toBeCloseTo(0.2 * 0.75 * 65, 6);
  // 4.3 L are 4.5 L hot, which stand 99 mm deep in a pot of 240 mm.
  expect(made.stages.map(({ too_full }) => too_full)).toEqual([[], [], [{ pan: 'stove', room_mm: 75 }]]);
  expect(planBoil({ ...broad, pans: [flat('a'), walled(stove, 140)] })!.stages.at(-1)!.too_full).toEqual([]);
  expect(planBoil(day)!.pans.map(({ wall_known }) => wall_known)).toEqual([false, false, false]);
});

test('a batch too small for the vessel that finishes is told, and the smallest one is just large enough', () => {
  const least = planBoil(day)!.smallest_batch_litres!;
  expect(planBoil({ ...day, litres: least * 1.02 })!.ends_shallow).toBe(false);
  expect(planBoil({ ...day, litres: least * 0.98 })!.ends_shallow).toBe(true);
});

test('what is not known is null: hours without power and size, kilograms of a fire with two fuels', () => {
  expect(planBoil({ ...day, pans: [{ id: 'p1' }] })).toMatchObject({
    hours: null,
    fuel_kg: null,
    smallest_batch_litres: null,
  });
  const wood: PanSetup = { ...pots[0]!, heat: { kind: 'wood', power_w: 16_000 } };
  const mixed = planBoil({ ...day, pans: [wood, ...pots.slice(1)] })!;
  expect(mixed.fuel_kg).toBeNull();
  expect(mixed.fuel.map(({ kind }) => kind)).toEqual(['propane', 'wood']);
  expect(planBoil({ ...day, brix: 70 })).toBeNull();
});

test('propane: nominal heat over 46.35 MJ/kg (a dealer’s data sheet, read), each burner for as long as it is on', () => {
  const { fuel_kg, stages } = planBoil(day)!;
  const watts: Record<string, number> = { p1: 16_000, p2: 12_000, p3: 5_000 };
  const joule = stages.reduce(
    (sum, { hours, pans }) => sum + hours * 3600 * pans.reduce((w, id) => w + watts[id]!, 0),
    0,
  );
  expect(fuel_kg).toBeCloseTo(joule / 46.35e6, 6);
});

test('the finish stands at this altitude: birch of 67 °Bx rises about 6.2 °C over 97.8 °C at 640 m', () => {
  const made = planBoil({ ...day, site: { altitude_m: 640 } })!;
  expect(made.finish_rise_c).toBeCloseTo(6.2, 1);
  // ISO 2533: 938.8 hPa at 640 m, where IAPWS-IF97 boils water at 97.85 °C (computed).
  expect(made.finish_celsius - made.finish_rise_c).toBeCloseTo(97.85, 1);
});

test('who stays half the hours boils about half the sap, and the rest is kept; who stays long enough boils all', () => {
  const { hours } = planBoil(day)!;
  const half = planBoil({ ...day, stay_hours: hours! / 2 })!.stay!;
  expect(half.boil_litres / 140).toBeGreaterThan(0.4);
  expect(half.boil_litres / 140).toBeLessThan(0.55);
  // Nobody leaves a fire: what is kept goes by the amount that is done in time nine times in ten.
  expect(half.boil_litres_low + half.keep_litres).toBeCloseTo(140, 9);
  expect(half.boil_litres_low).toBeLessThan(half.boil_litres);
  expect(half.boil_litres_high).toBeGreaterThan(half.boil_litres);
  // That much sap, planned for itself, takes just that long in the middle, and the sure amount at the far end of its range.
  expect(planBoil({ ...day, litres: half.boil_litres })!.hours! / (hours! / 2)).toBeCloseTo(1, 2);
  expect(planBoil({ ...day, litres: half.boil_litres_low })!.hours_high! / (hours! / 2)).toBeCloseTo(1, 2);
  expect(planBoil({ ...day, stay_hours: hours! * 2 })!.stay!.keep_litres).toBe(0);
});

test('who leaves before all is boiled is planned for what can be boiled until then: nothing comes after the leaving', () => {
  const whole = planBoil(day)!;
  const made = planBoil({ ...day, stay_hours: whole.hours! / 2 })!;
  const last = made.stages.at(-1)!;
  expect(last.from_hours + last.hours).toBeLessThanOrEqual(whole.hours! / 2);
  expect(made.hours_high! / (whole.hours! / 2)).toBeCloseTo(1, 2);
  expect(made.hours_high!).toBeLessThanOrEqual(whole.hours! / 2);
  expect(made.syrup_litres / whole.syrup_litres).toBeCloseTo(made.stay!.boil_litres_low / 140, 9);
  expect(made.stages[0]!.litres).toBeCloseTo(made.stay!.boil_litres_low, 6);
  // Half a minute on the fire, too: a little sap, not none, for none makes no plan.
  expect(planBoil({ ...day, stay_hours: 1 / 120 })!.syrup_litres).toBeGreaterThan(0);
});

test('syrup is surer where the sap was measured than where the usual strength stands', () => {
  const width = ({ syrup_low_litres, syrup_high_litres }: NonNullable<ReturnType<typeof planBoil>>) =>
    syrup_high_litres / syrup_low_litres;
  expect(width(planBoil(day)!)).toBeLessThan(width(planBoil({ ...day, brix: undefined })!));
});

test('today’s pressure moves the finish on the dial: 10 hPa by 0.277 °C (trade: 0.0277 °C per hPa)', () => {
  const at = (hpa: number) => planBoil({ ...day, pressure: { hpa, at: 'station' } })!.finish_celsius;
  expect(at(1013) - at(1003)).toBeCloseTo(0.277, 1);
  const weatherPage = planBoil({ ...day, site: { altitude_m: 640 }, pressure: { hpa: 1013.25, at: 'sea-level' } })!;
  expect(weatherPage.water_celsius).toBeCloseTo(97.85, 0);
});

test('each pan says what it boils off: 33 % of 16 kW over 2.26 MJ/kg are 8.4 L an hour (common practice)', () => {
  const [back, , front] = planBoil(day)!.pans;
  expect(back!.litres_per_hour).toBeCloseTo((0.33 * 16_000 * 3600) / 2.26e6, 1);
  // A 400 mm pot, from 100 mm of cold sap down to 15 mm at the boil, less the ten minutes by which the boil calls before.
  const cold = Math.PI * 0.04 * (100 - 15 / 1.04);
  expect(back!.hand_every_hours).toBeCloseTo(cold / back!.litres_per_hour! - 1 / 6, 2);
  const late = pots.map((pot) => ({ ...pot, settings: { low_level_lead_s: 300 } }));
  expect(planBoil({ ...day, pans: late })!.pans[0]!.hand_every_hours).toBeCloseTo(
    cold / back!.litres_per_hour! - 1 / 12,
    2,
  );
  expect(back!.can_finish).toBe(false);
  expect(front!.can_finish).toBe(true);
});

test('what earlier boils showed of a fire goes before its nominal power, and is surer', () => {
  const known_heats = pots.map(({ id, heat }) => ({ pan: id, useful_w: heat!.power_w! * 0.45, spread: 0.06 }));
  const [usual, seen] = [planBoil(day)!, planBoil({ ...day, known_heats })!];
  expect(seen.hours! / usual.hours!).toBeCloseTo(0.33 / 0.45, 2);
  expect(seen.hours_high! / seen.hours_low!).toBeLessThan(usual.hours_high! / usual.hours_low!);
});

const reading = { stage: 'boiling', litres: 10, brix: 5, evaporation_l_per_h: 8.4 } as const;
const about = { waterC: 100, finishBrix: 67, sapBrix: 0.9 };
const underWay = (litres: number, pans: readonly unknown[]) =>
  planUnderWay({ ...day, pans: pots.slice(0, 1) }, litres, pans as PanReading[], about);

test('what is left of a boil under way follows from what is in the pans and boils off', () => {
  const left = underWay(100, [{ ...reading, pan: 'p1' }]);
  expect(left.left_litres).toBe(40);
  // By hand: 10 L of 5 °Bx and 40 L of 0.9 °Bx hold 0.51 + 0.36 kg of sugar; 67 °Bx leave 1.3 kg, so 49.1 kg of
  // water go, and 40 kg are warmed by 95 °C: (49.1 · 2257 + 40 · 4.19 · 95) kJ over 8.4 kg/h · 2257 kJ/kg.
  expect(left.hours).toBeCloseTo((49.1 * 2257 + 40 * 4.19 * 95) / (8.4 * 2257), 0);
  expect(left.hours_low!).toBeLessThan(left.hours!);
  expect(underWay(150, [{ ...reading, pan: 'p1' }]).left_litres).toBe(0);
});

test('a pot for the end that is still empty is waited for by nobody, and finishes what is left', () => {
  const input = { ...day, pans: [pots[0]!, stove] };
  const held = [
    { ...reading, pan: 'p1' },
    { pan: 'stove', stage: 'unknown', litres: null, brix: null, evaporation_l_per_h: null },
  ] as const;
  const { lacking, hours } = planUnderWay(input, 100, held, about);
  expect(lacking).toEqual([]);
  expect(hours!).toBeGreaterThan(planUnderWay({ ...day, pans: [pots[0]!] }, 100, held.slice(0, 1), about).hours!);
  // Once the rest is in it, it boils as any pan.
  const last = [{ ...held[1], stage: 'boiling', litres: 4, brix: 20, evaporation_l_per_h: 2 }] as const;
  expect(planUnderWay(input, 140, last, about).hours!).toBeGreaterThan(1);
});

test('a pan that holds what nobody knows leaves the hours not known', () => {
  expect(underWay(20, [{ ...reading, pan: 'p1', brix: null }]).hours).toBeNull();
  expect(underWay(20, [{ ...reading, pan: 'p1', stage: 'off' }]).hours).toBeNull();
});
