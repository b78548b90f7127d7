import { opacityOfAge } from './age.ts';
import type { Layer } from './described.ts';
import type { Box } from './place-label.ts';
import type { PlaneData, PlaneMark } from './plane-data.ts';
import type { PlaneScale } from './plane-scale.ts';

interface Placed extends PlaneMark {
  readonly x: number;
  readonly y: number;
  readonly beyond: boolean;
  readonly newest: boolean;
  readonly age: number;
  readonly lettered: boolean;
}

/** The baseline's fastballs, soft enough to run together where they lie close. */
export function drawCloud(cloud: Layer, { cloud: points }: PlaneData, scale: PlaneScale): void {
  cloud.selectAll('circle').data(points).join('circle').attr('class', 'cloud-throw')
    .attr('cx', ([, armSideM]) => scale.x(armSideM)).attr('cy', ([verticalM]) => scale.y(verticalM))
    .attr('r', Math.max(6, 0.024 * scale.pxPerM));
}

/** Marks: filled on target, hollow when missed, hatched when inferred; older is fainter. Gives the boxes that they cover. */
export function drawMarks(
  layer: Layer, marks: readonly PlaneMark[], scale: PlaneScale,
  { width, height, textPx, letters }: { readonly width: number; readonly height: number; readonly textPx: number; readonly letters: 'every' | 'newest' },
  goesOn: boolean,
): Box[] {
  const radius = Math.max(5, textPx * 0.27);
  const placed = placeMarks(marks, scale, width, height, radius, letters);
  layer.selectAll<SVGGElement, Placed>('g.mark').data(placed, ({ place }) => String(place))
    .join((enter) => {
      const mark = enter.append('g').attr('class', 'mark').classed('arriving', goesOn);
      mark.append('path');
      mark.append('text');
      mark.append('title');
      return mark;
    })
    .attr('transform', ({ x, y }) => `translate(${x},${y})`)
    .attr('data-place', ({ place }) => place)
    .attr('data-trial', ({ trial }) => trial)
    .attr('data-on-target', ({ onTarget }) => (onTarget === null ? 'not-judged' : onTarget ? 'yes' : 'no'))
    .classed('fastball', ({ fastball }) => fastball)
    .classed('inferred', ({ inferred }) => inferred)
    .classed('beyond', ({ beyond }) => beyond)
    .classed('newest', ({ newest }) => newest)
    .order()
    .each(function paint(mark) {
      const [path, text, title] = this.children as unknown as [SVGPathElement, SVGTextElement, SVGTitleElement];
      const size = mark.fastball ? radius * 0.6 : mark.newest ? radius * 1.35 : radius;
      path.setAttribute('d', mark.beyond ? pointer(size, mark, scale) : mark.inferred && mark.onTarget === true ? circle(size) + hatch(size) : circle(size));
      path.setAttribute('opacity', String(opacityOfAge(mark.age)));
      text.textContent = mark.lettered ? mark.trial : '';
      text.setAttribute('x', String(size + textPx * 0.18));
      text.setAttribute('y', String(-size * 0.2));
      title.textContent = mark.said;
    });
  return placed.filter(({ age, fastball }) => age < 12 && !fastball).map(({ x, y, lettered }) => ({
    x: x - radius, y: y - radius - (lettered ? textPx * 0.5 : 0), width: radius * 2 + (lettered ? textPx : 0), height: radius * 2 + (lettered ? textPx * 0.5 : 0),
  }));
}

function placeMarks(marks: readonly PlaneMark[], scale: PlaneScale, width: number, height: number, radius: number, letters: 'every' | 'newest'): Placed[] {
  const worked = marks.filter(({ fastball }) => !fastball);
  const newestOfTrial = new Map(worked.map(({ trial, place }) => [trial, place]));
  const age = new Map([...marks].reverse().map(({ place }, index) => [place, index]));
  return marks.map((mark) => {
    const x = scale.x(mark.armSideM);
    const y = scale.y(mark.verticalM);
    const rim = radius * 1.6;
    const inX = Math.max(rim, Math.min(width - rim, x));
    const inY = Math.max(rim, Math.min(height - rim, y));
    return {
      ...mark, x: inX, y: inY, beyond: inX !== x || inY !== y,
      age: age.get(mark.place)!, newest: mark.place === marks.at(-1)?.place,
      lettered: mark.trial !== null && !mark.fastball && (letters === 'every' || newestOfTrial.get(mark.trial) === mark.place),
    };
  });
}

function circle(r: number): string {
  return `M${-r},0a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;
}

/** Lines across a circle, a slope of one. */
function hatch(r: number): string {
  return [-0.9, -0.3, 0.3, 0.9].map((offset) => {
    const half = Math.sqrt(r * r - (offset * r) ** 2 / 2) / Math.SQRT2;
    const middle = (offset * r) / 2;
    return `M${middle - half},${-middle - half}L${middle + half},${-middle + half}`;
  }).join('');
}

/** A wedge at the rim that points to where the throw lies. */
function pointer(r: number, { armSideM, verticalM, x, y }: Placed, scale: PlaneScale): string {
  const angle = Math.atan2(scale.y(verticalM) - y, scale.x(armSideM) - x);
  const at = (turn: number, length: number): string => `${Math.cos(angle + turn) * length},${Math.sin(angle + turn) * length}`;
  return `M${at(0, r * 1.4)}L${at(2.4, r)}L${at(-2.4, r)}Z`;
}
