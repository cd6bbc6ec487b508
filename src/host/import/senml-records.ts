// Reads the records of a SenML pack (RFC 8428, JSON) and resolves them: base values applied, one name, time and value each.
import { z } from 'zod';

/** A problem of the pack; the sentence has no full stop. */
export class SenmlProblem extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'SenmlProblem';
  }
}

export interface ResolvedRecord {
  name: string;
  /** Absent where neither record nor base says one. */
  unit?: string;
  value: number | string | boolean | { data: string } | null;
  sum?: number;
  /** Seconds since 1970 from 2^28 on; below it seconds from the moment at which the pack was sent. */
  time: number;
}

const number = z.number();
const record = z.looseObject({
  bn: z.string().max(1000).optional(),
  bt: number.optional(),
  bu: z.string().max(100).optional(),
  bv: number.optional(),
  bs: number.optional(),
  bver: z.number().int().positive().optional(),
  n: z.string().max(1000).optional(),
  u: z.string().max(100).optional(),
  v: number.optional(),
  vs: z.string().optional(),
  vb: z.boolean().optional(),
  vd: z.string().optional(),
  s: number.optional(),
  t: number.optional(),
  ut: number.optional(),
});
type Record = z.infer<typeof record>;

/** The version that RFC 8428 defines, also the one that is meant where none is said. */
const NEWEST_VERSION = 10;
/** RFC 8428, 4.5.3: times below it are relative to "now". */
export const FIRST_ABSOLUTE_TIME = 2 ** 28;
/** RFC 8428, 4.5.1. */
const NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/;

/** Takes the records in their order, for a base field holds until the next one of its kind. */
export class SenmlResolver {
  #count = 0;
  #base: Pick<Record, 'bn' | 'bt' | 'bu' | 'bv' | 'bs'> = {};
  #version: number | null = null;

  /** The record resolved, or null where it only carries base fields. Throws SenmlProblem. */
  take(value: unknown): ResolvedRecord | null {
    this.#count += 1;
    const parsed = record.safeParse(value);
    if (!parsed.success) throw this.#problem(whatIsWrong(parsed.error));
    const fields = parsed.data;
    const unknown = Object.keys(fields).find((label) => label.endsWith('_'));
    if (unknown !== undefined)
      throw this.#problem(`its field "${unknown}" has to be understood, and is not known here`);
    this.#takeBase(fields);
    return this.#resolved(fields);
  }

  #takeBase(fields: Record): void {
    const { bver } = fields;
    if (bver !== undefined && bver > NEWEST_VERSION) {
      throw this.#problem(`it is of SenML version ${bver}, and this program reads up to ${NEWEST_VERSION}`);
    }
    if (bver !== undefined && this.#version !== null && bver !== this.#version) {
      throw this.#problem(`its version ${bver} is another than the ${this.#version} before it`);
    }
    this.#version ??= bver ?? NEWEST_VERSION;
    for (const label of ['bn', 'bt', 'bu', 'bv', 'bs'] as const) {
      if (fields[label] !== undefined) this.#base = { ...this.#base, [label]: fields[label] };
    }
  }

  #resolved(fields: Record): ResolvedRecord | null {
    const values = [fields.v, fields.vs, fields.vb, fields.vd].filter((one) => one !== undefined);
    if (values.length > 1) throw this.#problem('it has more than one value');
    const { bn = '', bt = 0, bu, bv, bs } = this.#base;
    const sum = bs === undefined && fields.s === undefined ? undefined : (bs ?? 0) + (fields.s ?? 0);
    const value = valueOf(fields, bv);
    if (value === null && sum === undefined) return null;
    const name = bn + (fields.n ?? '');
    if (!NAME.test(name)) throw this.#problem(`its name ${JSON.stringify(name)} is none that SenML allows`);
    const unit = fields.u ?? bu;
    return {
      name,
      value,
      time: bt + (fields.t ?? 0),
      ...(unit === undefined ? {} : { unit }),
      ...(sum === undefined ? {} : { sum }),
    };
  }

  #problem(what: string): SenmlProblem {
    return new SenmlProblem(`record ${this.#count}: ${what}`);
  }
}

/** A record without any of its own has the base value, where there is one and it has a place of its own. */
function valueOf(fields: Record, base: number | undefined): ResolvedRecord['value'] {
  if (fields.vs !== undefined) return fields.vs;
  if (fields.vb !== undefined) return fields.vb;
  if (fields.vd !== undefined) return { data: fields.vd };
  const isMeasurement = fields.v !== undefined || (base !== undefined && (fields.n ?? fields.t) !== undefined);
  return isMeasurement && fields.s === undefined ? (base ?? 0) + (fields.v ?? 0) : (fields.v ?? null);
}

function whatIsWrong(error: z.ZodError): string {
  const issue = error.issues[0];
  const field = issue?.path.join('.') ?? '';
  return field === ''
    ? 'it is no JSON object'
    : `its field "${field}" is not what SenML wants (${issue?.message ?? ''})`;
}
