import { arc, select } from 'd3';
import { describe, layer, type Layer } from './described.ts';

/** Tilts on the clock that the pitcher sees: the aim, and throws. 0 is 12 o'clock, clockwise. */
export interface TiltClockData {
  readonly aimRad: number;
  /** Of the aim, either way. */
  readonly giveRad: number;
  readonly tilts: readonly { readonly place: number; readonly tiltRad: number; readonly within: boolean }[];
  readonly texts: { readonly name: string; readonly description: string };
}

export interface TiltClockOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

interface Face {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const HOURS = [12, 3, 6, 9] as const;

/** Draws a clock face with the aim as a sector and each throw as a dot on the rim: filled within the aim, else hollow. */
export function drawTiltClock(element: SVGSVGElement, data: TiltClockData, options: TiltClockOptions): void {
  const svg = select(element).classed('tilt-clock', true).style('font-size', `${options.textPx}px`);
  const { width, height, textPx } = options;
  describe(svg, options, data.texts.name, data.texts.description);
  const face: Face = { x: width / 2, y: height / 2, radius: Math.max(textPx, Math.min(width, height) / 2 - textPx * 1.5) };
  drawAim(layer(svg, 'aimed'), data, face);
  drawFace(layer(svg, 'faces'), face, textPx);
  drawTilts(layer(svg, 'tilts'), data.tilts, face, textPx);
}

/** A place on the clock, so many pixels from its middle. */
export function onClock({ x, y }: Pick<Face, 'x' | 'y'>, tiltRad: number, distance: number): readonly [number, number] {
  return [x + distance * Math.sin(tiltRad), y - distance * Math.cos(tiltRad)];
}

function drawFace(group: Layer, face: Face, textPx: number): void {
  group.selectAll<SVGCircleElement, Face>('circle').data([face]).join('circle').attr('class', 'face').attr('cx', face.x).attr('cy', face.y).attr('r', face.radius);
  const hours = Array.from({ length: 12 }, (_, hour) => (hour * Math.PI) / 6);
  group.selectAll<SVGLineElement, number>('line').data(hours).join('line').attr('class', 'hour')
    .attr('x1', (rad) => onClock(face, rad, face.radius)[0]).attr('y1', (rad) => onClock(face, rad, face.radius)[1])
    .attr('x2', (rad) => onClock(face, rad, face.radius - textPx * 0.35)[0]).attr('y2', (rad) => onClock(face, rad, face.radius - textPx * 0.35)[1]);
  const beside = face.radius + textPx * 0.85;
  group.selectAll<SVGTextElement, number>('text').data(HOURS).join('text').attr('text-anchor', 'middle')
    .attr('x', (hour) => onClock(face, (hour * Math.PI) / 6, beside)[0]).attr('y', (hour) => onClock(face, (hour * Math.PI) / 6, beside)[1] + textPx * 0.35).text(String);
}

function drawAim(group: Layer, { aimRad, giveRad }: TiltClockData, face: Face): void {
  const sector = arc()({ innerRadius: 0, outerRadius: face.radius, startAngle: aimRad - giveRad, endAngle: aimRad + giveRad });
  group.selectAll<SVGPathElement, string | null>('path').data([sector]).join('path').attr('class', 'aim').attr('d', (path) => path).attr('transform', `translate(${face.x},${face.y})`);
  const [x, y] = onClock(face, aimRad, face.radius);
  group.selectAll<SVGLineElement, null>('line').data([null]).join('line').attr('class', 'hand').attr('x1', face.x).attr('y1', face.y).attr('x2', x).attr('y2', y);
}

function drawTilts(group: Layer, tilts: TiltClockData['tilts'], face: Face, textPx: number): void {
  group.selectAll<SVGCircleElement, TiltClockData['tilts'][number]>('circle').data(tilts, ({ place }) => place).join('circle').attr('class', 'tilt')
    .attr('data-within', ({ within }) => (within ? 'yes' : 'no')).attr('r', textPx * 0.3)
    .attr('cx', ({ tiltRad }) => onClock(face, tiltRad, face.radius)[0]).attr('cy', ({ tiltRad }) => onClock(face, tiltRad, face.radius)[1]);
}
