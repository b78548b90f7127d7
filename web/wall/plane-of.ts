import type { MoundView, ThrowView, WindowView } from '../../core/facts/views.ts';
import type { PlaneData, PlaneMark, PlaneMiss, PlaneSpread } from '../charts/plane-data.ts';
import { movementRuling } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { missWords, missWays, sideWords, verticalWords, whatWords } from '../words/throw-words.ts';

/**
 * The separation plane of a view: throws of the stage that is thrown now, excluded ones and those without separation left out.
 * @param spreadOf the window whose spread is drawn
 */
export function planeOf(view: MoundView, speech: Speech, spreadOf: WindowView['size'] | null = null): PlaneData {
  const { session } = view;
  const { plane } = speech.words;
  const baseline = session?.baseline.kind === 'baseline' ? session.baseline : null;
  const marks = view.throws.filter(isOfNow(view)).flatMap((thrown) => markKept(thrown, speech) ?? []);
  return {
    generation: generationOf(view),
    armSideOn: session?.athlete.hand === 'left' ? 'left' : 'right',
    zone: session?.zone ?? null,
    marks,
    cloud: baseline?.cloud ?? [],
    hasBaseline: baseline !== null,
    miss: missOf(view, marks.at(-1)?.place ?? null, speech),
    spread: spreadOf === null ? null : spreadIn(view, spreadOf, speech),
    reach: null,
    unexplained: null,
    ruling: movementRuling(speech.units),
    texts: {
      name: plane.name,
      description: plane.description(descriptionOf(view, marks, speech)),
      ...planeNames(speech),
    },
  };
}

/** The marks that the plane of a view lacks of a later view of the same session: those of newer throws. Nobody reads them out, so they say nothing. */
export function comingMarks(view: MoundView, coming: MoundView): readonly PlaneMark[] {
  const newest = view.throws.at(-1)?.place ?? 0;
  if (coming.place <= view.place || generationOf(coming) !== generationOf(view)) return [];
  const from = coming.throws.findLastIndex(({ place }) => place <= newest) + 1;
  return coming.throws.slice(from).filter(isOfNow(coming)).flatMap((thrown) => markOf(thrown, () => '') ?? []);
}

/** Throws of another stage are not drawn. */
function isOfNow({ session }: MoundView): (thrown: ThrowView) => boolean {
  return ({ stage }) => stage === session?.stage;
}

function generationOf({ mound, session, generation }: MoundView): string {
  return `${mound} ${session?.id} ${session?.stage} ${generation}`;
}

/** How the plane names what it always shows, whoever's throws are on it. */
export function planeNames({ words: { plane, trade } }: Speech): Omit<PlaneData['texts'], 'name' | 'description'> {
  return { armSide: trade.armSide, gloveSide: trade.gloveSide, down: plane.down, fastball: plane.fastball, target: trade.target, seenFrom: plane.seenFromMound };
}

/** A throw stays the same object from view to view for as long as nothing is said of it: so its mark is made once. */
const KEPT = new WeakMap<ThrowView, { readonly speech: Speech; readonly mark: PlaneMark | null }>();

function markKept(thrown: ThrowView, speech: Speech): PlaneMark | null {
  const kept = KEPT.get(thrown);
  if (kept?.speech === speech) return kept.mark;
  const mark = markOf(thrown, () => `${speech.words.trade.throwNumber(thrown.number)}, ${said(thrown, speech)}`);
  KEPT.set(thrown, { speech, mark });
  return mark;
}

function markOf(thrown: ThrowView, words: () => string): PlaneMark | null {
  const { separation, place, trial, fastball, inferred, miss } = thrown;
  if (thrown.excluded !== null || separation === null) return null;
  const { verticalM, armSideM } = separation;
  if (typeof verticalM !== 'number' || typeof armSideM !== 'number') return null;
  return { place, trial, fastball, inferred, onTarget: miss?.onTarget ?? null, verticalM, armSideM, said: words() };
}

/** Only the newest throw's miss is drawn, and only while it is the newest of all. */
function missOf({ session, throws }: MoundView, newestMark: number | null, speech: Speech): PlaneMiss | null {
  const last = throws.at(-1);
  if (last === undefined || last.place !== newestMark || last.miss === null || last.miss.onTarget || last.separation === null) return null;
  const { verticalM, armSideM } = last.separation;
  if (typeof verticalM !== 'number' || typeof armSideM !== 'number' || session === null || session.zone === null) return null;
  const words = missWords(last.miss, speech);
  const ways = missWays(last.miss, speech);
  const lines = ways.length > 1 ? [`${words.slice(0, words.lastIndexOf(ways.at(-1)!)).trim()}`, ways.at(-1)!] : [words];
  return { verticalM, armSideM, toEdgeVerticalM: last.miss.toEdgeVerticalM, toEdgeArmSideM: last.miss.toEdgeArmSideM, words: lines };
}

function spreadIn({ session }: MoundView, size: WindowView['size'], { words }: Speech): PlaneSpread | null {
  const spread = session?.windows.find((window) => window.size === size)?.spread;
  if (spread === undefined || spread.kind !== 'ellipse') return null;
  return { ...spread, named: words.plane.spread(spread.count) };
}

function descriptionOf(view: MoundView, marks: readonly PlaneMark[], speech: Speech): string {
  const { plane } = speech.words;
  const last = view.throws.findLast(({ place }) => place === marks.at(-1)?.place);
  if (last === undefined) return plane.empty;
  const judged = marks.filter(({ onTarget }) => onTarget !== null);
  const counted = judged.length === 0 ? '' : ` ${plane.marks(judged.length, judged.filter(({ onTarget }) => onTarget).length)}`;
  const missed = last.miss !== null ? `, ${missWords(last.miss, speech)}` : '';
  return `${plane.lastThrow(whatWords(last, speech), `${movedWords(last, speech)}${missed}`)}${counted}`;
}

function said(thrown: ThrowView, speech: Speech): string {
  return `${whatWords(thrown, speech)}: ${movedWords(thrown, speech)}`;
}

function movedWords({ separation }: ThrowView, speech: Speech): string {
  if (separation === null) return speech.words.plane.noBaseline;
  const { verticalM, armSideM } = separation;
  const { missing } = speech.words.measures;
  return [
    typeof verticalM === 'number' ? verticalWords(verticalM, speech, 1) : missing[verticalM],
    typeof armSideM === 'number' ? sideWords(armSideM, speech, 1) : missing[armSideM],
  ].join(', ');
}
