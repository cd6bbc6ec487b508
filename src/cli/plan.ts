// `plan`: says before the fire is lit what a boil will give and take.
import type { PanSetup } from '../core/boil/entries.ts';
import type { KnownHeat } from '../core/plan/burners.ts';
import { planBoil } from '../core/plan/plan.ts';
import type { Plan } from '../core/plan/plan.ts';
import type { DrawOff } from '../core/plan/stages.ts';
import { dataFolder } from '../host/data-folder.ts';
import { keptSettings } from '../host/kept-settings.ts';
import { knownHeats } from '../host/plan-heats.ts';
import { openNotebook } from '../notebook/open-notebook.ts';
import { checkPlan, planInput } from '../protocol/plan-schema.ts';
import type { PlanRequest } from '../protocol/plan-schema.ts';
import { CommandProblem, textOf } from './failure.ts';
import { printer } from './printer.ts';

/** Without a folder the same file gives the same plan, whatever was boiled before. */
export async function plan(file: string, options: { json?: boolean; data?: string }): Promise<void> {
  const checked = checkPlan(parsed(await textOf(file), file));
  if (!checked.ok) throw new CommandProblem(`${file}: ${checked.why}.`, 2);
  const input = planInput(checked.plan);
  const heats = options.data === undefined ? [] : heatsSeen(input.pans, dataFolder(options.data));
  const made = planBoil({ ...input, known_heats: heats });
  if (made === null) {
    throw new CommandProblem(
      `${file}: no syrup of this finish can be made of this sap: the finish must be stronger than the sap, and at most 80 °Bx.`,
      2,
    );
  }
  const out = printer();
  if (options.json) out.line(JSON.stringify({ kind: 'plan', ...made }, threeDecimals));
  else for (const line of planText(made, checked.plan, heats)) out.line(line);
  await out.flush();
}

/** What the notebook's boils showed of these pans' fires; nothing where it was switched off to use that. */
function heatsSeen(pans: readonly PanSetup[], folder: string): KnownHeat[] {
  const notebook = openNotebook(folder, { readOnly: true });
  try {
    for (const remark of notebook.remarks) process.stderr.write(`${remark}\n`);
    return keptSettings(notebook).use_learnt ? knownHeats(pans, notebook.learnt()) : [];
  } finally {
    notebook.close();
  }
}

function parsed(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new CommandProblem(`${file}: it is no JSON (${error instanceof Error ? error.message : String(error)}).`, 2);
  }
}

/** Three decimals everywhere: more than a plan knows, and little enough to read. */
const threeDecimals = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(value * 1000) / 1000 : value;

function planText(made: Plan, request: PlanRequest, heats: readonly KnownHeat[]): string[] {
  const litres = made.stay?.boil_litres_low ?? request.litres;
  const usual = made.sap_brix_usual ? ' (usual for this sap: measure it)' : '';
  return [
    `${number(litres)} L of sap of ${made.sap_brix.toFixed(1)} °Bx${usual} make ${made.syrup_litres.toFixed(2)} L (${made.syrup_kg.toFixed(2)} kg) of syrup of ${made.finish_brix.toFixed(1)} °Bx; ${number(made.evaporate_litres)} L of water boil away.`,
    `Likely ${made.syrup_low_litres.toFixed(2)}–${made.syrup_high_litres.toFixed(2)} L, by how well the sap is measured; what burns on or stays in the filter is not counted off.`,
    `Finish: ${made.finish_rise_c.toFixed(1)} °C over water's boiling point, which is ${(made.finish_celsius - made.finish_rise_c).toFixed(1)} °C at this altitude in usual weather.`,
    hoursText(made, request.start),
    ...heatsText(heats, request),
    ...made.fuel.map(
      (one) =>
        `Fuel: ${number(one.amount)} ${one.unit} of ${one.kind === 'electric' ? 'electricity' : one.kind} (${number(one.low)}–${number(one.high)}).`,
    ),
    ...stayText(made),
    ...made.stages
      .slice(1)
      .map((stage) =>
        [
          `${leftText(stage)}: pour together into ${stage.pans.map((pan) => nameOf(pan, request)).join(' and ')}.`,
          ...stage.too_full.map(
            ({ pan, room_mm }) =>
              `Foam needs room: no more than ${room_mm.toFixed(0)} mm deep in ${nameOf(pan, request)}, the rest as it boils down.`,
          ),
        ].join(' '),
      ),
    ...(made.draw_off === null
      ? []
      : [`${leftText(made.draw_off)}: pour what is left into a smaller pot and finish there.`]),
    ...(made.end_unused === null
      ? []
      : [
          `${made.end_unused.pans.map((pan) => nameOf(pan, request)).join(' and ')}, kept for the end, stays cold: ${made.end_unused.why === 'small' ? 'the syrup, with room for foam, does not fit in' : 'so little burns there'}.`,
        ]),
    made.smallest_batch_litres === null
      ? 'The smallest batch is not known: give the vessels their sizes.'
      : `The vessel that finishes needs the syrup of ${number(made.smallest_batch_litres)} L of this sap at least${made.ends_shallow ? ': this batch is smaller, so finish in a smaller pot' : ''}.`,
    `Jars, if all are of one size: ${made.jars.map((jar) => `${jar.count} of ${jar.litres} L`).join(', ') || 'not one of 0.1 L'}.`,
  ];
}

const leftText = ({ litres, brix, from_hours }: DrawOff): string =>
  `At about ${number(litres)} L and ${brix.toFixed(0)} °Bx, ${hourText(from_hours)} after the start`;

function stayText({ stay }: Plan): string[] {
  if (stay === null) return [];
  const time = `the ${hourText(stay.hours)} until you leave`;
  if (stay.keep_litres === 0) return [`All of it becomes syrup in ${time}, nine times in ten.`];
  return [
    `Boil ${number(stay.boil_litres_low)} L: in ${time} that becomes syrup nine times in ten (even odds: ${number(stay.boil_litres)} L). Keep about ${number(stay.keep_litres)} L below 4 °C, and boil it within days.`,
  ];
}

function hoursText({ hours, hours_low, hours_high }: Plan, start: string | undefined): string {
  if (hours === null || hours_low === null || hours_high === null)
    return 'Hours are not known: give the pans a power or a size.';
  const from = start === undefined ? '' : `, started ${start}`;
  return `At full flame it takes about ${hourText(hours)} (${hourText(hours_low)}–${hourText(hours_high)})${from}.`;
}

function heatsText(heats: readonly KnownHeat[], request: PlanRequest): string[] {
  if (heats.length === 0) return [];
  const seen = heats.map(({ pan, useful_w }) => `${nameOf(pan, request)} ${(useful_w / 1000).toFixed(1)} kW`);
  return [`Into the sap, as earlier boils showed: ${seen.join(', ')}.`];
}

const nameOf = (pan: string, { pans }: PlanRequest): string => pans.find(({ id }) => id === pan)?.name ?? pan;
const hourText = (hours: number): string => `${hours.toFixed(hours < 10 ? 1 : 0)} h`;
const number = (value: number): string => value.toFixed(value < 10 ? 1 : 0);
