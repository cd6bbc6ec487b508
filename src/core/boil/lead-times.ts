// How early each pan's alarms call: by the pan's own word, else by the header's, else as the program does.
import type { BoilSettings, Header, PanSetup } from './entries.ts';

/** Lead times, s. */
export interface LeadTimes {
  nearFinishLeadS: number;
  /** The call before the finish ends only when the finish is so many lead times away again. */
  nearFinishDeadband: number;
  scorchLeadS: number;
  lowLevelLeadS: number;
}

/** Ten minutes to walk there with the instrument, four to shut the heat, ten to fetch sap (practice), s. */
const USUAL = { near_finish_lead_s: 600, scorch_lead_s: 240, low_level_lead_s: 600, near_finish_deadband: 1.6 };

/** A header, or what else says how early to call. */
type LeadsSaid = { settings?: BoilSettings | undefined; pans?: readonly PanSetup[] | undefined };

/** What holds for this pan, each field by itself; without one, for pans that say nothing of their own. */
export function leadTimes({ settings, pans }: LeadsSaid, pan?: string): LeadTimes {
  const own = pans?.find(({ id }) => id === pan)?.settings;
  const set = (name: keyof typeof USUAL & keyof BoilSettings): number => own?.[name] ?? settings?.[name] ?? USUAL[name];
  return {
    nearFinishLeadS: set('near_finish_lead_s'),
    nearFinishDeadband: set('near_finish_deadband'),
    scorchLeadS: set('scorch_lead_s'),
    lowLevelLeadS: set('low_level_lead_s'),
  };
}

/** Everything of a header but its lead times: where two agree in it their pans are believed to be the same, and only calls differ. */
export function withoutLeads(header: Header): Header {
  return { ...withoutOwn(header), ...(header.pans && { pans: header.pans.map((pan): PanSetup => withoutOwn(pan)) }) };
}

function withoutOwn<T extends { settings?: BoilSettings | undefined }>(one: T): T {
  const rest = Object.entries(one.settings ?? {}).filter(([name]) => !(name in USUAL));
  return { ...one, settings: rest.length === 0 ? undefined : Object.fromEntries(rest) };
}
