import { say, write, type Layer } from './described.ts';
import { coveredArea, placeLabel, type Anchor, type Box, type Taken } from './place-label.ts';
import type { MarkLook, PlacedMark } from './plane-marks.ts';

/** Trial letters beside their marks, newest first; one that finds no free place is left out, its trial's older marks are near. */
export function drawLetters(group: Layer, placed: readonly PlacedMark[], covered: readonly Taken[], look: MarkLook): void {
  const { textPx } = look;
  const taken = [...covered];
  const drawn: { readonly place: number; readonly letter: string; readonly box: Box }[] = [];
  for (const mark of [...placed].reverse()) {
    if (!mark.lettered) continue;
    const size = { width: textPx * 0.74, height: textPx * 0.8 };
    const box = wishesBeside(mark, size, textPx).map((at) => ({ ...at, ...size })).find((place) => isInside(place, look) && coveredArea(place, taken) === 0)
      ?? (mark.newest ? placeLabel(size, mark, wishesBeside(mark, size, textPx), { x: 0, y: 0, ...look }, taken) : null);
    if (box === null) continue;
    drawn.push({ place: mark.place, letter: mark.trial!, box });
    taken.push(box);
  }
  const texts = write(group.selectAll<SVGTextElement, (typeof drawn)[number]>('text').data(drawn).join('text'), {
    'class': () => 'trial-letter', 'data-letter-of': ({ place }) => place, 'text-anchor': () => 'middle',
    'x': ({ box }) => box.x + box.width / 2, 'y': ({ box }) => box.y + box.height / 2 + textPx * 0.35,
  });
  say(texts, ({ letter }) => letter);
}

/** Above right, above left, below right, below left, right, left, above, below. */
function wishesBeside({ x, y, radius }: PlacedMark, { width, height }: { readonly width: number; readonly height: number }, textPx: number): Anchor[] {
  const near = radius * 0.7 + textPx * 0.06;
  const far = radius + textPx * 0.1;
  const at = (left: number, top: number): Anchor => ({ x: left, y: top });
  return [
    at(x + near, y - near - height), at(x - near - width, y - near - height), at(x + near, y + near), at(x - near - width, y + near),
    at(x + far, y - height / 2), at(x - far - width, y - height / 2), at(x - width / 2, y - far - height), at(x - width / 2, y + far),
  ];
}

function isInside(box: Box, { width, height }: MarkLook): boolean {
  return box.x >= 0 && box.y >= 0 && box.x + box.width <= width && box.y + box.height <= height;
}
