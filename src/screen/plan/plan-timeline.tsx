// The planned day as a picture: a bar for each pan from the lighting of its fire until it is poured together, and the finish with its range.
import type { JSX } from 'preact';
import { HOUR_MS } from '../../core/quantities/time.ts';
import { language } from '../language/language.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { useWidth } from '../shell/use-width.ts';
import type { Plan } from '../words/plan-words.ts';
import { hoursAndMinutes } from '../words/clock.ts';

/** px, as it is shown: letters keep their size where the picture is narrow. */
const LABEL = 125;
const ROW = 34;
const BAR = 22;
const TOP = 6;
/** Beneath the bars, for the hours. */
const FOOT = 24;
const HOURS_A_DAY = 24;
/** Room of an hour's label with air beside it, px; with its day beside the hour. */
const HOUR_APART = 84;
const DAY_APART = 132;

/** Whole steps of hours so that their labels stand apart, six or so along a wide picture. */
function stepOf(hours: number, width: number): number {
  const most = Math.min(7, width / (hours < HOURS_A_DAY ? HOUR_APART : DAY_APART));
  return [0.5, 1, 2, 3, 4, 6, 12, 24, 48].find((step) => hours / step <= most) ?? 96;
}

/** "08:00", with its day of the week where the fire burns on into another. */
function hourLabel(start: string, at: number, hours: number): string {
  const then = new Date(Date.parse(`${start}Z`) + at * HOUR_MS);
  const time = hoursAndMinutes(then.getTime());
  if (hours < HOURS_A_DAY) return time;
  return `${new Intl.DateTimeFormat(language.value, { weekday: 'short', timeZone: 'UTC' }).format(then)} ${time}`;
}

interface Span {
  from: number;
  to: number;
}

function spanOf(plan: Plan, pan: string): Span | null {
  const own = plan.stages.filter(({ pans }) => pans.includes(pan));
  const last = own.at(-1);
  return last === undefined ? null : { from: own[0]!.from_hours, to: last.from_hours + last.hours };
}

/** Drawn where the hours are known. */
export function PlanTimeline({ plan, start }: { plan: Plan; start: string }): JSX.Element | null {
  const { hours, hours_low: low, hours_high: high } = plan;
  if (hours === null || low === null || high === null) return null;
  return <Day {...{ plan, start, hours, low, high }} />;
}

interface DayProps {
  plan: Plan;
  start: string;
  hours: number;
  low: number;
  high: number;
}

function Day({ plan, start, hours, low, high }: DayProps): JSX.Element {
  const [frame, width] = useWidth(760);
  const left = Math.min(LABEL, width * 0.3);
  const x = (at: number): number => left + (at / (high * 1.04)) * (width - left);
  const bottom = TOP + plan.pans.length * ROW;
  const step = stepOf(high * 1.04, width - left);
  const marks = Array.from({ length: Math.floor(high / step) + 1 }, (_, index) => index * step);
  const label = (at: number): string =>
    start === '' ? say('plan.hours', { hours: localDigits(String(at)) }) : hourLabel(start, at, high * 1.04);
  return (
    <div class="plan-day" ref={frame}>
      <svg class="plan-timeline" width={width} height={bottom + FOOT} role="img" aria-label={say('plan.picture')}>
        {marks.map((at) => (
          <g key={at}>
            <line class="plan-hour" x1={x(at)} x2={x(at)} y1={TOP} y2={bottom} />
            <text x={x(at)} y={bottom + 18} text-anchor={at === 0 ? 'start' : 'middle'}>
              {label(at)}
            </text>
          </g>
        ))}
        <rect class="plan-range" x={x(low)} y={TOP} width={x(high) - x(low)} height={bottom - TOP} />
        <line class="plan-finish" x1={x(hours)} x2={x(hours)} y1={TOP} y2={bottom} />
        {plan.stay !== null && plan.stay.hours <= high * 1.04 && (
          <line class="plan-leave" x1={x(plan.stay.hours)} x2={x(plan.stay.hours)} y1={TOP} y2={bottom}>
            <title>{say('plan.leave_here')}</title>
          </line>
        )}
        {plan.pans.map((pan, index) => (
          <PanRow
            key={pan.pan}
            name={pan.name}
            label={left - 8}
            span={spanOf(plan, pan.pan)}
            every={pan.hand_every_hours}
            y={TOP + index * ROW}
            x={x}
            finish={hours}
          />
        ))}
      </svg>
    </div>
  );
}

interface RowProps {
  name: string;
  /** Width of the name, px. */
  label: number;
  span: Span | null;
  every: number | null;
  y: number;
  x: (hours: number) => number;
  finish: number;
}

function PanRow({ name, label, span, every, y, x, finish }: RowProps): JSX.Element {
  const isLast = span !== null && Math.abs(span.to - finish) < 1e-6;
  return (
    <g>
      {/* Letters of SVG do not wrap. */}
      <foreignObject x={0} y={y} width={Math.max(0, label)} height={ROW}>
        <p class="plan-pan">
          <span>{name}</span>
        </p>
      </foreignObject>
      {span !== null && (
        <rect class="plan-bar" x={x(span.from)} y={y + 6} width={x(span.to) - x(span.from)} height={BAR} rx={4} />
      )}
      {span !== null && every !== null && <Hands span={span} every={every} y={y} x={x} />}
      {span !== null && !isLast && (
        <path class="plan-pour" d={`M ${x(span.to)} ${y + 6} v ${BAR} l 9 ${-BAR / 2} z`}>
          <title>{say('plan.poured_here')}</title>
        </path>
      )}
      {isLast && (
        <rect
          class="plan-done"
          x={x(span.to) - 7}
          y={y + 10}
          width={14}
          height={14}
          transform={`rotate(45 ${x(span.to)} ${y + 17})`}
        >
          <title>{say('plan.finish')}</title>
        </rect>
      )}
    </g>
  );
}

/** A notch for each time that cold sap is wanted; none where they would run together. */
function Hands({
  span,
  every,
  y,
  x,
}: {
  span: Span;
  every: number;
  y: number;
  x: (hours: number) => number;
}): JSX.Element {
  const apart = x(every) - x(0);
  const count = apart < 6 ? 0 : Math.floor((span.to - span.from) / every);
  return (
    <>
      {Array.from({ length: count }, (_, index) => {
        const at = x(span.from + (index + 1) * every);
        return <path key={index} class="plan-hand" d={`M ${at - 4} ${y + 6} h 8 l -4 7 z`} />;
      })}
    </>
  );
}
