// The planned day as a picture: a bar for each pan from the lighting of its fire until it is poured together, and the finish with its range.
import type { JSX } from 'preact';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { Plan } from '../words/plan-words.ts';
import { clockAfter } from '../words/plan-words.ts';

const WIDTH = 1000;
const LABEL = 170;
const ROW = 46;
const TOP = 8;

/** Whole steps of hours so that about six labels stand along the day. */
function stepOf(hours: number): number {
  return [0.5, 1, 2, 3, 4, 6, 12, 24, 48].find((step) => hours / step <= 7) ?? 96;
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
  const x = (at: number): number => LABEL + (at / (high * 1.04)) * (WIDTH - LABEL);
  const bottom = TOP + plan.pans.length * ROW;
  const step = stepOf(high);
  const marks = Array.from({ length: Math.floor(high / step) + 1 }, (_, index) => index * step);
  const label = (at: number): string =>
    start === ''
      ? say('plan.hours', { hours: localDigits(String(at)) })
      : (/\d+:\d+/u.exec(clockAfter(start, at))?.[0] ?? '');
  return (
    <svg class="plan-timeline" viewBox={`0 0 ${WIDTH} ${bottom + 36}`} role="img" aria-label={say('plan.picture')}>
      {marks.map((at) => (
        <g key={at}>
          <line class="plan-hour" x1={x(at)} x2={x(at)} y1={TOP} y2={bottom} />
          <text x={x(at)} y={bottom + 26} text-anchor={at === 0 ? 'start' : 'middle'}>
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
          span={spanOf(plan, pan.pan)}
          every={pan.hand_every_hours}
          y={TOP + index * ROW}
          x={x}
          finish={hours}
        />
      ))}
    </svg>
  );
}

interface RowProps {
  name: string;
  span: Span | null;
  every: number | null;
  y: number;
  x: (hours: number) => number;
  finish: number;
}

function PanRow({ name, span, every, y, x, finish }: RowProps): JSX.Element {
  const isLast = span !== null && Math.abs(span.to - finish) < 1e-6;
  return (
    <g>
      {/* Letters of SVG do not wrap. */}
      <foreignObject x={0} y={y} width={LABEL - 12} height={ROW}>
        <p class="plan-pan">
          <span>{name}</span>
        </p>
      </foreignObject>
      {span !== null && (
        <rect class="plan-bar" x={x(span.from)} y={y + 8} width={x(span.to) - x(span.from)} height={28} rx={5} />
      )}
      {span !== null && every !== null && <Hands span={span} every={every} y={y} x={x} />}
      {span !== null && !isLast && (
        <path class="plan-pour" d={`M ${x(span.to)} ${y + 8} v 28 l 12 -14 z`}>
          <title>{say('plan.poured_here')}</title>
        </path>
      )}
      {isLast && (
        <rect
          class="plan-done"
          x={x(span.to) - 9}
          y={y + 13}
          width={18}
          height={18}
          transform={`rotate(45 ${x(span.to)} ${y + 22})`}
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
  const count = apart < 8 ? 0 : Math.floor((span.to - span.from) / every);
  return (
    <>
      {Array.from({ length: count }, (_, index) => {
        const at = x(span.from + (index + 1) * every);
        return <path key={index} class="plan-hand" d={`M ${at - 5} ${y + 8} h 10 l -5 9 z`} />;
      })}
    </>
  );
}
