// The names by which the screen calls the parts of a message; all of them come from the protocol.
import type { Advice as ViewedAdvice, Command, Now } from '../../protocol/messages.ts';
export type { KeptProbe } from '../../protocol/probe-setup-messages.ts';
import type { BoilPageView } from '../../protocol/season-messages.ts';

export type {
  AlarmView,
  BoilListing,
  Command,
  Curve,
  Explained,
  Explanation,
  From,
  HeardPort,
  HostMessage,
  KeptProbes,
  KnownProbe,
  LearntListing,
  LineSpan,
  LookBack,
  MarkView,
  MovedPort,
  NextThing,
  Now,
  PageReport,
  PanFacts,
  Place,
  PortFormat,
  PortListing,
  PortView,
  Pour,
  ProbeCheck,
  ProbeError,
  ProbeHealth,
  ProbeView,
  ProbeWatch,
  Proposal,
  ProposedLine,
  RaisingShown,
  SapKind,
  SapUsual,
  Settings,
  TuningNow,
  Tried,
  WaterThere,
} from '../../protocol/messages.ts';

/** What a person wrote of one boil. */
export type BoilPage = BoilPageView['page'];
export type RaisingName = NonNullable<BoilPage['no_use']>[number];
export type Reading = Now['readings'][number];
export type Limits = Now['limits'][number];
export type Header = NonNullable<Now['header']>;
export type Pan = NonNullable<Header['pans']>[number];
export type Probe = NonNullable<Header['probes']>[number];
export type Port = NonNullable<Header['ports']>[number];
export type Mark = Now['marks'][number]['mark'];
export type MarkKind = Mark['kind'];
export type Priority = Now['alarms'][number]['priority'];
/** What a vessel can finish at the least, litres at 20 °C. */
export interface SmallestBatch {
  syrupLitres: number;
  sapLitres: number;
  /** How strong that sap is, °Bx. */
  sapBrix: number;
  sapFrom: 'typed' | 'planned' | 'usual';
}
export type Advice = ViewedAdvice & { smallestBatch?: SmallestBatch | null };
/** What one mark changed in what is believed of a pan. */
export type Correction = Now['marks'][number]['corrections'][number];
/** What a boil is started with: its header without the moment at which it starts. */
export type Sensor = NonNullable<Probe['sensor']>;
export type Setup = Omit<Header, 'recording' | 'version' | 'started'>;

// The protocol's schemas let unknown fields through; what the screen itself sends has none.
type Plain<C> = C extends { mark: unknown }
  ? { mark: Mark }
  : C extends { doubt: unknown }
    ? { doubt: Mark }
    : C extends { start: unknown }
      ? { start: Setup; lit?: string | undefined }
      : C;
type WithoutRef<C> = C extends unknown ? Omit<C, 'ref'> : never;

/** A command before it has been given its reference. */
export type Wish = Plain<WithoutRef<Command>>;
