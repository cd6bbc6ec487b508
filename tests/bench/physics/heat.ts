// Heat, fuels and yield against steam tables, published figures and the trade's rules.
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import { PROPANE_GROSS_MJ_PER_KG, PROPANE_KG_PER_LITRE, woodNetMjPerKg } from '../../../src/core/physics/fuel.ts';
import { boilingDownHeatKj, latentHeatKjPerKg, specificHeatKjPerKgK } from '../../../src/core/physics/heat.ts';
import { openSurfaceLoss } from '../../../src/core/physics/open-surface.ts';
import { yieldOf } from '../../../src/core/physics/yield.ts';
import { celsiusFromFahrenheit } from '../../../src/core/quantities/units.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

const kjPerBtu = 1.05505585;
/** One Btu/(ft² h) in W/m². */
const wattsPerBtu = 3.15459;

const gallonOfSyrupBtu = (): number => {
  const kg = ((densityKgPerM3(66, 20) ?? NaN) * 3.785411784 * 66) / 2 / 1000;
  return (boilingDownHeatKj({ kg, brix: 2, fromCelsius: 5 }, 66) ?? NaN) / kjPerBtu;
};

const tanks = readTable('open_tank_heat_loss');
const tankLoss = (fahrenheit: number, airFahrenheit: number, vapourHpa: number) =>
  openSurfaceLoss(celsiusFromFahrenheit(fahrenheit), 0, {
    celsius: celsiusFromFahrenheit(airFahrenheit),
    vapourHpa,
    windMetresPerSecond: 0,
    pressureHpa: 1013.25,
  });
/** Half moist air of 60 °F. */
const inShed = (fahrenheit: number) => tankLoss(fahrenheit, 60, 8.9);

const ratio = (brixSap: number, brixSyrup: number): number => 1 / (yieldOf(1, brixSap, brixSyrup)?.litres ?? NaN);

export const heatComparisons: Comparison[] = [
  {
    quantity: 'latent heat, 80–110 °C',
    source: 'IAPWS-IF97, worked out apart',
    provenance: 'computed',
    unit: 'kJ/kg',
    limit: 0.02,
    pairs: readTable('latent_heat_if97').map((row) => [latentHeatKjPerKg(row.number('t_C')), row.number('h_fg')]),
  },
  {
    quantity: 'specific heat at 100 °C',
    source: 'Smith 2000 (UCT), another equation, 2–66 °Bx',
    provenance: 'computed',
    unit: 'kJ/kgK',
    limit: 0.22,
    pairs: [
      [specificHeatKjPerKgK(2, 100), 4.177],
      [specificHeatKjPerKgK(10, 100), 4.006],
      [specificHeatKjPerKgK(30, 100), 3.579],
      [specificHeatKjPerKgK(50, 100), 3.153],
      [specificHeatKjPerKgK(66, 100), 2.811],
    ],
  },
  {
    quantity: 'heat for a US gallon, 2 % sap',
    source: 'Ohio State Extension, a round figure',
    provenance: 'read',
    unit: 'Btu',
    limit: 6000,
    pairs: [[gallonOfSyrupBtu(), 400_000]],
  },
  {
    quantity: 'open surface, evaporation',
    source: 'Engineering ToolBox, 110–210 °F, rough',
    provenance: 'read',
    unit: 'W/m²',
    limit: 2000,
    pairs: tanks.map((row) => [
      inShed(row.number('F'))?.evaporationWatts ?? null,
      row.number('evaporation_60F') * wattsPerBtu,
    ]),
  },
  {
    quantity: 'open surface, rest',
    source: 'Engineering ToolBox, 110–210 °F, rough',
    provenance: 'read',
    unit: 'W/m²',
    limit: 80,
    pairs: tanks.map((row) => {
      const loss = inShed(row.number('F'));
      return [
        loss === null ? null : loss.convectionWatts + loss.radiationWatts,
        row.number('radiation_60F') * wattsPerBtu,
      ];
    }),
  },
  {
    quantity: 'open surface, evaporation, dry',
    source: 'Steam Tip Sheet 19',
    provenance: 'read',
    unit: 'W/m²',
    limit: 3500,
    pairs: tanks
      .filter((row) => row.value('evaporation_dry_65F') !== null)
      .map((row) => [
        tankLoss(row.number('F'), 65, 0)?.evaporationWatts ?? null,
        row.number('evaporation_dry_65F') * wattsPerBtu,
      ]),
  },
  {
    quantity: 'propane, gross',
    source: 'commercial propane, 91,525 Btu/US gal',
    provenance: 'read',
    unit: 'MJ/L',
    limit: 0.26,
    pairs: [[PROPANE_GROSS_MJ_PER_KG * PROPANE_KG_PER_LITRE, (91_525 * kjPerBtu) / 1000 / 3.785411784]],
  },
  {
    quantity: 'wood, net, oven-dry',
    source: 'heating value sheet, 8,050 Btu/lb',
    provenance: 'read',
    unit: 'MJ/kg',
    limit: 0.05,
    pairs: [[woodNetMjPerKg(0), (8050 * kjPerBtu) / 1000 / 0.45359237]],
  },
  {
    quantity: 'sap over syrup, 65.5 °Bx, 1 %',
    source: 'rule of 86 (C. H. Jones)',
    provenance: 'read',
    unit: '',
    limit: 0.3,
    pairs: [[ratio(1, 65.5), 86]],
  },
  {
    quantity: 'sap over syrup, 66 °Bx, 1–12 %',
    source: 'revised rule (Perkins & Isselhardt, UVM)',
    provenance: 'read',
    unit: '',
    limit: 0.35,
    pairs: [1, 2, 3, 8, 12].map((brix) => [ratio(brix, 66), 87.1 / brix - 0.32]),
  },
];
