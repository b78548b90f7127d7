import type { MonoTypeOperatorFunction, Observable, Subscription } from 'rxjs';
import type { MoundView } from '../../core/facts/views.ts';
import type { ViewMessage } from '../../core/facts/wire.ts';
import { changeBetween, type ViewChange } from '../../core/session/change.ts';
import { hasNewThrow } from '../../core/session/has-new-throw.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import { viewsOf } from '../../core/session/stream.ts';
import { moundView } from '../../core/session/view.ts';
import type { Stopwatch } from '../clock.ts';
import type { Viewer } from './line.ts';
import { Ring } from './ring.ts';

/** How far back a returning viewer is given the difference instead of everything. */
const VIEWS_KEPT = 64;
/** A throw is painted on the Wall, often by the machine of the server itself, before that is busy with all who look alone. */
const HANDS_WAIT_MS = 10;

export interface ChannelSource {
  /** Names the log and the science its views are made with: a view of another one cannot be changed into one of ours. */
  readonly log: string;
  readonly session: string | null;
  ledger(): Ledger;
  /** What of a view those who watch may see. */
  shown(view: MoundView): MoundView;
  /** The ledger after each fact from now on. */
  readonly states$: Observable<Ledger>;
  /** Ledgers that will be among them, if what is on its way to the disk comes to be. */
  readonly coming$: Observable<Ledger>;
  /** Leaves out views for which there is no time. */
  readonly spaced: MonoTypeOperatorFunction<Ledger>;
  /** By which those wait who look alone. */
  readonly watch: Pick<Stopwatch, 'after'>;
  /** Sends one message to all of them. */
  deliver(viewers: readonly Viewer[], message: ViewMessage): void;
  onTrouble(error: unknown): void;
}

/** What is made of a state that may come to be. */
interface Ahead {
  readonly ledger: Ledger;
  readonly view: MoundView;
  readonly before: MoundView;
  readonly change: ViewChange;
}

/**
 * The views of one mound and session, made once for all who watch. Each new view goes out as a numbered change;
 * a slow viewer is left alone until its connection is free and then gets the newest, with the count of what it skipped.
 */
export class Channel {
  readonly #source: ChannelSource;
  readonly #ring = new Ring(VIEWS_KEPT);
  /** Of each viewer, the place of the view that it has. */
  readonly #watching = new Map<Viewer, number>();
  #changes = new Map<number, ViewChange>();
  /** Of a throw that is on its way to the disk: shown once that has it, if ever. */
  #ahead: Ahead | null = null;
  #following: Subscription | null = null;

  constructor(source: ChannelSource) {
    this.#source = source;
  }

  get isWatched(): boolean {
    return this.#watching.size > 0;
  }

  /**
   * Sends what is missing behind a known place, or everything, and all that follows.
   * @returns false when no view can be made: a bug, reported apart
   */
  watch(viewer: Viewer, place: number | null, log: string | null): boolean {
    this.#follow();
    const { newest } = this.#ring;
    if (newest === null || this.#following === null) return false;
    const known = place !== null && log === this.#source.log ? this.#ring.at(place) : null;
    this.#watching.set(viewer, newest.place);
    this.#source.deliver([viewer], known !== null ? this.#change(known.place, 0) : { kind: 'snapshot', log: this.#source.log, reason: reasonFor(place, log, this.#source.log), view: newest });
    return true;
  }

  leave(viewer: Viewer): void {
    this.#watching.delete(viewer);
    if (!this.isWatched) this.#rest();
  }

  /** The viewer's connection is free again. */
  catchUp(viewer: Viewer): void {
    const place = this.#watching.get(viewer);
    if (place !== undefined && place !== this.#ring.newest?.place && !viewer.isSlow()) this.#send([viewer], place);
  }

  #follow(): void {
    if (this.#following !== null && !this.#following.closed) return;
    const { states$, coming$, spaced, onTrouble } = this.#source;
    const following = viewsOf(states$, this.#source.ledger(), (ledger) => this.#viewOf(ledger), spaced).subscribe({
      next: ({ view }) => this.#show(view),
      error: (error: unknown) => {
        onTrouble(error);
        this.#rest();
      },
    });
    this.#following = following.closed ? null : following;
    this.#following?.add(coming$.subscribe((ledger) => this.#makeAhead(ledger)));
  }

  #viewOf(ledger: Ledger): MoundView {
    return this.#ahead?.ledger === ledger ? this.#ahead.view : this.#source.shown(moundView(ledger, this.#source.session));
  }

  #show(view: MoundView): void {
    const { newest } = this.#ring;
    const ahead = this.#ahead?.view === view && this.#ahead.before === newest ? this.#ahead : null;
    const isThrow = hasNewThrow(newest, view);
    this.#changes = new Map(ahead === null ? [] : [[ahead.before.place, ahead.change]]);
    this.#ahead = null;
    this.#ring.add(view);
    this.#offer(isThrow);
  }

  /** What hangs is told of a throw first: its view is made while the disk works. */
  #makeAhead(ledger: Ledger): void {
    const before = this.#ring.newest;
    if (before === null || ![...this.#watching.keys()].some(({ hangs }) => hangs)) return;
    try {
      const view = this.#viewOf(ledger);
      this.#ahead = { ledger, view, before, change: changeBetween(before, view) };
    } catch {
      // Reported when it is to be shown.
    }
  }

  /** Nobody watches: nothing is computed, and the views kept so far still serve those who come back. */
  #rest(): void {
    this.#following?.unsubscribe();
    this.#following = null;
    this.#ahead = null;
  }

  /** Those who stand at the same place get the same message, made and written out once for all of them. */
  #offer(isThrow: boolean): void {
    if (isThrow && this.#sendTo(({ hangs }) => hangs)) this.#source.watch.after(HANDS_WAIT_MS, () => this.#sendTo(() => true));
    else this.#sendTo(() => true);
  }

  /** @returns whether something was to be sent to any of these */
  #sendTo(these: (viewer: Viewer) => boolean): boolean {
    const together = new Map<number, Viewer[]>();
    for (const [viewer, place] of this.#watching) {
      if (viewer.isSlow() || place === this.#ring.newest!.place || !these(viewer)) continue;
      const others = together.get(place);
      if (others === undefined) together.set(place, [viewer]);
      else others.push(viewer);
    }
    for (const [place, viewers] of together) this.#send(viewers, place);
    return together.size > 0;
  }

  /** To viewers that all have the view of one place. Each fact would have been a view: those that were not sent, or not even made, are told as skipped. */
  #send(viewers: readonly Viewer[], place: number): void {
    const view = this.#ring.newest!;
    const { log } = this.#source;
    const message: ViewMessage = this.#ring.at(place) === null
      ? { kind: 'snapshot', log, reason: 'too-far-behind', view }
      : this.#change(place, view.place - place - 1);
    for (const viewer of viewers) this.#watching.set(viewer, view.place);
    this.#source.deliver(viewers, message);
  }

  #change(from: number, skipped: number): ViewMessage {
    const change = this.#changes.get(from) ?? changeBetween(this.#ring.at(from)!, this.#ring.newest!);
    this.#changes.set(from, change);
    return { kind: 'change', log: this.#source.log, from, skipped, ...change };
  }
}

function reasonFor(place: number | null, log: string | null, ours: string): 'first' | 'too-far-behind' | 'other-log' {
  if (place === null || log === null) return 'first';
  return log === ours ? 'too-far-behind' : 'other-log';
}
