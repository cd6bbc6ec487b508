// What a person usually wants of a sap, filled into a pan of a new boil wherever nothing else was said.
import type { SapUsual, Settings } from '../client/types.ts';
import { finishDraft, leadsOf } from './boil-draft.ts';
import type { PanDraft } from './boil-draft.ts';
import type { SapDraft } from './sap-draft.ts';

/** Early and late maple go by what was said of maple. */
function usualOf(kind: SapDraft['kind'], { per_sap }: Settings): SapUsual {
  if (kind.startsWith('maple')) return per_sap.maple ?? {};
  return (kind === 'birch' ? per_sap.birch : undefined) ?? {};
}

type Filled = Pick<PanDraft, 'finish' | 'finishAt' | 'leads'>;

function filled(kind: SapDraft['kind'], settings: Settings): Filled {
  const usual = usualOf(kind, settings);
  const { finish, finishAt } = finishDraft(usual.finish, settings);
  return { finish, finishAt, leads: leadsOf(usual) };
}

/** A finish or a lead that the pan says itself stays. */
export function withUsual(pan: PanDraft, settings: Settings): PanDraft {
  const { finish, finishAt, leads } = filled(pan.sap.kind, settings);
  const own = pan.finish !== 'usual';
  return {
    ...pan,
    ...(own ? {} : { finish, finishAt }),
    leads: {
      near_finish_lead_s: pan.leads.near_finish_lead_s ?? leads.near_finish_lead_s,
      scorch_lead_s: pan.leads.scorch_lead_s ?? leads.scorch_lead_s,
      low_level_lead_s: pan.leads.low_level_lead_s ?? leads.low_level_lead_s,
    },
  };
}

/** Another sap with what is usual for it, in place of what was filled in for the sap before. */
export function withSap(pan: PanDraft, sap: SapDraft, settings: Settings): PanDraft {
  const before = filled(pan.sap.kind, settings);
  const wasFilled = pan.finish === before.finish && pan.finishAt === before.finishAt;
  const kept = (name: keyof Filled['leads']): number | null =>
    pan.leads[name] === before.leads[name] ? null : pan.leads[name];
  const bare: PanDraft = {
    ...pan,
    sap,
    ...(wasFilled ? { finish: 'usual', finishAt: '' } : {}),
    leads: {
      near_finish_lead_s: kept('near_finish_lead_s'),
      scorch_lead_s: kept('scorch_lead_s'),
      low_level_lead_s: kept('low_level_lead_s'),
    },
  };
  return withUsual(bare, settings);
}
