// What each kind of mark is called, on the screen as on paper.
import type { MessageKey } from './tongue.ts';

export const MARK_KINDS = {
  'top-up': 'mark.kind.top_up',
  transfer: 'mark.kind.transfer',
  'draw-off': 'mark.kind.draw_off',
  flame: 'mark.kind.flame',
  pressure: 'mark.kind.pressure',
  'water-check': 'mark.kind.water_check',
  density: 'mark.kind.density',
  depth: 'mark.kind.depth',
  reading: 'mark.kind.reading',
  'move-probe': 'mark.kind.move_probe',
  fuel: 'mark.kind.fuel',
  'no-top-up': 'mark.kind.no_top_up',
  remind: 'mark.kind.remind',
  note: 'mark.kind.note',
  withdraw: 'mark.kind.withdraw',
} as const satisfies Record<string, MessageKey>;
