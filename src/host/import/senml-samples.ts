// Gathers the temperatures of a SenML pack and what else it says of a boil, within limits.
import { nameOfPlain, OWN_PREFIX } from '../export/senml-names.ts';
import { FIRST_ABSOLUTE_TIME, SenmlProblem } from './senml-records.ts';
import type { ResolvedRecord } from './senml-records.ts';

export interface Channel {
  /** The pan's id: the record's name, or in a pack of ours the pan that it names. */
  pan: string;
  /** What the pan was called, where the pack says it. */
  title: string | null;
}

const MOST_CHANNELS = 100;
const MOST_SAMPLES = 2_000_000;
/** Far beyond anything that boils; what is more is no temperature. */
const LARGEST_CELSIUS = 10_000;

/** The temperatures in three lists of one length: a million samples as objects would take ten times the room. */
export class SenmlSamples {
  readonly channels: Channel[] = [];
  readonly times: number[] = [];
  readonly owners: number[] = [];
  readonly values: number[] = [];
  name: string | null = null;
  site: string | null = null;
  altitude: number | null = null;
  practice = false;
  /** Records that are no temperatures of a pan, by unit. */
  readonly leftOut = new Map<string, number>();
  readonly #byName = new Map<string, number>();
  readonly #titles = new Map<string, string>();

  /** Throws SenmlProblem. */
  take(record: ResolvedRecord): void {
    const own = ownName(record.name);
    if (own?.quantity !== undefined && own.quantity !== 'temperature') this.#takeOwn(own, record);
    else if (record.unit !== 'Cel' || !isTemperature(record.value)) this.#leaveOut(record);
    else this.#addSample(own?.pan ?? record.name, record.time, record.value);
  }

  /** With the titles, which may stand anywhere in the pack. */
  finished(): this {
    for (const channel of this.channels) channel.title = this.#titles.get(channel.pan) ?? null;
    return this;
  }

  #takeOwn({ pan, quantity }: OwnName, { value, ...record }: ResolvedRecord): void {
    if (quantity === 'name' && typeof value === 'string') {
      if (pan === null) this.name = value;
      else this.#titles.set(pan, value);
    } else if (quantity === 'site' && typeof value === 'string') this.site = value;
    else if (quantity === 'altitude' && typeof value === 'number') this.altitude = value;
    else if (quantity === 'practice') this.practice = value === true;
    else this.#leaveOut({ value, ...record });
  }

  #addSample(pan: string, time: number, celsius: number): void {
    if (time < FIRST_ABSOLUTE_TIME) {
      throw new SenmlProblem(
        'its times count from the moment at which it was sent, and it does not say when that was: ask for one with absolute times ("bt")',
      );
    }
    if (this.times.length >= MOST_SAMPLES) throw new SenmlProblem(`it has more than ${MOST_SAMPLES} temperatures`);
    this.times.push(time);
    this.owners.push(this.#ownerOf(pan));
    this.values.push(celsius);
  }

  #ownerOf(pan: string): number {
    const known = this.#byName.get(pan);
    if (known !== undefined) return known;
    if (this.channels.length >= MOST_CHANNELS) throw new SenmlProblem(`it has more than ${MOST_CHANNELS} sensors`);
    if (pan.length > 200) throw new SenmlProblem('the name of one of its sensors is longer than 200 characters');
    this.#byName.set(pan, this.channels.length);
    this.channels.push({ pan, title: null });
    return this.channels.length - 1;
  }

  #leaveOut({ unit = 'no unit' }: ResolvedRecord): void {
    const key = this.leftOut.size < 50 || this.leftOut.has(unit) ? unit : 'other units';
    this.leftOut.set(key, (this.leftOut.get(key) ?? 0) + 1);
  }
}

interface OwnName {
  /** null for what is said of the boil. */
  pan: string | null;
  quantity: string;
}

/** The parts of a name that our export made; null for any other. */
function ownName(name: string): OwnName | null {
  const [, , , local] = name.startsWith(OWN_PREFIX) ? name.split(':') : [];
  if (local === undefined) return null;
  const slash = local.indexOf('/');
  return slash === -1
    ? { pan: null, quantity: local }
    : { pan: nameOfPlain(local.slice(0, slash)), quantity: local.slice(slash + 1) };
}

function isTemperature(value: ResolvedRecord['value']): value is number {
  return typeof value === 'number' && Math.abs(value) <= LARGEST_CELSIUS;
}
