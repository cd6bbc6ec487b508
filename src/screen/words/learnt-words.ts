// What earlier boils taught of a probe or a sap, as sentences in the person's units.
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { formatNumber } from '../../core/quantities/format.ts';
import { Z80 } from '../../core/quantities/spread.ts';
import type { LearntListing, Settings } from '../client/types.ts';
import { dayAndTime } from './clock.ts';

/** "Birch sap boils 4 % further over water than its sugars alone say, ±1 %."; the ± holds the middle 80 %. */
export function learntWords(learnt: LearntListing, settings: Settings): string {
  return learnt.about === 'probe' ? probeWords(learnt, settings) : sapWords(learnt);
}

/** "From “Sunday's run”, begun 18 Apr 2027, 07:30." */
export function taughtBy({ title, started }: LearntListing): string {
  return `From ${title === '' ? 'a boil' : `“${title}”,`} begun ${dayAndTime(started)}.`;
}

/** "probe A/1", "birch sap". */
export function learntOf({ about, of }: LearntListing): string {
  return about === 'probe' ? `probe ${of}` : sapCalled(of);
}

function probeWords(learnt: LearntListing, { temperature }: Settings): string {
  const off = differenceFromCelsius(learnt.value, temperature);
  const spread = Z80 * differenceFromCelsius(learnt.sigma, temperature);
  const digits = spread < 0.095 ? 2 : 1;
  const size = formatNumber(Math.abs(off), digits);
  const unit = `\u00A0°${temperature}`;
  const what = Number(size) === 0 ? 'is right' : `shows ${size}${unit} too ${off > 0 ? 'much' : 'little'}`;
  return `${capital(learntOf(learnt))} ${what}, ±${formatNumber(spread, digits)}${unit}.`;
}

function sapWords(learnt: LearntListing): string {
  const percent = 100 * learnt.value;
  const spread = 100 * Z80 * learnt.sigma;
  const digits = spread < 0.95 ? 1 : 0;
  const size = formatNumber(Math.abs(percent), digits);
  const unit = '\u00A0%';
  const what =
    Number(size) === 0
      ? 'boils as far over water as its sugars alone say'
      : `boils ${size}${unit} ${percent > 0 ? 'further' : 'less far'} over water than its sugars alone say`;
  return `${capital(learntOf(learnt))} ${what}, ±${formatNumber(spread, digits)}${unit}.`;
}

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
