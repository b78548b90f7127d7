import { plateAim, tiltAim, type PlateRegion, type TiltAim } from '../../core/coaching/aims.ts';
import type { SessionView } from '../../core/facts/views.ts';
import { STAGE_HAS_PLATE } from '../../core/facts/vocabulary.ts';
import { movementText, tiltText } from '../words/numbers.ts';
import { plateSideWords } from '../words/plate-words.ts';
import type { Speech } from '../words/speech.ts';
import type { Aim } from './aim-of.ts';
import { familyAimedAt } from './family-aimed-at.ts';

/** "2:15 (1:45 to 2:45)", or that tilt does not describe this family. */
export function tiltAimWords(tilt: TiltAim | null, family: Aim['family'], { words: { aims, plan }, language }: Speech): string {
  if (tilt === null) return aims.noTilt(plan.families.family[family].toLocaleLowerCase(language));
  return aims.tiltIs(...[0, -1, 1].map((way) => tiltText(tilt.aimRad + way * tilt.giveRad)) as [string, string, string]);
}

/** "14 in to 27 in high, 3 in glove side to 10 in arm side", or that there is no plate. */
export function plateAimWords(plate: PlateRegion | null, speech: Speech): string {
  const { aims } = speech.words;
  if (plate === null) return aims.noPlate;
  const { lowM, highM, gloveSideM, armSideM } = plate;
  return aims.plateIs(movementText(lowM, speech, 0), movementText(highM, speech, 0), plateSideWords(gloveSideM, speech), plateSideWords(armSideM, speech));
}

/** In one line what a session aims at beside its target; nothing where family, target or fastball is not said. */
export function sessionAimWords(session: SessionView, speech: Speech): readonly string[] {
  const { baseline, zone, athlete, stage } = session;
  const family = familyAimedAt(session);
  if (family === null || zone === null || baseline.kind !== 'baseline') return [];
  const { aims, plan } = speech.words;
  const tilt = tiltAimWords(tiltAim(family, athlete.hand, baseline, zone), family, speech);
  return [aims.line(plan.families.family[family], tilt, plateAimWords(STAGE_HAS_PLATE[stage] ? plateAim(family) : null, speech))];
}

/** How many throws of the trial were aimed so; null where nothing is known of them. */
export function withinWords({ letter }: Aim, { inside, known }: Aim['tiltsWithin'], { words: { aims } }: Speech): string | null {
  return letter === null || known === 0 ? null : aims.soFar(letter, inside, known);
}

/** From what the aim comes, and how its pictures are read where throws are drawn. */
export function aimSentences({ tilt, plate, tilts, marks }: Aim, { words: { aims } }: Speech): readonly string[] {
  return [
    ...(tilt === null ? [] : [aims.tiltFrom]),
    ...(plate === null ? [] : [aims.plateFrom]),
    ...(tilts.length === 0 ? [] : [aims.clockKey]),
    ...(marks.length === 0 ? [] : [aims.plateKey]),
  ];
}
