// The small symbol of an alarm: a shape per priority, so that colour is never alone.
import type { JSX } from 'preact';
import type { Priority } from '../client/types.ts';

/** Each in a square of so many units. */
export const OUTLINE_SIZE = 40;
export const OUTLINES: Record<Priority, string> = {
  high: 'M20 2 39 37H1Z',
  medium: 'M20 1 39 20 20 39 1 20Z',
  low: 'M20 2a18 18 0 1 0 0 36 18 18 0 0 0 0-36Z',
};

interface AlarmShapeProps {
  priority: Priority;
  /** Only while it stands and is unseen; reduced motion stops it. */
  flashes: boolean;
  isOver?: boolean;
  /** px; within another drawing, where no style sheet gives it one. */
  size?: number;
}

export function AlarmShape({ priority, flashes, isOver = false, size }: AlarmShapeProps): JSX.Element {
  return (
    <svg
      class={`shape shape-${priority}${flashes ? ' shape-flashes' : ''}${isOver ? ' shape-over' : ''}`}
      width={size}
      height={size}
      viewBox="0 0 40 40"
      aria-hidden="true"
    >
      <path d={OUTLINES[priority]} />
      <text x="20" y={priority === 'high' ? 34 : 29} text-anchor="middle">
        {priority === 'low' ? 'i' : '!'}
      </text>
    </svg>
  );
}
