import { FASTEST_RATE, SLOWEST_RATE, type Playhead, type PlayheadMove } from '../../core/session/playhead.ts';
import type { KeyGroup } from '../keys/key-list.tsx';
import { LIST_KEY } from '../keys/listen.ts';
import type { Words } from '../words/words.ts';

/** The rates that a hand can choose. */
export const RATES: readonly number[] = [SLOWEST_RATE, 1, 2, 5, 10, 20, FASTEST_RATE];

/** What the keys do here; what a screen cannot do it leaves out, and then the key is not listed either. */
export interface Deeds {
  readonly playhead: () => Playhead;
  readonly count: () => number;
  readonly move: (move: PlayheadMove) => void;
  readonly open: () => boolean;
  readonly show: Readonly<Partial<Record<'windows' | 'seamMap' | 'gapLine' | 'plate' | 'numbers' | 'notes' | 'video' | 'hold', () => void>>>;
  readonly bookmark: () => void;
  readonly write?: () => void;
  readonly copy: () => void;
  readonly video?: { readonly frame: (by: 1 | -1) => void; readonly release: () => void };
  readonly two?: { readonly other: () => void; readonly together: () => void; readonly over: () => void };
  readonly list: () => void;
}

/** Keys as the list shows them, with what each of them does. */
interface KeyRow {
  readonly keys: readonly string[];
  readonly does: string;
  readonly acts: Readonly<Record<string, () => void>>;
}

export interface ActingKeys extends KeyGroup {
  readonly keys: readonly KeyRow[];
}

/** Every key with what it does, as the list shows it and as it is done. */
export function keyGroups(deeds: Deeds, { playback: { keys } }: Words): ActingKeys[] {
  const { groups, does } = keys;
  const { move, show, video, two } = deeds;
  const letter = (key: string, what: string, act: (() => void) | undefined): KeyRow[] => (act === undefined ? [] : [{ keys: [key.toUpperCase()], does: what, acts: { [key]: act } }]);
  const rate = (next: number | undefined) => move({ kind: 'rate', rate: next ?? deeds.playhead().rate });
  return [
    {
      title: groups.move,
      keys: [
        { keys: [' '], does: does.play, acts: { ' ': () => move(playOrPause(deeds.playhead())) } },
        { keys: ['ArrowLeft', 'ArrowRight'], does: does.step, acts: { ArrowLeft: () => move({ kind: 'step-throw', by: -1 }), ArrowRight: () => move({ kind: 'step-throw', by: 1 }) } },
        { keys: ['ArrowUp', 'ArrowDown'], does: does.rate, acts: { ArrowUp: () => rate(RATES.find((one) => one > deeds.playhead().rate)), ArrowDown: () => rate(RATES.findLast((one) => one < deeds.playhead().rate)) } },
        { keys: ['Home', 'End'], does: does.ends, acts: { Home: () => move({ kind: 'seek', applied: 1 }), End: () => move({ kind: 'seek', applied: deeds.count() }) } },
        { keys: ['I', 'O'], does: does.part, acts: { i: () => move({ kind: 'part-from-here' }), o: () => move({ kind: 'part-to-here' }) } },
        ...letter('x', does.whole, () => move({ kind: 'whole' })),
        ...letter('l', does.live, deeds.open() ? () => move({ kind: 'follow' }) : undefined),
      ],
    },
    {
      title: groups.show,
      keys: [
        ...letter('w', does.windows, show.windows), ...letter('s', does.seamMap, show.seamMap), ...letter('g', does.gapLine, show.gapLine), ...letter('p', does.plate, show.plate),
        ...letter('n', does.numbers, show.numbers), ...letter('e', does.notes, show.notes), ...letter('v', does.video, show.video), ...letter('h', does.hold, show.hold),
      ],
    },
    { title: groups.say, keys: [...letter('k', does.bookmark, deeds.bookmark), ...letter('t', does.write, deeds.write), ...letter('c', does.copy, deeds.copy), { keys: [LIST_KEY], does: does.keys, acts: { [LIST_KEY]: deeds.list } }] },
    ...(video === undefined ? [] : [{ title: groups.video, keys: [{ keys: [',', '.'], does: does.frame, acts: { ',': () => video.frame(-1), '.': () => video.frame(1) } }, ...letter('r', does.release, video.release)] }]),
    ...(two === undefined ? [] : [{ title: groups.two, keys: [...letter('1', does.other, two.other), ...letter('m', does.together, two.together), ...letter('a', does.over, two.over)] }]),
  ];
}

export function playOrPause({ mode }: Playhead): PlayheadMove {
  return mode === 'paused' ? { kind: 'play' } : { kind: 'pause' };
}

/** What a key does; null for one without meaning here. */
export function deedOf(key: string, groups: readonly ActingKeys[]): (() => void) | null {
  const named = key.length === 1 ? key.toLowerCase() : key;
  for (const { keys } of groups) for (const { acts } of keys) if (acts[named] !== undefined) return acts[named];
  return null;
}
