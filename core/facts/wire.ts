import { z } from 'zod';
import { coachSaysSchema } from './coach.ts';
import type { ArmReport, ThrowingDay } from './care-view.ts';
import { idSchema } from './spelling.ts';
import type { MoundView, ThrowView } from './views.ts';

/** Between the server and its viewers. Events: `watch` and `say` up (both answered), `view` and `pulse` down. */

const SPEAKERS = ['coach', 'athlete'] as const;
export type Speaker = (typeof SPEAKERS)[number];

/** With what a screen connects: who speaks there. It gives up rights and never gains any: who a browser is, the server knows. */
export const screenHelloSchema = z.object({
  speaker: z.enum(SPEAKERS).default('coach'),
  /** It hangs where everybody looks at it: each view goes there first. */
  hangs: z.boolean().default(false),
});
export type ScreenHello = z.input<typeof screenHelloSchema>;

export const watchSchema = z.strictObject({
  mound: idSchema,
  /** A session to stay with; null follows whoever has the mound. */
  session: idSchema.nullable(),
  /** Newest place that the viewer has painted, and the log it belongs to; null at first. */
  place: z.int().min(0).nullable(),
  log: z.string().max(64).nullable(),
});

export const saySchema = z.strictObject({
  /** Chosen by the screen; the same request said twice is stored once. */
  request: z.string().min(8).max(64),
  mound: idSchema,
  says: coachSaysSchema,
});

export type WatchRequest = z.infer<typeof watchSchema>;
export type SayRequest = z.infer<typeof saySchema>;

export interface Refusal {
  readonly kind: 'refused';
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
}
export type SayReply = { readonly kind: 'stored'; readonly place: number } | Refusal;
export type WatchReply = { readonly kind: 'watching' } | Refusal;

/** What became of a piece of plain data: of an object or a list, what differs in it by name; a new word, number or null; or, in brackets, a new whole. */
export type Difference = string | number | boolean | null | readonly [unknown] | { readonly [name: string]: Difference };

/** What differs in everything about a mound but its throws. Of a throw most of it stays, and each screen that watches has to read it all. */
export type HeadChange = { readonly place: number } & Readonly<Record<string, Difference>>;

/** What differs in a throw from the one before it: two throws have more in common than not. */
export type ThrowChange = Readonly<Record<string, Difference>>;

export type ViewMessage =
  | {
      readonly kind: 'snapshot';
      readonly log: string;
      readonly reason: 'first' | 'too-far-behind' | 'other-log';
      readonly view: MoundView;
    }
  | {
      readonly kind: 'change';
      readonly log: string;
      /** The place the viewer must be at; another one means: watch again. */
      readonly from: number;
      /** Views left out, of one for each fact, because the viewer was slow or there was no time to make them. */
      readonly skipped: number;
      readonly head: HeadChange;
      readonly throws: readonly ThrowChange[];
      readonly gone: readonly number[];
      readonly unclaimed: readonly ThrowView[];
    };

/** Fresh: heard within the time a heartbeat may take. Stale: silent since. Unknown: never heard since the server started. */
export type DeviceState =
  | { readonly verdict: 'fresh'; readonly device: string; readonly sinceMs: number }
  | { readonly verdict: 'stale'; readonly device: string; readonly sinceMs: number }
  | { readonly verdict: 'unknown' };

/** Sent every PULSE_SECONDS (heartbeat.ts) and at each change of the device's state; its absence means that the server is silent. */
export interface Pulse {
  readonly mound: string;
  readonly serverAtMs: number;
  /** Place of the newest fact: a viewer further back is catching up. */
  readonly place: number;
  readonly device: DeviceState;
  readonly build: string;
}

/** One recorded session as the list shows it. */
export interface SessionListing {
  readonly id: string;
  readonly mound: string;
  readonly athleteId: string;
  readonly athleteName: string;
  readonly timeZone: string;
  readonly openedAtMs: number;
  readonly closedAtMs: number | null;
  /** Where it came out of a file: its name, and when that arrived; null for a session thrown here. */
  readonly imported: { readonly fileName: string; readonly atMs: number } | null;
  readonly throws: number;
  readonly stages: readonly string[];
  readonly trials: readonly string[];
}

/** The throws of one athlete on one mound on one calendar day. */
export interface MoundDay extends ThrowingDay {
  readonly mound: string;
}

/** Answer to GET /api/athletes/<id>/days: every tracked throw of an athlete, and what stands unanswered about the arm. */
export interface AthleteDays {
  readonly athlete: string;
  /** The earliest day first; a day on two mounds stands twice. */
  readonly days: readonly MoundDay[];
  readonly pain: { readonly mound: string; readonly report: ArmReport } | null;
  readonly soreness: { readonly mound: string; readonly report: ArmReport } | null;
}

/** Answer to POST /api/athletes/<id>/erase: what was erased, and where the athlete may still be found. */
export interface ErasedAnswer {
  readonly kind: 'erased';
  readonly facts: number;
  readonly throws: number;
  readonly sessions: number;
  readonly mounds: readonly string[];
  /** Refused frames of devices that were erased too. */
  readonly frames: number;
  /** False where the log is rid of the athlete and its file is not yet: the next start sweeps it. */
  readonly swept: boolean;
  /** Facts of others in which somebody wrote the name. */
  readonly named: readonly { readonly mound: string; readonly place: number }[];
  /** Backups and copies in the data folder that still hold the athlete, by path within it. */
  readonly stillIn: readonly string[];
}
