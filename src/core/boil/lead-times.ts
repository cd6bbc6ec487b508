// How early each pan's alarms call: by the pan's own word, else by the header's, else as the program does.
import type { BoilSettings, Header } from './entries.ts';

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

/** What holds for this pan, each field by itself; without one, for pans that say nothing of their own. */
export function leadTimes({ settings, pans }: Header, pan?: string): LeadTimes {
  const own = pans?.find(({ id }) => id === pan)?.settings;
  const set = (name: keyof typeof USUAL & keyof BoilSettings): number => own?.[name] ?? settings?.[name] ?? USUAL[name];
  return {
    nearFinishLeadS: set('near_finish_lead_s'),
    nearFinishDeadband: set('near_finish_deadband'),
    scorchLeadS: set('scorch_lead_s'),
    lowLevelLeadS: set('low_level_lead_s'),
  };
}
