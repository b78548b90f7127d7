import type { ArmArea, ArmSaid, PainAnswer } from './arm-says.ts';
import type { Effort, Stage } from './vocabulary.ts';

/** What a screen gets about an athlete's arm. Days are calendar days of the bullpen, as YYYY-MM-DD. */
export type IsoDay = string;

export interface ThrowCount {
  readonly stage: Stage;
  readonly effort: Effort;
  readonly count: number;
}
/** Every tracked throw of an athlete on one calendar day of the bullpen, by kind. */
export interface ThrowingDay {
  readonly day: IsoDay;
  readonly throws: readonly ThrowCount[];
}
export interface ArmReport {
  readonly atMs: number;
  readonly day: IsoDay;
  readonly from: 'bench' | 'glance';
  readonly said: ArmSaid;
  readonly areas: readonly ArmArea[];
}

/** What was said about reported pain later. It stands beside the arm; it clears nobody. */
export interface ArmAnswer {
  readonly atMs: number;
  readonly answer: PainAnswer;
  readonly words: string;
}

/** What coach and athlete have said about the arm in this session. */
export interface ArmTalk {
  /** So many throws since the last answer that fatigue and pain are to be asked about. */
  readonly questionDue: boolean;
  readonly lastReport: ArmReport | null;
  readonly lastAnswer: ArmAnswer | null;
}

/** Where our reading goes beyond the guideline; each is a house rule and said as such. */
export type ArmCareHouseRule = 'practice-counted' | 'no-guideline-over-22' | 'no-guideline-under-7' | 'beyond-last-column';

export interface Counted {
  readonly day: IsoDay;
  readonly today: readonly ThrowCount[];
  /** From a mound, with hitters or without, whatever the effort: what is held against the day's most. */
  readonly moundThrows: number;
  readonly dayMost: number;
  readonly dayMostFrom: 'guideline' | 'own-rule';
  readonly source: ArmCareSource;
}
interface ArmCareSource {
  readonly version: string;
  readonly mark: 'published';
  readonly age: number;
  readonly rowFromAge: number;
  readonly rowToAge: number;
  readonly house: readonly ArmCareHouseRule[];
}
export type RestReason = 'rest-days' | 'third-day-running';
export interface NextDay {
  readonly day: IsoDay;
  readonly reasons: readonly RestReason[];
}
/** What today's throws from a mound ask for; null while there are none. */
interface AfterToday {
  readonly earliestNextDay: NextDay | null;
}

/**
 * There is no state for an arm that is fine, because nobody here can know that. Only `under` and `near` carry a number
 * of throws left: advice to throw takes one of these two and so cannot be given in any other state.
 */
export type ArmCare =
  | (Counted & { readonly kind: 'pain-reported'; readonly report: ArmReport })
  | (Counted & { readonly kind: 'soreness-reported'; readonly report: ArmReport })
  | (Counted & { readonly kind: 'rest-due'; readonly until: NextDay })
  | (Counted & AfterToday & { readonly kind: 'reached' })
  | (Counted & AfterToday & { readonly kind: 'near' | 'under'; readonly left: number });

/** The states in which a number of further throws may be shown at all. */
export type MayThrow = Extract<ArmCare, { kind: 'near' | 'under' }>;

/**
 * What fastball speed suggests to ask. `no-speed-sign` is no sign in this one measure, and says nothing about the arm.
 * `change` is the smoothed speed as a share of the athlete's own first fastballs, negative when slower.
 */
export type FatigueSign =
  | { readonly kind: 'forming'; readonly have: number; readonly need: number }
  | { readonly kind: 'no-speed-sign' | 'ask-the-pitcher' | 'ask-to-end'; readonly change: number };
