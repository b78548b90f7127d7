import type { Page } from '@playwright/test';

/** What a page has painted of a mound, as a person would read it. */
export interface Painted {
  readonly place: number;
  readonly athlete: string;
  readonly intent: string;
  readonly lead: string;
  readonly pace: string | null;
  readonly lastOnTarget: string;
  readonly counts: string;
  readonly marks: readonly PaintedMark[];
  /** Values of the windows, when they are shown. */
  readonly windows: readonly string[];
}

interface PaintedMark {
  readonly place: number;
  readonly trial: string | null;
  readonly onTarget: string;
  readonly newest: boolean;
  /** From the centre of the drawn target zone in its radii, right and down; null where no zone is drawn. */
  readonly right: number | null;
  readonly down: number | null;
}

/** Reads the page's own elements, once it has painted that place of the log. */
export async function paintedAt(page: Page, place: number): Promise<Painted> {
  await page.locator(`.mound-picture[data-place="${place}"]`).waitFor();
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  return page.evaluate(readPicture);
}

/** Runs in the page. */
function readPicture(): Painted {
  const picture = document.querySelector<HTMLElement>('.mound-picture')!;
  const text = (selector: string): string | null => picture.querySelector<HTMLElement>(selector)?.innerText.replace(/\s+/g, ' ').trim() ?? null;
  const zone = picture.querySelector('ellipse.target-zone');
  const zoneAt = (name: string): number => Number(zone!.getAttribute(name));
  const marks = [...picture.querySelectorAll<SVGGElement>('.separation-plane g.mark')].map((mark): PaintedMark => {
    const { x, y, width, height } = mark.querySelector('path')!.getBBox();
    const radii = (value: number): number => Math.round(value * 1000) / 1000 + 0;
    return {
      place: Number(mark.dataset['place']),
      trial: mark.getAttribute('data-trial'),
      onTarget: mark.dataset['onTarget']!,
      newest: mark.classList.contains('newest'),
      right: zone === null ? null : radii((x + width / 2 - zoneAt('cx')) / zoneAt('rx')),
      down: zone === null ? null : radii((y + height / 2 - zoneAt('cy')) / zoneAt('ry')),
    };
  });
  return {
    place: Number(picture.dataset['place']),
    athlete: text('h1')!,
    intent: text('.wall-intent')!,
    lead: text('.wall-place-words')!,
    pace: text('.wall-pace-words'),
    lastOnTarget: picture.querySelector<HTMLElement>('.wall-last')!.dataset['onTarget']!,
    counts: text('.wall-count')!,
    marks: marks.toSorted((a, b) => a.place - b.place),
    windows: [...picture.querySelectorAll<HTMLElement>('.wall-window')].map(({ innerText }) => innerText.replace(/\s+/g, ' ').trim()),
  };
}
