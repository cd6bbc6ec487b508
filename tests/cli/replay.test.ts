// `replay` as the contract has it: lines in order of t, whole multiples, `null` for what is not known, and clear refusals.
import { afterAll, expect, test } from 'vitest';
import { ownFolder, panwarden } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());

const header = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' }],
};

function recording(name: string, entries: readonly unknown[], tail = ''): string {
  const lines = [header, ...entries].map((line) => (typeof line === 'string' ? line : JSON.stringify(line)));
  return own.write(name, `${lines.join('\n')}\n${tail}`);
}

const lines = (from: number, to: number) =>
  Array.from({ length: to - from }, (_, index) => ({
    t: (from + index) * 1000,
    port: 'A',
    line: `T1=${97 + (index % 3) / 10}C`,
  }));

const FIELDS =
  'kind,t,pan,temperature_c,water_c,rise_c,rate_c_per_min,brix,brix_low,brix_high,litres,depth_mm,evaporation_l_per_h,finish_in_s,finish_low_s,finish_high_s,scorch_in_s,top_up_in_s,stage,probe';

test('readings stand at every whole multiple up to the last entry, with every field in its order', () => {
  const file = recording('plain.boil.jsonl', lines(0, 31));
  const { status, stderr, lines: printed } = panwarden('replay', file, '--json', '--every', '10');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const readings = printed().filter(({ kind }) => kind === 'reading');
  expect(readings.map(({ t }) => t)).toEqual([0, 10_000, 20_000, 30_000]);
  for (const reading of readings) expect(Object.keys(reading).join()).toBe(FIELDS);
  expect(readings.at(-1)).toMatchObject({ temperature_c: expect.closeTo(97.1, 0), litres: null, probe: 'ok' });
});

test('the clock runs on where nothing comes, alarms stand in order of t, and --every does not change them', () => {
  const file = recording('silent.boil.jsonl', [
    ...lines(0, 30),
    { t: 600_000, mark: { kind: 'note', text: 'invented' } },
  ]);
  const alarmsAt = (every: string) =>
    panwarden('replay', file, '--json', '--every', every)
      .lines()
      .filter(({ kind }) => kind === 'alarm');
  const all = panwarden('replay', file, '--json', '--every', '7')
    .lines()
    .map(({ t }) => t as number);
  expect(all).toEqual([...all].sort((a, b) => a - b));
  expect(alarmsAt('7')).toContainEqual(expect.objectContaining({ alarm: 'probe-lost', event: 'raised', pan: 'p1' }));
  expect(alarmsAt('1')).toEqual(alarmsAt('7'));
  expect(alarmsAt('3600')).toEqual(alarmsAt('7'));
});

test('inside a gap nothing is known, and nothing falls due in it', () => {
  const gap = { t: 900_000, run: 'gap', seconds: 870 };
  const file = recording('gap.boil.jsonl', [...lines(0, 31), gap, ...lines(901, 910)]);
  const printed = panwarden('replay', file, '--json', '--every', '100').lines();
  const inside = printed.filter(
    ({ kind, t }) => kind === 'reading' && (t as number) > 31_000 && (t as number) < 900_000,
  );
  expect(inside.length).toBe(8);
  for (const reading of inside) expect(reading).toMatchObject({ temperature_c: null, brix: null });
  expect(printed.filter(({ kind }) => kind === 'alarm')).toEqual([]);
});

test('--with runs the boil again under another header', () => {
  const file = recording('with.boil.jsonl', lines(0, 11));
  const patch = own.write('offset.json', { probes: [{ id: 'A/1', port: 'A', channel: 'T1', offset_c: 2 }] });
  const temperature = (...more: string[]) =>
    panwarden('replay', file, '--json', '--every', '10', ...more)
      .lines()
      .at(-1)?.['temperature_c'] as number;
  expect(temperature('--with', patch) - temperature()).toBeCloseTo(2, 1);
});

test('--with asks for a surer finish, which is called later, and one that is out of range is refused by name', () => {
  const fixture = new URL('../../fixtures/recordings/birch-one-pan.boil.jsonl', import.meta.url).pathname;
  const called = (finish_probability: number): number => {
    const patch = own.write(`sure-${finish_probability}.json`, { settings: { finish_probability } });
    const calls = panwarden('replay', fixture, '--json', '--every', '3600', '--with', patch).lines();
    return calls.find(({ alarm, event }) => alarm === 'finish' && event === 'raised')?.['t'] as number;
  };
  const [early, late] = [called(0.2), called(0.8)];
  expect(late).toBeGreaterThan(early);
  const patch = own.write('too-sure.json', { settings: { finish_probability: 1 } });
  const refused = panwarden('replay', fixture, '--json', '--every', '3600', '--with', patch);
  expect(refused.status).toBe(2);
  expect(refused.stderr).toContain('settings.finish_probability must be');
});

test('a bad line, a t that steps back and a torn tail are named, and the rest is used', () => {
  const file = recording(
    'rough.boil.jsonl',
    [...lines(0, 5), 'no json', { t: 1, port: 'A', line: 'T1=97' }, ...lines(5, 11)],
    '{"t":99',
  );
  const { status, stderr, lines: printed } = panwarden('replay', file, '--json', '--every', '10');
  expect(status).toBe(0);
  expect(stderr).toContain('line 7 was left out: it is no JSON');
  expect(stderr).toContain('line 8 was left out: its t of 1 steps back');
  expect(stderr).toContain('3 lines were left out');
  expect(printed().at(-1)).toMatchObject({ kind: 'reading', t: 10_000 });
});

const torn = { ...header, pans: [{ id: 'p1', probe: 'B/9' }] };
test.each([
  ['an empty file', '', /line 1/],
  ['no recording', 'hello\n', /line 1/],
  ['a header that names no probe', `${JSON.stringify(torn)}\n`, /pans\[0\]\.probe names "B\/9"/],
])('%s ends with 2 and one sentence that names the line', (name, text, sentence) => {
  const { status, stdout, stderr } = panwarden('replay', own.write(`${name}.boil.jsonl`, text), '--json');
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(sentence);
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
});

test.each([
  [['replay', '--nope'], /unknown option '--nope'/],
  [['replay', 'x', '--json', '--every', 'soon'], /--every/],
  [['replay', '/nowhere/x.boil.jsonl'], /no such file/],
  [['stir'], /unknown command 'stir'/],
  [['export', 'latest', '--to', 'x.xyz', '--data', own.path('none')], /\.boil\.jsonl/],
  [['export', 'latest', '--to', own.path('x.boil.jsonl'), '--data', own.path('none')], /boil/],
  [['watch', '--data', own.path('new')], /--setup/],
  [['watch', '--data', own.write('a-file', ''), '--setup', own.write('setup.json', {})], /a-file/],
])('%j ends with 2 and says why', (options, sentence) => {
  const { status, stdout, stderr } = panwarden(...options);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(sentence);
});

test.each(['start', 'watch', 'practice', 'replay', 'boils', 'export', 'import', 'end', 'check'])(
  '%s has --help',
  (name) => {
    const { status, stdout } = panwarden(name, '--help');
    expect(status).toBe(0);
    expect(stdout).toContain(`panwarden ${name}`);
  },
);

test('a name may be any word: "constructor" is a pan or a pan that is not there, and never the end of the program', () => {
  const named = JSON.stringify({ ...header, pans: [{ id: 'constructor', probe: 'A/1' }] });
  const mark = { t: 500, mark: { kind: 'top-up', pan: 'toString', litres: 3 } };
  const file = own.write(
    'words.boil.jsonl',
    `${[named, JSON.stringify(mark), ...lines(1, 5).map((one) => JSON.stringify(one))].join('\n')}\n`,
  );
  const result = panwarden('replay', file, '--json', '--every', '2');
  expect(result.status).toBe(0);
  expect(result.lines().at(-1)).toMatchObject({ pan: 'constructor', temperature_c: expect.any(Number) });
  expect(result.stderr).toContain('names the pan "toString", which is not there');
});

test('a change of the setup that cannot be used is said, and the rest goes on', () => {
  const file = recording('set.boil.jsonl', [{ t: 0, set: { pans: [{ id: 'p1', probe: 'nope' }] } }, ...lines(1, 5)]);
  const result = panwarden('replay', file, '--json', '--every', '2');
  expect([result.status, result.stderr]).toEqual([0, expect.stringContaining('could not be used')]);
});

test('patches that hold together only with each other are used together', () => {
  const pan = own.write('pan.json', JSON.stringify({ pans: [{ id: 'p1', probe: 'B/1' }] }));
  const probe = own.write('probe.json', JSON.stringify({ probes: [{ id: 'B/1', port: 'A', channel: 'T1' }] }));
  const file = recording('patched.boil.jsonl', lines(0, 3));
  expect(panwarden('replay', file, '--json', '--every', '1', '--with', pan, '--with', probe).status).toBe(0);
  expect(panwarden('replay', file, '--json', '--every', '1', '--with', pan).status).toBe(2);
});
