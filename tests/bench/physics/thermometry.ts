// What thermocouples, platinum and thermistors tell against published tables.
import { platinumCelsius } from '../../../src/core/physics/platinum.ts';
import { thermistorCelsius } from '../../../src/core/physics/thermistor.ts';
import { thermocoupleMillivolts, type ThermocoupleType } from '../../../src/core/physics/thermocouple.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison, Provenance } from './comparison.ts';

const types: ThermocoupleType[] = ['K', 'J', 'T'];
const readIn: Partial<Record<Provenance, string>> = {
  read: 'NIST ITS-90 table, below 0 °C',
  memory: 'NIST ITS-90 table, -20 to 400 °C',
};

/** The tables are printed to 1 µV, so half of that is no difference; type J was not seen in print. */
const thermocouples = types.flatMap((type) =>
  (['read', 'memory'] as const).map((provenance): Comparison => ({
    quantity: `thermocouple ${type}`,
    source: readIn[provenance] ?? '',
    provenance,
    unit: 'mV',
    limit: 0.0005,
    pairs: readTable('thermocouple_checks')
      .filter((row) => row.text('type') === type && row.text('by') === provenance)
      .map((row) => [thermocoupleMillivolts(type, row.number('t_C')), row.number('table_mV')]),
  })),
);

export const thermometryComparisons: Comparison[] = [
  ...thermocouples.filter(({ pairs }) => pairs.length > 0),
  {
    quantity: 'platinum, -190 to 600 °C',
    source: "sensor maker's table after IEC 60751",
    provenance: 'read',
    unit: '°C',
    // The last digit of the table is 0.01 ohm, 0.03 °C at its hot end.
    limit: 0.017,
    pairs: readTable('pt100_iec60751')
      .filter((row) => row.number('t_C') > -200)
      .map((row) => [platinumCelsius(100, row.number('R_ohm')), row.number('t_C')]),
  },
  {
    quantity: 'thermistor, -40 to 1 °C',
    source: "probe maker's table and Steinhart-Hart figures",
    provenance: 'read',
    unit: '°C',
    limit: 0.01,
    pairs: readTable('thermistor_10k').map((row) => [
      thermistorCelsius({ steinhart_hart: [1.129241e-3, 2.341077e-4, 8.775468e-8] }, row.number('R_ohm')),
      row.number('t_C'),
    ]),
  },
];
