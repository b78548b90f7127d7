import { plateAim, plateWithin, tiltAim, tiltWithin, type PlateRegion, type TiltAim } from '../../core/coaching/aims.ts';
import { familyOfTrial } from '../../core/coaching/tried-families.ts';
import type { BaselineView, MoundView, SessionView, ThrowView } from '../../core/facts/views.ts';
import { STAGE_HAS_PLATE, type Family } from '../../core/facts/vocabulary.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import { plateMark } from '../wall/asked/plate-of.ts';
import type { PlaneMark } from '../charts/plane-data.ts';
import { soundThrows } from '../reach/sound-throws.ts';
import type { Speech } from '../words/speech.ts';

/** Of the throws whose reading is known, how many lie within the aim. */
interface WithinAim {
  readonly inside: number;
  readonly known: number;
}

/** Where a family's changeup is aimed for a zone, and how the present trial's throws lie to it. */
export interface Aim {
  readonly family: Family;
  readonly tilt: TiltAim | null;
  /** Null in a stage without a plate. */
  readonly plate: PlateRegion | null;
  /** The trial whose throws are held against it; null where the present one is of another family, or of none. */
  readonly letter: string | null;
  readonly tilts: readonly { readonly place: number; readonly tiltRad: number; readonly within: boolean }[];
  readonly marks: readonly PlaneMark[];
  readonly tiltsWithin: WithinAim;
  readonly placesWithin: WithinAim;
}

export function aimOf(view: MoundView, session: SessionView, baseline: BaselineView, family: Family, zone: TargetZone, speech: Speech): Aim {
  const { hand } = session.athlete;
  const tilt = tiltAim(family, hand, baseline, zone);
  const plate = STAGE_HAS_PLATE[session.stage] ? plateAim(family) : null;
  const trial = session.trial !== null && familyOfTrial(session.trial) === family ? session.trial : null;
  const thrown = trial === null ? [] : soundThrows(view, session).filter((one) => !one.fastball && one.trial === trial.letter);
  const tilts = tilt === null ? [] : thrown.flatMap(({ place, tiltRad }) => (typeof tiltRad === 'number' ? [{ place, tiltRad, within: tiltWithin(tilt, tiltRad) }] : []));
  const marks = plate === null ? [] : thrown.flatMap((one: ThrowView) => plateMark(one, hand, speech) ?? []);
  return {
    family, tilt, plate, tilts, marks,
    letter: trial?.letter ?? null,
    tiltsWithin: counted(tilts, ({ within }) => within),
    placesWithin: counted(marks, ({ verticalM, armSideM }) => plate !== null && plateWithin(plate, { heightM: verticalM, armSideM })),
  };
}

function counted<One>(all: readonly One[], within: (one: One) => boolean): WithinAim {
  return { inside: all.filter(within).length, known: all.length };
}
