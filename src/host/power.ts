// Reads from the system what the machine runs from, where it tells: on Linux the folder of its power supplies.
import { readFile, readdir } from 'node:fs/promises';
import { platform } from 'node:os';
import { join } from 'node:path';

export interface Power {
  onBattery: boolean;
  /** What is left of all batteries together, 0 to 100; null where it is not known. */
  percent: number | null;
  /** How long it will last at this rate; null where it is not known. */
  secondsLeft: number | null;
}

const LINUX_FOLDER = '/sys/class/power_supply';

/** What a supply's `uevent` file says, by the names after POWER_SUPPLY_. */
type Supply = Record<string, string>;

async function supplyIn(folder: string): Promise<Supply> {
  const text = await readFile(join(folder, 'uevent'), 'utf8').catch(() => '');
  return Object.fromEntries(
    text.split('\n').flatMap((line) => {
      const found = /^POWER_SUPPLY_(\w+)=(.*)$/.exec(line);
      return found === null ? [] : [[found[1] ?? '', found[2] ?? '']];
    }),
  );
}

function numberOf(text: string | undefined): number | null {
  return text !== undefined && /^-?\d+$/.test(text) ? Number(text) : null;
}

/** Left, full and flow of a battery in the same two units: µWh and µW, or µAh and µA; null for what is not told. */
function chargeOf(supply: Supply): { left: number | null; full: number | null; flow: number | null } {
  const kind = 'ENERGY_NOW' in supply ? 'ENERGY' : 'CHARGE';
  const flow = numberOf(supply[kind === 'ENERGY' ? 'POWER_NOW' : 'CURRENT_NOW']);
  return {
    left: numberOf(supply[`${kind}_NOW`]),
    full: numberOf(supply[`${kind}_FULL`]),
    // Some drivers give what flows out as less than zero.
    flow: flow === null ? null : Math.abs(flow),
  };
}

function sumOf(values: readonly (number | null)[]): number | null {
  return values.reduce((sum, value) => (sum === null || value === null ? null : sum + value), 0 as number | null);
}

function percentOf(batteries: readonly Supply[]): number | null {
  const [only] = batteries;
  if (batteries.length === 1 && only !== undefined) return numberOf(only['CAPACITY']);
  const charges = batteries.map(chargeOf);
  const left = sumOf(charges.map((charge) => charge.left));
  const full = sumOf(charges.map((charge) => charge.full));
  return left === null || full === null || full === 0 ? null : (100 * left) / full;
}

function secondsLeftOf(batteries: readonly Supply[]): number | null {
  const charges = batteries.map(chargeOf);
  const left = sumOf(charges.map((charge) => charge.left));
  const flow = sumOf(charges.map((charge) => charge.flow));
  return left === null || flow === null || flow === 0 ? null : (3600 * left) / flow;
}

/** What the supplies of a Linux system say together; null where there is no battery, or nothing is told. */
export async function linuxPower(folder = LINUX_FOLDER): Promise<Power | null> {
  const names = await readdir(folder).catch(() => []);
  const supplies = await Promise.all(names.map((name) => supplyIn(join(folder, name))));
  // The battery of a mouse or a pen is no concern of this.
  const batteries = supplies.filter((one) => one['TYPE'] === 'Battery' && one['SCOPE'] !== 'Device');
  if (batteries.length === 0) return null;
  const isOnMains = supplies.some((one) => one['TYPE'] !== 'Battery' && one['ONLINE'] === '1');
  const isDischarging = batteries.some((one) => one['STATUS'] === 'Discharging');
  const onBattery = !isOnMains && isDischarging;
  return { onBattery, percent: percentOf(batteries), secondsLeft: onBattery ? secondsLeftOf(batteries) : null };
}

/** What this system tells of its power; null where it does not. Never rejects. */
export async function systemPower(): Promise<Power | null> {
  return platform() === 'linux' ? linuxPower() : null;
}
