import { drag } from 'd3';
import type { TargetZone } from '../../core/facts/coach.ts';
import { inchesToM } from '../../core/units/convert.ts';
import type { Layer } from './described.ts';
import type { Taken } from './place-label.ts';
import type { PlaneScale } from './plane-scale.ts';

export interface HandleTexts {
  readonly move: string;
  readonly taller: string;
  readonly wider: string;
}

const PARTS = ['move', 'taller', 'wider'] as const;
type Part = (typeof PARTS)[number];
/** A grip hides what it lies on. */
const HANDLES_MIND = 5;
interface Handle {
  readonly part: Part;
  readonly zone: TargetZone;
}
interface How {
  readonly onZone: (zone: TargetZone, letGo: boolean) => void;
  readonly texts: HandleTexts;
  readonly radius: number;
}

/** A key moves the zone by half an inch, with Shift by two. */
const KEY_STEP_M = inchesToM(0.5);
const LEAST_RADIUS_M = inchesToM(0.5);
const MOST_RADIUS_M = 1;
const MOST_CENTRE_M = 1.5;

/** Grips for the zone's place, height and width, by finger, pointer or arrow keys. */
export function drawHandles(layer: Layer, zone: TargetZone | null, scale: PlaneScale, how: How): void {
  const handles: Handle[] = zone === null ? [] : PARTS.map((part) => ({ part, zone }));
  const drawn = layer.selectAll<SVGGElement, Handle>('g.handle').data(handles, ({ part }) => part)
    .join((enter) => {
      const handle = enter.append('g').attr('class', ({ part }) => `handle ${part}`).attr('tabindex', 0).attr('role', 'slider');
      handle.append('circle').attr('class', 'reach');
      handle.append('circle').attr('class', 'knob');
      return handle;
    });
  drawn.attr('transform', ({ part, zone: at }) => `translate(${handleX(part, at, scale)},${handleY(part, at, scale)})`)
    .attr('aria-label', ({ part }) => how.texts[part])
    .attr('aria-valuenow', ({ part, zone: at }) => Math.round(valueOf(part, at) * 1000))
    .attr('aria-valuemin', -MOST_CENTRE_M * 1000).attr('aria-valuemax', MOST_CENTRE_M * 1000);
  drawn.select('.reach').attr('r', Math.max(22, how.radius * 1.6));
  drawn.select('.knob').attr('r', how.radius);
  drawn.on('keydown', (event: KeyboardEvent, { part, zone: at }) => {
    const moved = byKey(event, part, at, scale.armSign);
    if (moved === null) return;
    event.preventDefault();
    how.onZone(moved, true);
  });
  drawn.call(drag<SVGGElement, Handle>()
    .container(layer.node()!)
    .subject((event: { x: number; y: number }) => ({ x: event.x, y: event.y }))
    .on('drag', (event: { x: number; y: number }, { part, zone: at }) => how.onZone(byPointer(event.x, event.y, part, at, scale), false))
    .on('end', (event: { x: number; y: number }, { part, zone: at }) => how.onZone(byPointer(event.x, event.y, part, at, scale), true)));
}

/** The boxes of the grips, which no word should lie under. */
export function handleBoxes(zone: TargetZone | null, scale: PlaneScale, radius: number): Taken[] {
  if (zone === null) return [];
  return PARTS.map((part) => ({ x: handleX(part, zone, scale) - radius, y: handleY(part, zone, scale) - radius, width: radius * 2, height: radius * 2, minds: HANDLES_MIND }));
}

function handleX(part: Part, zone: TargetZone, scale: PlaneScale): number {
  return scale.x(zone.armSideM + (part === 'wider' ? zone.armSideRadiusM : 0));
}

function handleY(part: Part, zone: TargetZone, scale: PlaneScale): number {
  return scale.y(zone.verticalM - (part === 'taller' ? zone.verticalRadiusM : 0));
}

function valueOf(part: Part, zone: TargetZone): number {
  return part === 'move' ? zone.verticalM : part === 'taller' ? zone.verticalRadiusM : zone.armSideRadiusM;
}

function byPointer(x: number, y: number, part: Part, zone: TargetZone, scale: PlaneScale): TargetZone {
  const at = scale.separationAt(x, y);
  switch (part) {
    case 'move': return within({ ...zone, ...at });
    case 'taller': return within({ ...zone, verticalRadiusM: Math.abs(zone.verticalM - at.verticalM) });
    case 'wider': return within({ ...zone, armSideRadiusM: Math.abs(at.armSideM - zone.armSideM) });
  }
}

/** What an arrow key makes of a zone; null for every other key. */
export function byKey({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>, part: Part, zone: TargetZone, armSign: 1 | -1): TargetZone | null {
  const step = KEY_STEP_M * (shiftKey ? 4 : 1);
  const right = key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : 0;
  const up = key === 'ArrowUp' ? 1 : key === 'ArrowDown' ? -1 : 0;
  if (right === 0 && up === 0) return null;
  switch (part) {
    case 'move': return within({ ...zone, verticalM: zone.verticalM + up * step, armSideM: zone.armSideM + armSign * right * step });
    case 'taller': return within({ ...zone, verticalRadiusM: zone.verticalRadiusM + (up + right) * step });
    case 'wider': return within({ ...zone, armSideRadiusM: zone.armSideRadiusM + (up + right) * step });
  }
}

function within(zone: TargetZone): TargetZone {
  const clamp = (value: number, low: number, high: number): number => Math.round(Math.max(low, Math.min(high, value)) * 1e4) / 1e4;
  return {
    ...zone,
    verticalM: clamp(zone.verticalM, -MOST_CENTRE_M, MOST_CENTRE_M),
    armSideM: clamp(zone.armSideM, -MOST_CENTRE_M, MOST_CENTRE_M),
    verticalRadiusM: clamp(zone.verticalRadiusM, LEAST_RADIUS_M, MOST_RADIUS_M),
    armSideRadiusM: clamp(zone.armSideRadiusM, LEAST_RADIUS_M, MOST_RADIUS_M),
  };
}
