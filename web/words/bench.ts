import { acts } from './bench/acts.ts';
import { athleteData } from './bench/athlete-data.ts';
import { arm } from './bench/arm.ts';
import { dock } from './bench/dock.ts';
import { frame } from './bench/frame.ts';
import { keys } from './bench/keys.ts';
import { opening } from './bench/opening.ts';
import { session } from './bench/session.ts';
import { target } from './bench/target.ts';
import { throws } from './bench/throws.ts';
import { trial } from './bench/trial.ts';
import { way } from './bench/way.ts';

/** The texts of Bench, by the part of the screen that says them. */
export const bench = {
  en: { acts: acts.en, arm: arm.en, athleteData: athleteData.en, dock: dock.en, frame: frame.en, keys: keys.en, opening: opening.en, session: session.en, target: target.en, throws: throws.en, trial: trial.en, way: way.en },
  es: { acts: acts.es, arm: arm.es, athleteData: athleteData.es, dock: dock.es, frame: frame.es, keys: keys.es, opening: opening.es, session: session.es, target: target.es, throws: throws.es, trial: trial.es, way: way.es },
};
