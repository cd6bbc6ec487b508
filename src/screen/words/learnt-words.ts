// What earlier boils taught of a probe, a sap or a burner, as sentences in the person's units.
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { formatNumber, formatPower, formatVolume } from '../../core/quantities/format.ts';
import { Z80 } from '../../core/quantities/spread.ts';
import type { LearntListing, Settings } from '../client/types.ts';
import { dayAndTime } from './clock.ts';

/** "Birch sap boils 4 % further over water than its sugars alone say, ±1 %."; the ± holds the middle 80 %. */
export function learntWords(learnt: LearntListing, settings: Settings): string {
  if (learnt.about === 'burner') return burnerWords(learnt, settings);
  return learnt.about === 'probe' ? probeWords(learnt, settings) : sapWords(learnt, settings);
}

/** "From “Sunday's run”, begun 18 Apr 2027, 07:30."; of a burner "From 3 boils, the last …". */
export function taughtBy({ title, started, burner }: LearntListing): string {
  const several = burner !== undefined && burner.boils > 1 ? `${burner.boils} boils, the last ` : '';
  return `From ${several}${title === '' ? 'a boil' : `“${title}”,`} begun ${dayAndTime(started)}.`;
}

/** "probe A/1", "birch sap", "Back pot on propane (16 kW)". */
export function learntOf({ about, of, burner }: LearntListing, settings: Settings): string {
  if (burner !== undefined) return `${of}${burnerCalled(burner, settings)}`;
  return about === 'probe' ? `probe ${of}` : sapCalled(of);
}

function probeWords(learnt: LearntListing, settings: Settings): string {
  const { temperature } = settings;
  const off = differenceFromCelsius(learnt.value, temperature);
  const spread = Z80 * differenceFromCelsius(learnt.sigma, temperature);
  const digits = spread < 0.095 ? 2 : 1;
  const size = formatNumber(Math.abs(off), digits);
  const unit = `\u00A0°${temperature}`;
  const what = Number(size) === 0 ? 'is right' : `shows ${size}${unit} too ${off > 0 ? 'much' : 'little'}`;
  return `${capital(learntOf(learnt, settings))} ${what}, ±${formatNumber(spread, digits)}${unit}.`;
}

function sapWords(learnt: LearntListing, settings: Settings): string {
  const percent = 100 * learnt.value;
  const spread = 100 * Z80 * learnt.sigma;
  const digits = spread < 0.95 ? 1 : 0;
  const size = formatNumber(Math.abs(percent), digits);
  const unit = '\u00A0%';
  const what =
    Number(size) === 0
      ? 'boils as far over water as its sugars alone say'
      : `boils ${size}${unit} ${percent > 0 ? 'further' : 'less far'} over water than its sugars alone say`;
  return `${capital(learntOf(learnt, settings))} ${what}, ±${formatNumber(spread, digits)}${unit}.`;
}

type Burner = NonNullable<LearntListing['burner']>;

const FIRES = { propane: 'propane', wood: 'wood', electric: 'electricity', other: null };

function burnerCalled({ heat, power_w }: Burner, settings: Settings): string {
  const fire = FIRES[heat];
  const power = power_w === null ? '' : ` (${formatPower(power_w, settings.power)})`;
  return `${fire === null ? '' : ` on ${fire}`}${power}`;
}

/**
 * "Back pot on propane (16 kW) boils away 9.2 L an hour at full flame, 42 % of its power; the next boil 7.4 to 11.4 L an
 * hour. Its boils differ by ±15 %."
 */
function burnerWords(learnt: LearntListing, settings: Settings): string {
  const { value, sigma, burner } = learnt;
  if (burner === undefined) return '';
  const water = (kg: number): string => formatVolume(kg / KG_PER_LITRE, settings.volume);
  const share =
    burner.efficiency === null ? '' : `, ${percentOf(Math.round(100 * burner.efficiency) / 100)} of its power`;
  const range = `${water(value * Math.exp(-Z80 * sigma))} to ${water(value * Math.exp(Z80 * sigma))}`;
  const spread =
    burner.spread === null
      ? 'One boil does not tell how far its boils differ.'
      : `Its boils differ by ±${percentOf(Math.round(100 * Z80 * burner.spread) / 100)}.`;
  return `${learntOf(learnt, settings)} boils away about ${water(value)} of water an hour at full flame${share}; expect ${range} of the next boil. ${spread}`;
}

/** Litres are at 20 °C. */
const KG_PER_LITRE = 0.9982;

const SHARES = ['sucrose', 'glucose', 'fructose', 'acids and minerals'];

/** A key is maple, birch, or the four shares of a mix, 0 to 1, with a stroke between. */
function sapCalled(key: string): string {
  const shares = key.split('/').map(Number);
  if (shares.length !== SHARES.length) return `${key} sap`;
  const said = shares.flatMap((share, place) => (share > 0 ? [`${percentOf(share)} ${SHARES[place]}`] : []));
  return `sap of ${said.join(', ')}`;
}

function percentOf(share: number): string {
  const digits = Number((100 * share).toFixed(1)) % 1 === 0 ? 0 : 1;
  return `${formatNumber(100 * share, digits)}\u00A0%`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
