import type { SessionView } from '../../core/facts/views.ts';
import type { PlateData } from '../charts/plate-view.ts';
import type { TiltClockData } from '../charts/tilt-clock.ts';
import { movementRuling } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import type { Aim } from './aim-of.ts';
import { plateAimWords, tiltAimWords } from './aim-words.ts';

/** How many throws are drawn at the plate. */
const THROWS_DRAWN = 20;

/** The clock of an aim by tilt; null where there is none. */
export function clockOf({ family, tilt, tilts }: Aim, speech: Speech): TiltClockData | null {
  const { aims } = speech.words;
  if (tilt === null) return null;
  return { ...tilt, tilts, texts: { name: aims.clock, description: aims.clockSays(tiltAimWords(tilt, family, speech), aims.drawn(tilts.length)) } };
}

/** The plate with the region aimed at, and the trial's throws; null in a stage without one. */
export function aimedPlate({ plate, marks }: Aim, session: SessionView, speech: Speech): PlateData | null {
  const { aims, asked, trade } = speech.words;
  if (plate === null) return null;
  const shown = marks.slice(-THROWS_DRAWN);
  return {
    generation: `${session.id} ${session.stage} ${session.trial?.letter}`,
    armSideOn: session.athlete.hand === 'right' ? 'left' : 'right',
    marks: shown,
    aim: plate,
    last: { drawn: false, words: [] },
    ruling: movementRuling(speech.units),
    texts: { name: asked.plate.title, description: aims.plateSays(plateAimWords(plate, speech), aims.drawn(shown.length)), armSide: trade.armSide, gloveSide: trade.gloveSide },
  };
}
