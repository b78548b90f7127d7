import type { MoundView, ThrowView } from '../../../core/facts/views.ts';
import type { Hand } from '../../../core/facts/vocabulary.ts';
import { STAGE_HAS_PLATE } from '../../../core/facts/vocabulary.ts';
import type { PlaneMark } from '../../charts/plane-data.ts';
import type { PlateData } from '../../charts/plate-view.ts';
import { movementRuling } from '../../words/numbers.ts';
import { plateHeightWords, plateSideWords } from '../../words/plate-words.ts';
import type { Speech } from '../../words/speech.ts';
import { whatWords } from '../../words/throw-words.ts';
import { lastThrow } from '../last-throw.ts';
import { inWords, type Shown } from './shown.ts';

/** How many throws are drawn: the plate is small, and a day is long. */
const THROWS_DRAWN = 20;

/** Where the last throws of the stage that is thrown now crossed the plate; or in words why none is drawn. */
export function plateOf(view: MoundView, speech: Speech): Shown<PlateData> {
  const { words } = speech;
  const { session } = view;
  const last = lastThrow(view);
  if (session === null || last === null) return inWords(words.plane.noThrow);
  if (!STAGE_HAS_PLATE[session.stage]) return inWords(words.asked.plate.placeMissing(words.measures.missing['not-defined']));
  const { hand } = session.athlete;
  const placed = view.throws.filter(({ stage, excluded }) => stage === session.stage && excluded === null).flatMap((thrown) => plateMark(thrown, hand, speech) ?? []);
  if (placed.length === 0) return inWords(whyNotDrawn(last, session.stage, speech));
  const marks = placed.slice(-THROWS_DRAWN);
  const newest = marks.at(-1)!;
  const drawn = newest.place === last.place;
  const lastWords = drawn ? placeWords(newest, speech) : [whyNotDrawn(last, session.stage, speech)];
  const { plate: say } = words.asked;
  return {
    kind: 'picture',
    data: {
      generation: `${session.id} ${session.stage} ${view.generation}`,
      armSideOn: hand === 'right' ? 'left' : 'right',
      marks,
      aim: null,
      last: { drawn, words: lastWords },
      ruling: movementRuling(speech.units),
      texts: { name: say.title, description: say.description(words.plane.lastThrow(whatWords(last, speech), lastWords.join(', ')), say.drawn(marks.length)), armSide: words.trade.armSide, gloveSide: words.trade.gloveSide },
    },
  };
}

/** A throw of another stage than the one that is thrown now is not of this plate. */
function whyNotDrawn({ excluded, stage, plateHeightM, plateRightM }: ThrowView, now: ThrowView['stage'], { words }: Speech): string {
  if (excluded !== null) return words.trade.excluded;
  if (stage !== now) return words.plane.noThrow;
  const missing = typeof plateHeightM === 'string' ? plateHeightM : typeof plateRightM === 'string' ? plateRightM : 'not-sent';
  return words.asked.plate.placeMissing(words.measures.missing[missing]);
}

/** Where a throw crossed the plate; null where that is not known. */
export function plateMark({ place, number, trial, fastball, inferred, miss, plateHeightM, plateRightM }: ThrowView, hand: Hand, speech: Speech): PlaneMark | null {
  if (typeof plateHeightM !== 'number' || typeof plateRightM !== 'number') return null;
  const at = { verticalM: plateHeightM, armSideM: hand === 'right' ? -plateRightM : plateRightM };
  return { place, trial, fastball, inferred, onTarget: miss?.onTarget ?? null, ...at, said: [speech.words.trade.throwNumber(number), ...placeWords(at, speech)].join(', ') };
}

function placeWords({ verticalM, armSideM }: Pick<PlaneMark, 'verticalM' | 'armSideM'>, speech: Speech): string[] {
  return [plateHeightWords(verticalM, speech), plateSideWords(armSideM, speech)];
}
