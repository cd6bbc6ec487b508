// How far the strength is off, and how wide its range, while the pressure falls by 15 hPa: with it told, shown by a pot, or not at all.
import { underTheFront, WAYS_TO_TELL } from '../core/boil/front-boil.ts';

export async function front(): Promise<void> {
  console.log('  an invented maple boil from 32 to 68 °Bx, one boiling check at the start, 15 hPa in six hours');
  console.log('  °Bx said less true, and in brackets how wide the middle 80 % is; OUT where the truth lies outside it');
  console.log(
    `  hour                ${Array.from({ length: 8 }, (_, hour) => String(hour + 1).padStart(14)).join('')}`,
  );
  const boils = WAYS_TO_TELL.map((way) => ({ way, hours: underTheFront(way) }));
  console.log(`  true, °Bx           ${boils[0]!.hours.map(({ truth }) => truth.toFixed(1).padStart(14)).join('')}`);
  for (const { way, hours } of boils) {
    const cells = hours.map(({ brix, low, high, truth }) => {
      const held = low <= truth && truth <= high;
      return `${(brix - truth).toFixed(2)} (${(high - low).toFixed(1)}${held ? '' : ', OUT'})`.padStart(14);
    });
    console.log(`  ${way.padEnd(20)}${cells.join('')}`);
  }
  return Promise.resolve();
}
