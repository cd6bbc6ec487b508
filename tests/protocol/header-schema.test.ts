// A header that holds together is taken as it is; one that does not is refused with the field's name.
import { expect, test } from 'vitest';
import { mergePatch } from '../../src/core/boil/merge-patch.ts';
import { checkHeader, checkSetup } from '../../src/protocol/header-schema.ts';
import { parseHeader } from '../../src/protocol/recording.ts';

// Invented data.
const tarnHollow = {
  recording: 'panwarden',
  version: 1,
  name: "Sunday's run",
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1', offset_c: -0.4 }],
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      sap: 'birch',
      probe: 'A/1',
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16000 },
      min_depth_mm: 15,
      finish: { brix: 67 },
    },
  ],
};
const [port] = tarnHollow.ports;
const [probe] = tarnHollow.probes;
const [pan] = tarnHollow.pans;

test('the example of the contract holds together, and nothing is filled in or dropped', () => {
  const header = { ...tarnHollow, invented: true, pans: [{ ...pan, colour: 'blue' }] };
  expect(checkHeader(header)).toEqual({ ok: true, header });
  const least = { recording: 'panwarden', version: 1, started: '2027-04-18T14:30:00Z' };
  expect(checkHeader(least)).toEqual({ ok: true, header: least });
});

test('the other choices of the contract are taken', () => {
  const pans = [
    { id: 'a', probe: ['A/1'], role: 'reference', sap: { sucrose: 0.5, glucose: 0.3, fructose: 0.21 } },
    {
      id: 'b',
      vessel: { shape: 'rectangular', length_mm: 600, width_mm: 300 },
      finish: { rise_c: 3.94, ceiling_c: 94 },
    },
  ];
  const formats = [
    { kind: 'pairs' },
    { kind: 'columns', separator: ',', decimal: '.', channels: ['', 'T1'] },
    { kind: 'json', channels: { T1: '/probes/0/c' } },
    { kind: 'pattern', pattern: 'CH(?P<channel>\\d)' },
  ];
  const sensors = [
    { kind: 'temperature', unit: 'F' },
    { kind: 'thermocouple', type: 'K', cold_junction: 'CJ' },
    { kind: 'rtd', r0_ohm: 100 },
    { kind: 'ntc', steinhart_hart: [1e-3, 2e-4, 1e-7] },
    { kind: 'ntc', r25_ohm: 10000, beta_k: 3950 },
  ];
  const ports = [port, ...formats.map((format, index) => ({ id: `F${index}`, format }))];
  const probes = [
    probe,
    ...sensors.map((sensor, index) => ({ id: `S${index}`, port: 'A', channel: `C${index}`, sensor })),
  ];
  const header = { ...tarnHollow, ports, probes, pans, settings: { near_finish_lead_s: 900, later_setting: 'x' } };
  expect(checkHeader(header)).toEqual({ ok: true, header });
});

test('a vessel of a later shape leaves the depth unknown', () => {
  const header = { ...tarnHollow, pans: [{ id: 'p1', vessel: { shape: 'oval', long_mm: 500 } }] };
  const checked = checkHeader(header);
  expect(checked.ok && checked.header.pans?.[0]?.vessel).toBe(undefined);
});

test.each([
  [{ recording: 'other' }, 'recording must be "panwarden", but is "other"'],
  [{ version: 2 }, 'version is 2, and this program reads version 1: open it with a newer one'],
  [{ started: undefined }, /^started is missing/u],
  [{ started: '2027-04-18' }, /^started must be a date and time with its offset, .* but is "2027-04-18"$/u],
  [{ pans: [{ name: 'Back pot' }] }, 'pans[0].id is missing: it must be text'],
  [{ pans: [pan, { id: 'p2', probe: 'A/9' }] }, 'pans[1].probe names "A/9", which is not among the probes'],
  [{ pans: [pan, { id: 'p2', probe: ['A/1', 'A/9'] }] }, 'pans[1].probe names "A/9", which is not among the probes'],
  [{ pans: [pan, { id: 'p1' }] }, 'pans[1].id is "p1", which another of the pans has already'],
  [{ probes: [{ ...probe, port: 'B' }] }, 'probes[0].port names "B", which is not among the ports'],
  [{ probes: [probe, probe] }, 'probes[1].id is "A/1", which another of the probes has already'],
  [{ ports: [port, port] }, 'ports[1].id is "A", which another of the ports has already'],
  [
    { pans: [{ id: 'p1', sap: { sucrose: 0.5, glucose: 0.2, fructose: 0.1 } }] },
    'pans[0].sap must have shares that sum to 1 (0.99 to 1.01)',
  ],
  [
    { pans: [{ id: 'p1', sap: 'walnut' }] },
    /^pans\[0\]\.sap must be "maple", "birch", or the shares .* but is "walnut"$/u,
  ],
  [{ pans: [{ id: 'p1', vessel: { shape: 'round' } }] }, /^pans\[0\]\.vessel must be round with diameter_mm/u],
  [{ pans: [{ id: 'p1', heat: { kind: 'steam' } }] }, /^pans\[0\]\.heat\.kind must be "propane" or "wood"/u],
  [{ settings: { finish_probability: 0.99 } }, /^settings\.finish_probability must be .*0\.95.* but is 0\.99$/u],
  [{ settings: { finish_probability: 0 } }, /^settings\.finish_probability must be .*0\.05.* but is 0$/u],
  [{ pans: [{ id: 'p1', finish: { ceiling_c: 94 } }] }, /^pans\[0\]\.finish must have brix/u],
  [{ pans: { p1: {} } }, 'pans must be a list, but is {"p1":{}}'],
  [{ ports: [{ id: 'A', format: { kind: 'morse' } }] }, /^ports\[0\]\.format\.kind must be "pairs"/u],
])('refused, and the field is named: %j', (change, why) => {
  const checked = checkHeader({ ...tarnHollow, ...change });
  expect(checked).toEqual({ ok: false, why: typeof why === 'string' ? why : expect.stringMatching(why) });
});

test.each([null, [], 'panwarden', 5])('%j is no header', (value) => {
  expect(checkHeader(value).ok).toBe(false);
});

test('a header changed by a merge patch is checked again', () => {
  const joined = mergePatch(tarnHollow, { pans: [pan, { id: 'p2', name: 'Front pot' }], site: { altitude_m: null } });
  expect(checkHeader(joined)).toMatchObject({
    ok: true,
    header: { site: { name: 'Tarn Hollow' }, pans: [{ id: 'p1' }, { id: 'p2' }] },
  });
  expect(checkHeader(mergePatch(tarnHollow, { probes: null }))).toEqual({
    ok: false,
    why: 'pans[0].probe names "A/1", which is not among the probes',
  });
});

test('a setup needs the path of every port, and needs no start', () => {
  const { recording: _recording, version: _version, started: _started, ...rest } = tarnHollow;
  const setup = { ...rest, ports: [{ id: 'A', path: '/dev/ttyUSB0', baud: 115200, format: { kind: 'pairs' } }] };
  expect(checkSetup(setup)).toEqual({ ok: true, setup });
  expect(checkSetup(rest)).toEqual({ ok: false, why: 'ports[0].path is missing: it must be text' });
  expect(checkSetup({ ...setup, probes: [] })).toEqual({
    ok: false,
    why: 'pans[0].probe names "A/1", which is not among the probes',
  });
});

test('a header nested without end is refused, not followed', () => {
  const deep = `{"recording":"panwarden","version":1,"started":"2027-04-18T14:30:00Z","x":${'['.repeat(5000)}${']'.repeat(5000)}}`;
  expect(parseHeader(deep)).toEqual({ ok: false, why: 'it is nested deeper than 64 levels' });
  const brackets = JSON.stringify({ ...tarnHollow, name: '[{"\\'.repeat(100) });
  expect(parseHeader(brackets).ok).toBe(true);
});
