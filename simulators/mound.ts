import type { SimulatedAthlete } from './athlete.ts';
import { ATHLETES } from './athletes.ts';
import { calledBy, calledByHabit, sessionOn, standIn, type Called } from './called.ts';
import { airCalls, callsBefore, opening } from './calls.ts';
import { pause } from '../device/clock.ts';
import { Lead } from './lead.ts';
import type { MoundParts } from './mound-parts.ts';
import { bullpen } from './plan.ts';
import { randomFrom } from './random.ts';
import { waitBefore } from './rhythm.ts';
import { sitDown, type Sitting } from './sitting.ts';

/** Sessions of a simulated coach are known by this; one that an earlier start left open is closed. */
const SESSION_PREFIX = 'simulated-';
const SETTLED_WITHIN_MS = 5_000;
const SETTLED_WHEN_STOPPING_MS = 1_000;
/** After so many throws without a session a person has seen enough of them, and the athlete rests until somebody opens one. */
const UNCLAIMED_THROWS = 6;

/** Runs one simulated mound until it is stopped or has thrown its count. Returns a sentence when it had to give up. */
export async function runMound(parts: MoundParts): Promise<string | null> {
  const mound = new Mound(parts);
  await mound.serverAnswers();
  for (let turn = 0; !mound.over; turn += 1) await mound.sitting(turn);
  return mound.trouble;
}

class Mound {
  readonly #parts: MoundParts;
  readonly #lead: Lead;
  readonly #rhythm: ReturnType<typeof randomFrom>;
  #sitting: Sitting | null = null;
  #handedOverBefore = 0;
  #thrown = 0;
  #unclaimed = 0;
  trouble: string | null = null;

  constructor(parts: MoundParts) {
    this.#parts = parts;
    const { tablet, clock, print, options } = parts;
    this.#rhythm = randomFrom(options.seed, 'rhythm');
    this.#lead = new Lead({ tablet, clock, print, begins: options.coach, framesHandedOver: () => this.#handedOverBefore + (this.#sitting?.handedOver ?? 0) });
  }

  get over(): boolean {
    const { stop, options } = this.#parts;
    return stop.aborted || this.trouble !== null || (options.count !== null && this.#thrown >= options.count);
  }

  async serverAnswers(): Promise<void> {
    const { tablet, stop } = this.#parts;
    if (tablet.head !== null || stop.aborted) return;
    await new Promise<void>((resolve) => {
      const forget = tablet.onHead(() => {
        forget();
        resolve();
      });
      stop.addEventListener('abort', () => resolve(), { once: true });
    });
  }

  /** One athlete's turn: a planned bullpen while the coach leads, for ever once a person does. */
  async sitting(turn: number): Promise<void> {
    const { options, print } = this.#parts;
    const athlete = options.athletes[turn % options.athletes.length]!;
    const sitting = sitDown(athlete, turn, this.#parts);
    this.#sitting = sitting;
    print(`athlete: ${athlete.profile.name} (${athlete.profile.hand}-handed, ${athlete.family}) before a ${athlete.device} device`);
    const session = await this.#open(athlete, turn);
    const plan = bullpen();
    for (let index = 0; !this.over && (index < plan.length || !this.#lead.leads); index += 1) {
      await this.#next(athlete, plan[index % plan.length]!, session);
    }
    await sitting.finish(this.#parts.stop.aborted ? SETTLED_WHEN_STOPPING_MS : SETTLED_WITHIN_MS);
    this.#handedOverBefore += sitting.handedOver;
    this.#sitting = null;
    await this.#lead.say([{ kind: 'session-closed', session }]);
  }

  async #open(athlete: SimulatedAthlete, turn: number): Promise<string> {
    const { tablet, name, timeZone } = this.#parts;
    const session = `${SESSION_PREFIX}${name}-${turn + 1}`;
    const left = tablet.head?.openSessions ?? [];
    const ofOthers = left.filter(({ id }) => !id.startsWith(SESSION_PREFIX));
    if (ofOthers.length > 0) this.#lead.yieldTo(`${ofOthers[0]!.athleteName} has an open session`);
    await this.#lead.say(left.map(({ id }) => ({ kind: 'session-closed', session: id })));
    await this.#lead.say([opening(session, athlete, timeZone)]);
    if (tablet.head !== null) await this.#lead.say(airCalls(tablet.head));
    return session;
  }

  /** Half of the wait, the call, the other half, the throw. */
  async #next(athlete: SimulatedAthlete, wanted: ReturnType<typeof bullpen>[number], session: string): Promise<void> {
    const { clock, stop, options } = this.#parts;
    const waitMs = waitBefore(this.#thrown, options.intervalMs, this.#rhythm);
    await pause(clock, waitMs / 2, stop);
    const shown = this.#session();
    if (shown?.id === session) await this.#lead.say(callsBefore(wanted, shown, athlete));
    await pause(clock, waitMs / 2, stop);
    this.trouble = this.#sitting!.client.givenUp;
    if (this.over) return;
    const now = this.#whoThrowsWhat(athlete, wanted);
    if (now === null) return;
    this.#thrown += 1;
    this.#sitting!.throwOnce(now.athlete, now.called);
  }

  /** Null while the athlete rests. */
  #whoThrowsWhat(athlete: SimulatedAthlete, wanted: ReturnType<typeof bullpen>[number]): { athlete: SimulatedAthlete; called: Called } | null {
    const { options, print } = this.#parts;
    const session = this.#session();
    if (session !== null) {
      this.#unclaimed = 0;
      return { athlete: standIn(session, athlete, ATHLETES), called: calledBy(session) };
    }
    this.#unclaimed += 1;
    if (options.coach && this.#unclaimed > UNCLAIMED_THROWS) {
      if (this.#unclaimed === UNCLAIMED_THROWS + 1) print('athlete: nobody has opened a session; rests until somebody does');
      return null;
    }
    return { athlete, called: calledByHabit(wanted, athlete) };
  }

  #session(): ReturnType<typeof sessionOn> {
    const { head } = this.#parts.tablet;
    return head === null ? null : sessionOn(head);
  }
}
