// The figures of one boil: what each is, how sure it is, and where it comes from.
import type { JSX } from 'preact';
import type { Balance, BoilFigures, BoilPage, BoilPageView, FigureName } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import {
  balanceWords,
  boiledBeforeWords,
  figureLabel,
  figureWords,
  fromWords,
  heatUnitWords,
  leftOverWords,
  rangeWords,
  ratioOfWords,
  unseenWords,
} from '../words/figure-words.ts';
import { jarsWords } from '../words/jar-words.ts';
import { type MessageKey, say } from '../language/say.ts';

const GROUPS: readonly (readonly [title: MessageKey, names: readonly FigureName[]])[] = [
  ['notebook.group.sap', ['sap_litres', 'sap_brix', 'sap_sugar_kg']],
  ['notebook.group.syrup', ['syrup_litres', 'syrup_kg', 'syrup_brix', 'syrup_sugar_kg', 'expected_syrup_litres']],
  ['notebook.group.ratio', ['ratio', 'exact_ratio', 'ratio_by_86', 'ratio_by_revised_86']],
  ['notebook.group.sugar', ['left_sugar_kg', 'lost_sugar_kg', 'gap_sugar_kg']],
  ['notebook.group.water', ['water_off_litres', 'water_off_l_per_h', 'boiling_hours', 'hours']],
  ['notebook.group.fuel', ['fuel_kg', 'fuel_kwh', 'fuel_cords', 'fuel_mj', 'fuel_kg_per_l', 'fuel_mj_per_l']],
  ['notebook.group.money', ['fuel_price', 'cost', 'jars', 'cost_a_jar']],
  ['notebook.group.alarms', ['alarms', 'alarms_no_use']],
];
/** Kinds of fuel that were not used are no gap in what is known. */
const LEFT_OUT_UNKNOWN: ReadonlySet<FigureName> = new Set([
  'fuel_kwh',
  'fuel_cords',
  'ratio_by_86',
  'ratio_by_revised_86',
]);

/** Jars by their sizes, where somebody told those. */
const saidOf = (name: FigureName, figure: BoilFigures[FigureName], jars: BoilPage['jars'] = []): string =>
  name === 'jars' && figure !== null && jars.length > 0
    ? jarsWords(jars, settings.value)
    : figureWords(name, figure, settings.value);

interface LineProps {
  name: FigureName;
  figures: BoilFigures;
  jars: BoilPage['jars'];
  /** So many kinds of sap were boiled. */
  kinds: number;
  pours: BoilPageView['pours'];
  /** Some pan was seen to boil, or watched by a probe. */
  wasSeen: boolean;
}

function Line({ name, figures, jars, kinds, pours, wasSeen }: LineProps): JSX.Element | null {
  const figure = figures[name];
  const boiledBefore = pours?.some((pour) => pour.boiledBefore === true) === true;
  if (figure === null && LEFT_OUT_UNKNOWN.has(name)) return null;
  return (
    <tr>
      <th scope="row">{figureLabel(name)}</th>
      <td class={figure === null ? 'unknown' : 'figure'}>{saidOf(name, figure, jars)}</td>
      <td class="hint">
        {name === 'jars'
          ? leftOverWords(jars, figures.syrup_litres, settings.value)
          : rangeWords(name, figure, settings.value)}
        {name === 'sap_litres' && figure !== null && <div>{boiledBeforeWords(pours, settings.value)}</div>}
        {name === 'ratio' && <div>{ratioOfWords(figures, { kinds, boiledBefore }, settings.value)}</div>}
        {unseenWords(name, figures, wasSeen)}
      </td>
      <td class="hint">{figure === null ? '' : fromWords(figure.from)}</td>
    </tr>
  );
}

interface FiguresProps {
  figures: BoilFigures;
  balance: Balance;
  jars: BoilPage['jars'];
  kinds: number;
  pours: BoilPageView['pours'];
  wasSeen: boolean;
}

export function FiguresTable({ figures, balance, jars, kinds, pours, wasSeen }: FiguresProps): JSX.Element {
  return (
    <section class="panel figures" aria-label={say('notebook.figures_of')}>
      <h2>{say('notebook.figures')}</h2>
      <p>{balanceWords(balance, figures, settings.value)}</p>
      <table>
        <thead>
          <tr>
            <th>{say('notebook.figures.what')}</th>
            <th>{say('notebook.figures.figure')}</th>
            <th>{say('notebook.figures.range')}</th>
            <th>{say('notebook.figures.from')}</th>
          </tr>
        </thead>
        {GROUPS.map(([title, names]) => (
          <tbody key={title}>
            <tr class="group">
              <th colSpan={4} scope="rowgroup">
                {say(title)}
              </th>
            </tr>
            {names.map((name) => (
              <Line key={name} {...{ name, figures, jars, kinds, pours, wasSeen }} />
            ))}
          </tbody>
        ))}
      </table>
      {figures.fuel_mj !== null && <p class="hint">{heatUnitWords(settings.value)}</p>}
    </section>
  );
}
