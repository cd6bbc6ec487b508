// What earlier boils taught of a probe, a sap or a burner, as sentences in the person's units.
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { formatNumber } from '../../core/quantities/format.ts';
import { Z80 } from '../../core/quantities/spread.ts';
import type { LearntListing, Settings } from '../client/types.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { calledById } from '../probes/kept.ts';
import { number, power, volume } from './amounts.ts';
import { dayAndTime } from './clock.ts';

/** "Birch sap boils 4 % further over water than its sugars alone say, ±1 %."; the ± holds the middle 80 %. */
export function learntWords(learnt: LearntListing, settings: Settings): string {
  if (learnt.about === 'burner') return burnerWords(learnt, settings);
  return learnt.about === 'probe' ? probeWords(learnt, settings) : sapWords(learnt, settings);
}

/** "From “Sunday's run”, begun 18 Apr 2027, 07:30."; of a burner "From 3 boils, the last …". */
export function taughtBy({ title, started, burner }: LearntListing): string {
  const [boils, begun] = [burner?.boils ?? 1, dayAndTime(started)];
  return title === ''
    ? say('learnt.taught_by', { boils, begun })
    : say('learnt.taught_by_named', { boils, title, begun });
}

/** "probe A/1", "birch sap", "Back pot on propane (16 kW)". */
export function learntOf({ about, of, burner }: LearntListing, settings: Settings): string {
  if (burner !== undefined) return burnerCalled(of, burner, settings);
  return about === 'probe' ? say('learnt.probe', { probe: calledById(of) ?? of }) : sapCalled(of);
}

function probeWords(learnt: LearntListing, settings: Settings): string {
  const { temperature } = settings;
  const off = differenceFromCelsius(learnt.value, temperature);
  const spread = Z80 * differenceFromCelsius(learnt.sigma, temperature);
  const digits = spread < 0.095 ? 2 : 1;
  const size = formatNumber(Math.abs(off), digits);
  const unit = `\u00A0°${temperature}`;
  return say('learnt.probe_shows', {
    probe: capital(learntOf(learnt, settings)),
    way: Number(size) === 0 ? 'right' : off > 0 ? 'much' : 'little',
    size: `${localDigits(size)}${unit}`,
    spread: `${number(spread, digits)}${unit}`,
  });
}

function sapWords(learnt: LearntListing, settings: Settings): string {
  const percent = 100 * learnt.value;
  const spread = 100 * Z80 * learnt.sigma;
  const digits = spread < 0.95 ? 1 : 0;
  const size = formatNumber(Math.abs(percent), digits);
  const unit = '\u00A0%';
  return say('learnt.sap_boils', {
    sap: capital(learntOf(learnt, settings)),
    way: Number(size) === 0 ? 'same' : percent > 0 ? 'further' : 'less',
    size: `${localDigits(size)}${unit}`,
    spread: `${number(spread, digits)}${unit}`,
  });
}

type Burner = NonNullable<LearntListing['burner']>;

function burnerCalled(of: string, { heat, power_w }: Burner, settings: Settings): string {
  const called = say('learnt.burner', { of, heat });
  return power_w === null ? called : say('learnt.burner_of_power', { called, power: power(power_w, settings) });
}

/**
 * "Back pot on propane (16 kW) boils away 9.2 L an hour at full flame, 42 % of its power; the next boil 7.4 to 11.4 L an
 * hour. Its boils differ by ±15 %."
 */
function burnerWords(learnt: LearntListing, settings: Settings): string {
  const { value, sigma, burner } = learnt;
  if (burner === undefined) return '';
  const water = (kg: number): string => volume(kg / KG_PER_LITRE, settings);
  const boils = say('learnt.burner_boils', {
    burner: learntOf(learnt, settings),
    water: water(value),
    share: burner.efficiency === null ? 'none' : percentOf(Math.round(100 * burner.efficiency) / 100),
    low: water(value * Math.exp(-Z80 * sigma)),
    high: water(value * Math.exp(Z80 * sigma)),
  });
  const spread =
    burner.spread === null
      ? say('learnt.burner_once')
      : say('learnt.burner_spread', { spread: percentOf(Math.round(100 * Z80 * burner.spread) / 100) });
  return `${boils} ${spread}`;
}

/** Litres are at 20 °C. */
const KG_PER_LITRE = 0.9982;

const SHARES: readonly MessageKey[] = [
  'learnt.share.sucrose',
  'learnt.share.glucose',
  'learnt.share.fructose',
  'learnt.share.others',
];

/** A key is maple, birch, or the four shares of a mix, 0 to 1, with a stroke between. */
function sapCalled(key: string): string {
  const shares = key.split('/').map(Number);
  if (shares.length !== SHARES.length) return say('learnt.sap', { sap: key });
  const said = SHARES.flatMap((name, place) => {
    const share = shares[place] ?? 0;
    return share > 0 ? [say(name, { percent: percentOf(share) })] : [];
  });
  return say('learnt.sap_of', { shares: said.join(', ') });
}

function percentOf(share: number): string {
  const digits = Number((100 * share).toFixed(1)) % 1 === 0 ? 0 : 1;
  return `${number(100 * share, digits)}\u00A0%`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
