import { describe, layer, ofGeneration, pictureOf, type Layer } from './described.ts';
import { drawKey, keyHeight, type KeyRow } from './seam-key.ts';
import { ballMap, passes, pathOn, radiusAt, seamRuns, stitches, type OnBall } from './seam-geometry.ts';

/** What the seam map shows: one throw's ball. */
export interface SeamMapData {
  /** Another value starts the picture anew. */
  readonly generation: string;
  /** The closed seam as unit vectors turned so that the spin axis is +z; null where the device does not tell where the seams are. */
  readonly seam: readonly OnBall[] | null;
  readonly spinRpm: number | null;
  /** Angle from the spin axis to the direction of flight, 0 to π: a quarter turn with all spin across the flight. Null where it is not known. */
  readonly frontFromAxisRad: number | null;
  /** The arrow of the separation plane in words, or why there is none; null leaves it to others. */
  readonly unexplained: { readonly drawn: boolean; readonly words: string } | null;
  readonly texts: {
    readonly name: string;
    /** What is seen, in words. */
    readonly description: string;
    /** The axis, and how fast the ball turns about it. */
    readonly axis: string;
    readonly farSide: string;
    /** How many seams pass the drawn ring in one turn. */
    readonly seams: (count: number) => string;
    /** Why there is no seam. */
    readonly axisAlone: string;
  };
}

export interface SeamMapOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Where the disc lies. */
interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface Room {
  readonly disc: Disc;
  readonly key: { readonly x: number; readonly y: number; readonly width: number };
}

/** Room round the disc for the arc that says which way the ball turns, in text sizes. */
const ARC_ROOM = 0.85;

/**
 * Draws the ball unrolled round its spin axis, so that spin is a turning of the map: the near side within the inner ring, the
 * far side stretched round it. Each ring about the middle passes the same seams again and again. Drawing again with the same
 * data changes nothing.
 */
export function drawSeamMap(element: SVGSVGElement, data: SeamMapData, options: SeamMapOptions): void {
  const svg = pictureOf(element, 'seam-map');
  const { textPx } = options;
  const ring = ringOf(data);
  const [rows, room] = withRoom(keyRows(data, ring), options);
  ofGeneration(svg, data.generation);
  describe(svg, options, data.texts.name, data.texts.description);
  svg.style('font-size', `${textPx}px`);
  drawBall(layer(svg, 'ball'), room.disc);
  drawSeam(layer(svg, 'seam'), data.seam, room.disc);
  drawRing(layer(svg, 'passing'), ring, room.disc, textPx);
  drawAxis(layer(svg, 'axis-end'), room.disc, textPx);
  drawTurning(layer(svg, 'turning'), room.disc, textPx, data.spinRpm);
  drawKey(layer(svg, 'key'), rows, room.key, textPx);
}

/** A disc smaller than this, in text sizes, needs the room of whatever can be spared from the key. */
const LEAST_RADIUS = 2.4;

/** The rows that are shown, and the room that they leave: where the disc would be small, the far side goes without its name. */
function withRoom(rows: readonly KeyRow[], options: SeamMapOptions): readonly [readonly KeyRow[], Room] {
  const room = roomFor(options, rows);
  if (room.disc.radius >= LEAST_RADIUS * options.textPx) return [rows, room];
  const fewer = rows.filter(({ sign }) => sign !== 'far');
  return [fewer, roomFor(options, fewer)];
}

/** The disc above its key, or beside it where the room is wide. */
function roomFor({ width, height, textPx }: SeamMapOptions, rows: readonly KeyRow[]): Room {
  const rim = ARC_ROOM * textPx;
  if (width > height * 1.6) {
    const radius = height / 2 - rim;
    const x = radius * 2 + rim * 2 + textPx * 0.6;
    const key = { x, width: width - x };
    return { disc: { x: radius + rim, y: height / 2, radius }, key: { ...key, y: Math.max(0, (height - keyHeight(rows, key.width, textPx)) / 2) } };
  }
  const below = keyHeight(rows, width, textPx);
  const radius = Math.max(textPx, Math.min(width / 2, (height - below - textPx * 0.4) / 2) - rim);
  const y = radius + rim;
  return { disc: { x: Math.min(width / 2, radius + rim), y, radius }, key: { x: 0, y: y + radius + rim + textPx * 0.4, width } };
}

interface Ring {
  readonly fromAxisRad: number;
  /** Where the seam passes it. */
  readonly longitudes: readonly number[];
  readonly words: string;
}

/** The ring that the front of the ball runs along while it turns; where the front is not known, the equator of the spin. None without a seam. */
function ringOf({ seam, frontFromAxisRad, texts }: SeamMapData): Ring | null {
  if (seam === null) return null;
  const fromAxisRad = frontFromAxisRad ?? Math.PI / 2;
  const longitudes = passes(seam, fromAxisRad);
  return { fromAxisRad, longitudes, words: texts.seams(longitudes.length) };
}

function keyRows({ seam, unexplained, texts }: SeamMapData, ring: Ring | null): KeyRow[] {
  return [
    { sign: 'axis', words: texts.axis },
    ...(ring === null ? [] : [{ sign: 'ring', words: ring.words } as const]),
    seam === null ? { sign: null, words: texts.axisAlone } : { sign: 'far', words: texts.farSide },
    ...(unexplained === null ? [] : [{ sign: unexplained.drawn ? 'arrow' : null, words: unexplained.words } as const]),
  ];
}

/** The rim, which is the other end of the axis, and the ring halfway, the equator of the spin. */
function drawBall(group: Layer, { x, y, radius }: Disc): void {
  const rings = [{ kind: 'rim', r: radius }, { kind: 'equator', r: radiusAt(Math.PI / 2, radius) }];
  group.selectAll<SVGCircleElement, (typeof rings)[number]>('circle').data(rings, ({ kind }) => kind).join('circle')
    .attr('class', ({ kind }) => kind).attr('cx', x).attr('cy', y).attr('r', ({ r }) => r);
}

function drawSeam(group: Layer, seam: SeamMapData['seam'], { x, y, radius }: Disc): void {
  const projection = ballMap(radius, x, y);
  const drawn = seam === null ? [] : [
    ...stitches(seam).map((stitch) => ({ ...stitch, kind: 'stitch' })),
    ...seamRuns(seam).map((run) => ({ ...run, kind: 'seam-line' })),
  ];
  group.selectAll<SVGPathElement, (typeof drawn)[number]>('path').data(drawn).join('path')
    .attr('class', ({ kind, side }) => `${kind} ${side}`).attr('d', ({ coordinates }) => pathOn(projection, coordinates));
}

function drawRing(group: Layer, ring: Ring | null, { x, y, radius }: Disc, textPx: number): void {
  const r = ring === null ? 0 : radiusAt(ring.fromAxisRad, radius);
  group.selectAll<SVGCircleElement, Ring>('circle.passing-ring').data(ring === null ? [] : [ring]).join('circle').attr('class', 'passing-ring').attr('cx', x).attr('cy', y).attr('r', r);
  group.selectAll<SVGCircleElement, number>('circle.pass').data(ring?.longitudes ?? []).join('circle').attr('class', 'pass')
    .attr('cx', (longitude) => x + r * Math.sin(longitude)).attr('cy', (longitude) => y + r * Math.cos(longitude)).attr('r', textPx * 0.17);
}

/** A ring with a dot: the tip of an arrow that comes towards the reader. */
function drawAxis(group: Layer, { x, y }: Disc, textPx: number): void {
  const parts = [{ kind: 'axis-ring', r: textPx * 0.24 }, { kind: 'axis-dot', r: textPx * 0.075 }];
  group.selectAll<SVGCircleElement, (typeof parts)[number]>('circle').data(parts).join('circle')
    .attr('class', ({ kind }) => kind).attr('cx', x).attr('cy', y).attr('r', ({ r }) => r);
}

/** Between these angles, anticlockwise from the right, the arc outside the rim goes round; its arrowhead is at the second. */
const ARC_FROM_RAD = Math.PI / 9;
const ARC_TO_RAD = (Math.PI * 7) / 18;

/** A quiet arc outside the rim with an arrowhead: the way the map turns. None for a ball of unknown spin. */
function drawTurning(group: Layer, { x, y, radius }: Disc, textPx: number, spinRpm: number | null): void {
  const r = radius + textPx * 0.45;
  const at = (angle: number, length: number): string => `${x + length * Math.cos(angle)},${y - length * Math.sin(angle)}`;
  const head = (textPx * 0.34) / r;
  const arcs = spinRpm === null || spinRpm <= 0 ? [] : [
    `M${at(ARC_FROM_RAD, r)}A${r},${r} 0 0,0 ${at(ARC_TO_RAD, r)}`,
    `M${at(ARC_TO_RAD - head, r + textPx * 0.2)}L${at(ARC_TO_RAD, r)}L${at(ARC_TO_RAD - head, r - textPx * 0.2)}`,
  ];
  group.selectAll<SVGPathElement, string>('path').data(arcs).join('path').attr('class', 'turning-arc').attr('d', (d) => d);
}
