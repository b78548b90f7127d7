import { opacityOfAge, putAge } from './age.ts';
import { put, write, type Layer } from './described.ts';
import type { Box, Taken } from './place-label.ts';
import type { PlaneData, PlaneMark } from './plane-data.ts';
import { cloudRadius, type PlaneScale } from './plane-scale.ts';

/** Where a throw lies in the picture, by its two metres. */
type Placing = Pick<PlaneScale, 'x' | 'y'>;

/** A throw with its place in the picture. */
export interface PlacedMark extends PlaneMark {
  readonly x: number;
  readonly y: number;
  readonly beyond: boolean;
  readonly newest: boolean;
  readonly radius: number;
  /** How far the stroke of its outline goes beyond that. */
  readonly rimPx: number;
  readonly age: number;
  readonly lettered: boolean;
}

/** What each mark last looked like. */
const LOOKS = new WeakMap<Element, PlacedMark>();

/** The baseline's fastballs, soft enough to run together where they lie close. */
export function drawCloud(cloud: Layer, { cloud: points }: PlaneData, scale: PlaneScale): void {
  const radius = cloudRadius(scale);
  write(cloud.selectAll<SVGCircleElement, (typeof points)[number]>('circle').data(points).join('circle'), {
    class: () => 'cloud-throw',
    cx: ([, armSideM]) => scale.x(armSideM), cy: ([verticalM]) => scale.y(verticalM), r: () => radius,
  });
}

export interface MarkLook {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
  readonly letters: 'every' | 'newest';
}

/** Radius of an ordinary mark and of the newest, in pixels, by the size of the text. */
export function markRadius(textPx: number, newest: boolean): number {
  return Math.max(5, textPx * 0.27) * (newest ? 1.35 : 1);
}

/** Width of a mark's outline by the size of the text, as charts.css draws it. */
function strokeOf(newest: boolean): number {
  return newest ? 0.13 : 0.095;
}

/** Marks: filled on target, hollow when missed, hatched when inferred; older is fainter. Gives where they stand. */
export function drawMarks(group: Layer, marks: readonly PlaneMark[], scale: Placing, look: MarkLook): PlacedMark[] {
  const placed = placeMarks(marks, scale, look);
  const layer = group.node()!;
  const known = marksOf(layer, new Set(placed.map(({ place }) => place)));
  let next = layer.firstElementChild;
  for (const mark of placed) {
    const drawn = known.get(mark.place) ?? newMark();
    known.delete(mark.place);
    // One that stands where it belongs is not put there again: to move it is to paint it anew.
    if (drawn === next) next = next.nextElementSibling;
    else layer.insertBefore(drawn, next);
    paintMark(drawn, mark, scale);
  }
  return placed;
}

/** The marks that are drawn, by place; those of other places are taken out. */
function marksOf(layer: SVGGElement, places: ReadonlySet<number>): Map<number, SVGGElement> {
  const known = new Map<number, SVGGElement>();
  for (const drawn of [...layer.children] as SVGGElement[]) {
    const { place } = LOOKS.get(drawn)!;
    if (places.has(place) && !known.has(place)) known.set(place, drawn);
    else drawn.remove();
  }
  return known;
}

function newMark(): SVGGElement {
  const [mark, path, title] = ['g', 'path', 'title'].map((name) => document.createElementNS('http://www.w3.org/2000/svg', name)) as [SVGGElement, SVGPathElement, SVGTitleElement];
  mark.append(path, title);
  return mark;
}

/** Of hundreds of marks a throw changes a handful; the others are not touched, so that the browser need not look at them. */
function paintMark(group: SVGGElement, mark: PlacedMark, scale: Placing): void {
  const before = LOOKS.get(group);
  LOOKS.set(group, mark);
  const [path, title] = group.children as unknown as [SVGPathElement, SVGTitleElement];
  if (before !== undefined && looksLike(before, mark)) {
    if (opacityOfAge(before.age) !== opacityOfAge(mark.age)) putAge(path, mark.age);
    return;
  }
  const { place, trial, onTarget, fastball, inferred, beyond, newest, said } = mark;
  put(group, 'data-place', String(place));
  if (trial === null) group.removeAttribute('data-trial');
  else put(group, 'data-trial', trial);
  put(group, 'data-on-target', onTarget === null ? 'not-judged' : onTarget ? 'yes' : 'no');
  put(group, 'class', ['mark', fastball && 'fastball', inferred && 'inferred', beyond && 'beyond', newest && 'newest'].filter(Boolean).join(' '));
  put(path, 'd', shapeOf(mark, scale));
  putAge(path, mark.age);
  if (title.textContent !== said) title.textContent = said;
}

/** Whether a mark would be painted alike but for its age. What lies beyond the rim points to where it lies: that is asked anew each time. */
function looksLike(before: PlacedMark, now: PlacedMark): boolean {
  return !now.beyond && !before.beyond && before.x === now.x && before.y === now.y && before.radius === now.radius && before.newest === now.newest
    && before.trial === now.trial && before.onTarget === now.onTarget
    && before.fastball === now.fastball && before.inferred === now.inferred && before.said === now.said;
}

/** How much more the newest mark minds a label over it than an older one. */
const NEWEST_MINDS = 5;

/** The boxes that marks cover: what a label should spare, the newest above all. */
export function coveredBy(placed: readonly PlacedMark[]): Taken[] {
  return placed.filter(({ fastball, age }) => !fastball && age < 12).map(({ x, y, radius, newest }) => ({ ...around(x, y, radius), minds: newest ? NEWEST_MINDS : 1 }));
}

/** Where it stands in the picture: moved there by a transform, each mark would be a layer of its own to the browser. */
function shapeOf(mark: PlacedMark, scale: Placing): string {
  const { radius, x, y, onTarget, inferred, rimPx } = mark;
  if (mark.beyond) return pointer(radius, mark, scale);
  if (onTarget !== true) return circle(radius, x, y);
  // Filled up to where the stroke of a hollow one ends.
  return inferred ? circle(radius, x, y) + hatch(radius, x, y) : circle(radius + rimPx, x, y);
}

function around(x: number, y: number, radius: number): Box {
  return { x: x - radius, y: y - radius, width: radius * 2, height: radius * 2 };
}

function placeMarks(marks: readonly PlaneMark[], scale: Placing, { width, height, textPx, letters }: MarkLook): PlacedMark[] {
  const worked = marks.filter(({ fastball }) => !fastball);
  const newestOfTrial = new Map(worked.map(({ trial, place }) => [trial, place]));
  const age = new Map([...marks].reverse().map(({ place }, index) => [place, index]));
  return marks.map((mark) => {
    const x = scale.x(mark.armSideM);
    const y = scale.y(mark.verticalM);
    const newest = mark.place === marks.at(-1)?.place;
    const radius = markRadius(textPx, newest) * (mark.fastball ? 0.5 : 1);
    const rim = markRadius(textPx, true) * 1.3;
    const inX = Math.max(rim, Math.min(width - rim, x));
    const inY = Math.max(rim, Math.min(height - rim, y));
    return {
      ...mark, x: inX, y: inY, beyond: inX !== x || inY !== y,
      age: age.get(mark.place)!, newest, radius, rimPx: textPx * strokeOf(newest) * 0.5,
      lettered: mark.trial !== null && !mark.fastball && (letters === 'every' || newestOfTrial.get(mark.trial) === mark.place),
    };
  });
}

/** The path of a circle about a point, the origin unless said. */
export function circle(r: number, x = 0, y = 0): string {
  return `M${x - r},${y}a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;
}

/** Lines across a circle, a slope of one. */
function hatch(r: number, x: number, y: number): string {
  return [-0.9, -0.3, 0.3, 0.9].map((offset) => {
    const half = Math.sqrt(r * r - (offset * r) ** 2 / 2) / Math.SQRT2;
    const middle = (offset * r) / 2;
    return `M${x + middle - half},${y - middle - half}L${x + middle + half},${y - middle + half}`;
  }).join('');
}

/** A wedge at the rim that points to where the throw lies. */
function pointer(r: number, { armSideM, verticalM, x, y }: PlacedMark, scale: Placing): string {
  const angle = Math.atan2(scale.y(verticalM) - y, scale.x(armSideM) - x);
  const at = (turn: number, length: number): string => `${x + Math.cos(angle + turn) * length},${y + Math.sin(angle + turn) * length}`;
  return `M${at(0, r * 1.4)}L${at(2.4, r)}L${at(-2.4, r)}Z`;
}
