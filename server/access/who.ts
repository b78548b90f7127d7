import type { Speaker } from '../../core/facts/wire.ts';

/** Who asks, as every door tells people apart. A door never believes what a screen says of itself beyond giving up rights. */
export type Who =
  | { readonly kind: 'coach'; readonly name: string }
  /** A screen that shows one mound to whoever is there. */
  | { readonly kind: 'viewer'; readonly mound: string }
  /** The phone of the athlete of one session. */
  | { readonly kind: 'glance'; readonly mound: string; readonly session: string }
  /** A coach's own screen held out to the athlete, for every session of the mound. */
  | { readonly kind: 'athlete' }
  | { readonly kind: 'nobody' };

/** The person at the machine of a server that only this machine can reach. */
export const COACH_HERE: Who = { kind: 'coach', name: 'this-machine' };
export const NOBODY: Who = { kind: 'nobody' };

/** Who speaks at a screen: Glance on a coach's own machine gives up everything that is not the athlete's to say. */
export function speakingAs(who: Who, speaker: Speaker): Who {
  return who.kind === 'coach' && speaker === 'athlete' ? { kind: 'athlete' } : who;
}

/** How a fact names who said it. */
export function signature(who: Who): string {
  return who.kind === 'coach' ? `coach:${who.name}` : 'athlete';
}
