// How far core/physics is from published tables, and what one call costs.
import { readFileSync } from 'node:fs';
import { densityKgPerM3 } from '../../src/core/physics/density.ts';
import { trueBrixFromHydrometer } from '../../src/core/physics/instruments.ts';
import { stationPressureFromAltitudeHpa } from '../../src/core/physics/station-pressure.ts';
import { riseFromStrength, strengthFromRise } from '../../src/core/physics/sugar-solution.ts';
import { sugarShares } from '../../src/core/physics/sugar-shares.ts';
import { saturationTemperatureCelsius } from '../../src/core/physics/water-point.ts';
import { middleMilliseconds } from './timing.ts';

const SUCROSE = { sucrose: 1, glucose: 0, fructose: 0 };

/** Rows of a table as numbers by column, `#` lines and the head left out; blanks become NaN. */
function table(name: string): number[][] {
  const text = readFileSync(new URL(`../../fixtures/tables/${name}.csv`, import.meta.url), 'utf8');
  const rows = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return rows.slice(1).map((row) => row.split(',').map((cell) => (cell.trim() === '' ? NaN : Number(cell))));
}

interface Comparison {
  quantity: string;
  source: string;
  unit: string;
  pairs: [ours: number | null, theirs: number][];
}

function comparisons(): Comparison[] {
  const sucrose = table('bpe_sucrose_101325').filter((row) => row[0]! <= 75);
  const rise = (brix: number): number | null => riseFromStrength(brix, SUCROSE, 1013.25);
  return [
    {
      quantity: 'water point',
      source: 'IAPWS-IF97 eq. 31, computed table',
      unit: '°C',
      pairs: table('water_boiling_vs_pressure').map((row) => [saturationTemperatureCelsius(row[0]!), row[1]!]),
    },
    {
      quantity: 'station pressure',
      source: 'ISO 2533 / ICAO levels',
      unit: 'hPa',
      pairs: table('isa_pressure')
        .filter((row) => Number.isFinite(row[2]))
        .map((row) => [stationPressureFromAltitudeHpa(row[0]!), row[2]!]),
    },
    {
      quantity: 'rise, sucrose',
      source: 'Kadlec, Bretschneider & Dandar 1978',
      unit: '°C',
      pairs: sucrose.map((row) => [rise(row[0]!), row[3]!]),
    },
    {
      quantity: 'rise, sucrose',
      source: 'Bubnik & Kadlec 1995',
      unit: '°C',
      pairs: sucrose.map((row) => [rise(row[0]!), row[4]!]),
    },
    {
      quantity: 'density at 20 °C',
      source: 'CRC Handbook, as transcribed',
      unit: 'kg/m³',
      pairs: table('density_crc_20C')
        .filter((row) => row[0]! <= 80)
        .map((row) => [densityKgPerM3(row[0]!, 20), row[1]!]),
    },
    {
      quantity: 'hot hydrometer, 66.9 °Bx',
      source: 'Vermont-calibrated chart',
      unit: '°Bx',
      pairs: table('hydrometer_hot_readings')
        .filter((row) => Number.isFinite(row[2]) && row[1]! <= 100)
        .map((row) => [
          trueBrixFromHydrometer({ readingBrix: row[2]!, sampleCelsius: row[1]!, referenceCelsius: 15.56 }),
          66.9,
        ]),
    },
  ];
}

export async function physics(): Promise<void> {
  console.log('  quantity                   points  mean residual  worst');
  for (const { quantity, source, unit, pairs } of comparisons()) {
    const residuals = pairs.flatMap(([ours, theirs]) =>
      ours === null || !Number.isFinite(theirs) ? [] : [ours - theirs],
    );
    const mean = residuals.reduce((sum, one) => sum + one, 0) / residuals.length;
    const worst = residuals.reduce((far, one) => (Math.abs(one) > Math.abs(far) ? one : far), 0);
    console.log(
      `  ${quantity.padEnd(26)} ${String(residuals.length).padStart(6)}  ${mean.toFixed(4).padStart(13)}  ${worst.toFixed(4)} ${unit}  (${source})`,
    );
  }
  const calls = 100_000;
  const maple = sugarShares('maple');
  const cost = await middleMilliseconds(5, () => {
    for (let i = 0; i < calls; i++) strengthFromRise(0.2 + (i % 1000) / 200, maple, 950);
  });
  console.log(`  strength from rise: ${((1000 * cost) / calls).toFixed(2)} us a call`);
}
