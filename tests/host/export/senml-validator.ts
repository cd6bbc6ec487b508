// Judges a SenML pack by the text of RFC 8428 alone: it shares no code with the program and resolves records in its own way.

/** RFC 8428, 12.1, table 6, without what is marked "*": that is for reading old packs only. */
const UNITS = new Set(
  'm kg s A K cd mol Hz rad sr N Pa J W C V F Ohm S Wb T H Cel lm lx Bq Gy Sv kat m2 m3 m/s m/s2 m3/s W/m2 cd/m2 bit bit/s lat lon pH dB dBW count / %RH %EL EL 1/s S/m'.split(
    ' ',
  ),
);
/** Table 2: the JSON type of each label. */
const LABELS: Readonly<Record<string, string>> = {
  ...{ bn: 'string', bt: 'number', bu: 'string', bv: 'number', bs: 'number', bver: 'number' },
  ...{
    n: 'string',
    u: 'string',
    v: 'number',
    vs: 'string',
    vb: 'boolean',
    vd: 'string',
    s: 'number',
    t: 'number',
    ut: 'number',
  },
};
const VALUES = ['v', 'vs', 'vb', 'vd'];

export type Fields = Record<string, string | number | boolean>;

/** The records resolved by 4.6, and what breaks a rule. */
export function judgePack(text: string): { resolved: Fields[]; wrong: string[] } {
  const wrong: string[] = [];
  const pack = JSON.parse(text) as Fields[];
  if (!Array.isArray(pack)) return { resolved: [], wrong: ['4: no array'] };
  const base: Fields = {};
  const resolved = pack.flatMap((record, index) => {
    const say = (what: string) => wrong.push(`record ${index + 1}: ${what}`);
    for (const [label, value] of Object.entries(record)) {
      if (LABELS[label] === undefined) say(label.endsWith('_') ? `4.4: ${label}` : `5: no label ${label}`);
      else if (typeof value !== LABELS[label]) say(`table 2: ${label} is a ${typeof value}`);
      if (label.startsWith('b')) base[label] = value;
    }
    const values = VALUES.filter((label) => record[label] !== undefined);
    const isBaseOnly = values.length === 0 && record['s'] === undefined && base['bv'] === undefined;
    if (isBaseOnly) return [];
    if (values.length > 1) say('4.2: more than one value');
    const name = `${base['bn'] ?? ''}${record['n'] ?? ''}`;
    if (!/^[A-Za-z0-9][-A-Za-z0-9:./_]*$/.test(name)) say(`4.5.1: name ${name}`);
    const unit = record['u'] ?? base['bu'];
    if (unit !== undefined && !UNITS.has(String(unit))) say(`12.1: unit ${String(unit)}`);
    const time = Number(base['bt'] ?? 0) + Number(record['t'] ?? 0);
    const value = record['vs'] ?? record['vb'] ?? record['vd'] ?? Number(base['bv'] ?? 0) + Number(record['v'] ?? 0);
    return [{ n: name, ...(unit === undefined ? {} : { u: unit }), t: time, v: value }];
  });
  resolved.forEach(({ t }, index) => {
    if (index > 0 && Number(t) < Number(resolved[index - 1]?.['t']))
      wrong.push(`4.6: record ${index + 1} is out of time`);
    if (Number(t) < 2 ** 28) wrong.push(`4.6: record ${index + 1} has a relative time`);
  });
  return { resolved, wrong };
}
