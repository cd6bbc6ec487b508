// What water boils at by the height of a place alone, in one sentence, before a boil there.
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { ask, settings } from '../client/store.ts';
import type { KeptProbes, Setup, WaterThere } from '../client/types.ts';
import { say } from '../language/say.ts';
import { temperature } from '../words/amounts.ts';

/** The height that was told last, by the last boil or while probes were set up, m; undefined where nobody told it. */
export async function toldAltitude(): Promise<{ setup: Setup | null; altitudeM: number | undefined }> {
  const [setup, { place }] = (await Promise.all([ask({ last_setup: true }), ask({ probes_kept: true })])) as [
    Setup | null,
    KeptProbes,
  ];
  return { setup, altitudeM: setup?.site?.altitude_m ?? place.altitude_m };
}

/** A set-up with the height that was told last, where one was. */
export const withHeight = (setup: Setup | null, altitudeM: number | undefined): Setup | null =>
  altitudeM === undefined ? setup : { ...setup, site: { ...setup?.site, altitude_m: altitudeM } };

/** Nothing where the height is not told, or is none that anybody boils at. */
export function WaterBoils({ altitudeM }: { altitudeM: number | undefined }): JSX.Element | null {
  const [there, setThere] = useState<WaterThere | null>(null);
  useEffect(() => {
    let isShown = true;
    setThere(null);
    if (altitudeM !== undefined)
      void ask({ water_at: { altitude_m: altitudeM } }).then(
        (data) => isShown && setThere(data as WaterThere | null),
        () => undefined, // A link that is down is said elsewhere.
      );
    return () => {
      isShown = false;
    };
  }, [altitudeM]);
  if (there === null) return null;
  const shown = (celsius: number): string => temperature(celsius, settings.value);
  return (
    <p class="water-there" role="status">
      {say('boil.water_there', { at: shown(there.celsius), low: shown(there.low), high: shown(there.high) })}
    </p>
  );
}
