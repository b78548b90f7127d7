import type { Athlete, CoachSays } from '../../core/facts/coach.ts';
import type { DeviceSays, Fact, Source } from '../../core/facts/fact.ts';
import type { DeviceFrame, Hello } from '../../core/facts/frames.ts';
import { DEFAULT_DISTANCE_M, type Intent, type Stage } from '../../core/facts/vocabulary.ts';
import { objection } from '../../core/session/admit.ts';
import { foldFact } from '../../core/session/fold.ts';
import { emptyLedger, sessionIn, throwsOf, type Ledger } from '../../core/session/ledger.ts';
import { inchesToM } from '../../core/units/convert.ts';
import { seeded } from '../core/flight/noise.ts';
import { flown, FRAME_UNITS, frameOf, type Chance, type Shape } from './flown.ts';

type MeasuredFrame = Exclude<DeviceFrame, { kind: 'heartbeat' }>;

/** One thing that happens on a mound, and the place of the newest fact after it. */
type Happening =
  | { readonly kind: 'say'; readonly says: CoachSays; readonly place: number }
  | { readonly kind: 'frame'; readonly frame: MeasuredFrame; readonly place: number };

/** What kinds of thing happened, by which a test knows that they did. */
export type Event =
  | 'throw' | 'unclaimed' | 'repeated' | 'late' | 'corrected' | 'moved' | 'claimed' | 'tagged' | 'excluded' | 'restored' | 'renewed'
  | 'passed' | 'trial' | 'resumed' | 'zone' | 'stage' | 'note' | 'closed' | 'left-hander' | 'spin-only' | 'catch-play' | 'again' | 'air';

export interface Day {
  readonly hello: Omit<Hello, 'kind' | 'protocol' | 'token'>;
  readonly happenings: readonly Happening[];
  /** The facts that come of it, as a server would store them. */
  readonly facts: readonly Fact[];
  readonly sessions: readonly string[];
  readonly events: ReadonlySet<Event>;
}

const ATHLETES: readonly Athlete[] = [
  { id: 'mar', name: 'Mar Okonedo', hand: 'right', birthYear: 2001, mainFastball: 'four-seam', units: 'imperial', language: 'en' },
  { id: 'lio', name: 'Lío Barrantes', hand: 'left', birthYear: 2009, mainFastball: 'four-seam', units: 'metric', language: 'es' },
];
const WORKED: readonly Intent[] = ['changeup', 'changeup', 'split'];
/** Between the two first throws, which nobody has claimed. */
const AIR: CoachSays = { kind: 'air-set', air: { where: 'outdoors', temperatureC: 31, relativeHumidity: 0.4, height: { kind: 'altitude', altitudeM: 900 }, wind: { towardsPlateMps: 1, towardsRightMps: -1.5 } } };
const STAGES: readonly Stage[] = ['mound', 'catch-play', 'long-toss'];

/** A busy day on one mound, different for every seed and the same for the same one: two athletes who alternate, and all that goes wrong. */
export function busyDay(seed: number, mound: string, shape: Shape, length: number): Day {
  const day = new BusyDay(seeded(seed), mound, shape);
  day.begin();
  while (day.happenings.length < length) day.somethingHappens();
  day.end();
  return day;
}

class BusyDay implements Day {
  readonly happenings: Happening[] = [];
  readonly facts: Fact[] = [];
  readonly sessions: string[] = [];
  readonly events = new Set<Event>();
  readonly hello: Day['hello'];
  #ledger: Ledger;
  #sequence = 0;
  readonly #sent: MeasuredFrame[] = [];
  readonly #heldBack: MeasuredFrame[] = [];
  readonly #chance: Chance;
  readonly #shape: Shape;

  constructor(chance: Chance, mound: string, shape: Shape) {
    this.#chance = chance;
    this.#shape = shape;
    this.#ledger = emptyLedger(mound);
    const spinOnly = shape === 'spin-only';
    this.hello = { device: `eye-${mound}`, run: 'run-a', mound, sight: spinOnly ? 'spin-only' : 'full-flight', axis: spinOnly ? 'inferred' : shape === 'summary' ? 'none' : 'measured', units: FRAME_UNITS, ...((shape === 'path' || shape === 'constant') && { standardErrors: { movement: 0.3, spinRate: 15, tilt: 2, axisBias: 2 } }) };
    if (spinOnly) this.events.add('spin-only');
  }

  /** Two unclaimed throws, then both athletes throw their fastballs and get a zone and a trial. */
  begin(): void {
    this.#throw();
    this.#say(AIR, 'air');
    this.#throw();
    for (const athlete of ATHLETES) {
      this.#open(athlete);
      this.#say({ kind: 'intent-set', session: this.#active!, intent: 'four-seam' });
      for (let count = 0; count < 6; count += 1) this.#throw();
      this.#zone();
      this.#trial();
      for (let count = 0; count < 3; count += 1) this.#throw();
    }
  }

  /** Ends with the late frames and with every session closed, one of them corrected after that. */
  end(): void {
    while (this.#heldBack.length > 0) this.#late();
    for (const session of this.sessions) this.#say({ kind: 'session-closed', session });
    this.#tag();
    this.events.add('closed');
  }

  somethingHappens(): void {
    const what = this.#pick<() => void>([
      () => this.#throw(), () => this.#throw(), () => this.#throw(), () => this.#throw(), () => this.#throw(), () => this.#throw(),
      () => this.#say({ kind: 'intent-set', session: this.#session(), intent: this.#pick(['four-seam', 'four-seam', ...WORKED]) }),
      () => this.#trial(), () => this.#resume(), () => this.#pass(), () => this.#move(), () => this.#claim(), () => this.#tag(), () => this.#exclude(), () => this.#restore(),
      () => this.#correct(), () => this.#correct(), () => this.#repeat(), () => this.#holdBack(), () => this.#late(), () => this.#renew(), () => this.#zone(), () => this.#stage(), () => this.#note(), () => this.#again(),
    ]);
    what();
  }

  get #active(): string | null {
    return this.#ledger.active;
  }

  #pick<T>(choices: readonly T[]): T {
    return choices[Math.floor(this.#chance.uniform() * choices.length)]!;
  }

  #session(): string {
    return this.#pick(this.sessions);
  }

  /** Places of some throws of a session, or of none's. */
  #some(session: string | null): number[] {
    const places = throwsOf(this.#ledger, session).map(({ place }) => place);
    const from = Math.floor(this.#chance.uniform() * places.length);
    return places.slice(from, from + 1 + Math.floor(this.#chance.uniform() * 4));
  }

  /** Said only where the server would store it. */
  #say(says: CoachSays, event?: Event): void {
    if (objection(this.#ledger, says) !== null) return;
    this.#fold(says, 'coach');
    this.happenings.push({ kind: 'say', says, place: this.#ledger.place });
    if (event !== undefined) this.events.add(event);
  }

  #fold(said: Fact['said'], by: string): void {
    const place = this.#ledger.place + 1;
    const fact: Fact = { place, mound: this.#ledger.mound, atMs: 1_790_000_000_000 + place * 15_000, by, version: 1, said };
    this.facts.push(fact);
    this.#ledger = foldFact(this.#ledger, fact);
  }

  #open(athlete: Athlete): void {
    const session = `${this.hello.mound}-${athlete.id}-${this.sessions.length + 1}`;
    this.sessions.push(session);
    if (athlete.hand === 'left') this.events.add('left-hander');
    this.#say({ kind: 'session-opened', session, athlete, timeZone: 'America/Chicago', stage: 'mound', distanceM: DEFAULT_DISTANCE_M.mound, effort: 'full' });
  }

  #nextThrow(): MeasuredFrame {
    const owner = this.#active === null ? undefined : sessionIn(this.#ledger, this.#active);
    const thrown = flown(owner?.intent ?? null, owner?.athlete.hand ?? 'right', owner?.distanceM ?? DEFAULT_DISTANCE_M.mound, this.#chance);
    this.#sequence += 1;
    return { kind: 'throw', sequence: this.#sequence, time: this.#sequence * 15_000, body: frameOf(thrown, this.#shape, this.#chance) };
  }

  #throw(): void {
    this.events.add('throw');
    if (this.#active === null) this.events.add('unclaimed');
    else if (sessionIn(this.#ledger, this.#active)?.stage === 'catch-play') this.events.add('catch-play');
    this.#send(this.#nextThrow());
  }

  #send(frame: MeasuredFrame): void {
    this.#fold(this.#saidBy(frame), `device:${this.hello.device}`);
    this.#sent.push(frame);
    this.happenings.push({ kind: 'frame', frame, place: this.#ledger.place });
  }

  #saidBy(frame: MeasuredFrame): DeviceSays {
    const { device, run, sight, axis, units, standardErrors } = this.hello;
    const source: Source = { device, run, sight, axis, units, ...(standardErrors && { standardErrors }), sequence: frame.sequence, time: frame.time };
    if (frame.kind === 'throw') return { kind: 'throw-measured', source, body: frame.body };
    return { kind: 'throw-corrected', source, corrects: { run, sequence: frame.corrects.sequence }, reason: null, body: frame.body };
  }

  /** The same frame once more: it must change nothing. */
  #repeat(): void {
    this.events.add('repeated');
    this.happenings.push({ kind: 'frame', frame: this.#pick(this.#sent), place: this.#ledger.place });
  }

  #holdBack(): void {
    if (this.#heldBack.length < 2) this.#heldBack.push(this.#nextThrow());
  }

  #late(): void {
    const frame = this.#heldBack.shift();
    if (frame === undefined) return;
    this.events.add('late');
    this.#send(frame);
  }

  #correct(): void {
    const earlier = this.#pick(this.#sent.filter(({ kind }) => kind === 'throw'));
    const frame = this.#nextThrow();
    this.events.add('corrected');
    this.#send({ kind: 'correction', sequence: frame.sequence, time: frame.time, corrects: { sequence: earlier.sequence }, body: frame.body });
  }

  #trial(): void {
    this.#say({ kind: 'trial-begun', session: this.#session(), intent: this.#pick(WORKED), grip: null, cue: { words: 'thumb under the ball', focus: 'internal' } }, 'trial');
  }

  #resume(): void {
    this.#say({ kind: 'trial-resumed', session: this.#session(), trial: this.#pick(['A', 'B']) }, 'resumed');
  }

  #pass(): void {
    this.#say({ kind: 'mound-passed', session: this.#session() }, 'passed');
  }

  #move(): void {
    const places = this.#some(this.#session());
    const session = this.#pick([...this.sessions, null]);
    if (places.length > 0) this.#say({ kind: 'throws-moved', places, session }, 'moved');
  }

  #claim(): void {
    const places = this.#some(null);
    if (places.length === 0) return;
    const session = this.#session();
    const all = places.length % 2 === 0;
    this.#say(all ? { kind: 'throws-claimed', session, through: places.at(-1)! } : { kind: 'throws-moved', places, session }, 'claimed');
  }

  #tag(): void {
    const session = this.#session();
    const places = this.#some(session);
    if (places.length > 0) this.#say({ kind: 'throws-tagged', session, places, intent: this.#pick(['four-seam', ...WORKED]), trial: this.#pick(['A', null]) }, 'tagged');
  }

  #exclude(): void {
    const session = this.#session();
    const places = this.#some(session);
    if (places.length > 0) this.#say({ kind: 'throws-excluded', session, places, reason: 'misread' }, 'excluded');
  }

  #restore(): void {
    const session = this.#session();
    const places = throwsOf(this.#ledger, session).filter(({ tags }) => tags[session]?.excluded !== null).map(({ place }) => place);
    if (places.length > 0) this.#say({ kind: 'throws-restored', session, places }, 'restored');
  }

  #renew(): void {
    this.#say({ kind: 'baseline-renewed', session: this.#session(), stage: 'mound' }, 'renewed');
  }

  #zone(): void {
    const around = (inches: number): number => inchesToM(inches + 2 * this.#chance.normal());
    this.#say({
      kind: 'zone-set', session: this.#active ?? this.#session(), reason: null, speedBand: { lowMps: -6, highMps: -3 },
      zone: { kind: 'ellipse', verticalM: around(-8), armSideM: around(4), verticalRadiusM: inchesToM(4), armSideRadiusM: inchesToM(3) },
    }, 'zone');
  }

  #stage(): void {
    const stage = this.#pick(STAGES);
    this.#say({ kind: 'stage-set', session: this.#session(), stage, distanceM: DEFAULT_DISTANCE_M[stage], effort: this.#pick(['firm', 'full']) }, 'stage');
  }

  #note(): void {
    this.#say({ kind: 'note-written', session: this.#session(), text: 'arm feels loose', place: null }, 'note');
  }

  /** An athlete's session is closed and another of the same athlete opened: the baseline comes along. */
  #again(): void {
    if (this.sessions.length >= 4) return;
    const session = this.#session();
    const { athlete, closedAtMs } = sessionIn(this.#ledger, session)!;
    if (closedAtMs !== null) return;
    this.#say({ kind: 'session-closed', session }, 'closed');
    this.#open(athlete);
    this.events.add('again');
  }
}
