// What an imperfect probe makes of the liquid it hangs in, and the line that its port sends.
import { depthMillimetres, massKg } from './liquid.ts';
import { nextNormal, nextUniform, type RandomStream } from './random.ts';
import type { PanState, PortState, ProbeState } from './state.ts';
import { foamNoiseCelsius, overLiquidCelsius } from './tip-surroundings.ts';
import type { Air } from './weather.ts';
import { HOUR_MS } from '../quantities/time.ts';

/** A tip in air or steam follows 10 to 30 times slower than in liquid (trade.md "Probes"). */
const slowerInAir = 12;
/** A bare tip in steam sits a little under water's boiling point. */
const steamUnderWaterCelsius = 0.8;
/** Still liquid shakes a reading less than boiling liquid. */
const stillShare = 0.4;
const leastSpikeCelsius = 4;
const spikeSpreadCelsius = 60;

interface Surroundings {
  celsius: number;
  inLiquid: boolean;
}

function surroundings(probe: ProbeState, pan: PanState | undefined, air: Air): Surroundings {
  if (pan === undefined || pan.off || massKg(pan.liquid) === 0) return { celsius: air.celsius, inLiquid: false };
  const { liquid } = pan;
  const covered = depthMillimetres(liquid, pan.hearth.areaM2) > probe.setup.tipMm;
  if (pan.burned || (covered && probe.fault !== 'out')) {
    return { celsius: liquid.celsius + overLiquidCelsius(probe, pan), inLiquid: true };
  }
  if (!pan.boiling) return { celsius: air.celsius + 0.4 * (liquid.celsius - air.celsius), inLiquid: false };
  return { celsius: air.waterCelsius - steamUnderWaterCelsius, inLiquid: false };
}

/** One second of first-order lag towards what the tip hangs in; with a second lag, towards its sheath. */
export function warmTip(probe: ProbeState, pan: PanState | undefined, air: Air): void {
  const { celsius, inLiquid } = surroundings(probe, pan, air);
  const slower = inLiquid ? 1 : slowerInAir;
  const { lagSeconds, secondLagSeconds } = probe.setup;
  const kept = (lag: number): number => 1 - Math.exp(-1 / (lag * slower));
  if (secondLagSeconds !== undefined) {
    probe.sheathCelsius += (celsius - probe.sheathCelsius) * kept(secondLagSeconds);
  }
  const outside = secondLagSeconds === undefined ? celsius : probe.sheathCelsius;
  probe.tipCelsius += (outside - probe.tipCelsius) * kept(lagSeconds);
}

/** Draws the same count of random numbers whatever the fault is, so that a fault changes no other reading. */
function shownText(
  probe: ProbeState,
  pan: PanState | undefined,
  spikeShare: number,
  random: RandomStream,
): string | null {
  const { biasCelsius, noiseCelsius, resolutionCelsius } = probe.setup;
  const noise = nextNormal(random) * (noiseCelsius * (pan?.boiling ? 1 : stillShare) + foamNoiseCelsius(pan));
  const isSpike = nextUniform(random) < spikeShare;
  const side = 2 * nextUniform(random) - 1;
  const spike = isSpike ? Math.sign(side) * leastSpikeCelsius + side * spikeSpreadCelsius : 0;
  if (probe.fault === 'silent') return null;
  if (probe.fault === 'open') return `${probe.channel}=nan`;
  const shown = probe.tipCelsius + biasCelsius + noise + spike;
  return `${probe.channel}=${(Math.round(shown / resolutionCelsius) * resolutionCelsius).toFixed(2)}C`;
}

/** The line of a port at one moment in the canonical form; null when every probe on it is silent. */
export function portLine(
  port: PortState,
  probes: ProbeState[],
  panOf: (probe: ProbeState) => PanState | undefined,
  random: RandomStream,
): string | null {
  const words = probes
    .filter((probe) => probe.port === port.id)
    .map((probe) => {
      const spikeShare = (probe.setup.spikesPerHour * port.periodMs) / HOUR_MS;
      return shownText(probe, panOf(probe), spikeShare, random);
    })
    .filter((word) => word !== null);
  return words.length > 0 ? words.join(' ') : null;
}
