// How strong the sap is that goes into a pan: as somebody measured it in this boil, else as is usual for its kind.
import type { BoilState } from './state.ts';

/** Sugar in sap where nobody measured it, °Bx (trade.md, extension services: maple about 2, birch about 1). */
const TYPICAL_SAP_BRIX = { maple: 2, birch: 1 } as const;

/** Sap of a strength that was typed before in this boil, else what is usual for this kind. */
export function sapBrix(state: BoilState, pan: string): { brix: number; guessed: boolean } {
  for (let i = state.marks.length - 1; i >= 0; i--) {
    const { mark, withdrawn } = state.marks[i]!;
    if (mark.kind === 'top-up' && mark.brix !== undefined && !withdrawn) return { brix: mark.brix, guessed: false };
  }
  const birch = (state.designs[pan]?.shares.sucrose ?? 1) < 0.5;
  return { brix: birch ? TYPICAL_SAP_BRIX.birch : TYPICAL_SAP_BRIX.maple, guessed: true };
}
