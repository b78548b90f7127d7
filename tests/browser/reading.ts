import type { Page } from '@playwright/test';

/** Every line of text that a page shows, where it stands, and how large it is. */
export interface ReadText {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Height of a capital letter on the screen, in CSS pixels. */
  readonly capitalPx: number;
  /** Whether an ancestor that scrolls or clips cuts it. */
  readonly cut: boolean;
  readonly role: string;
}

/** Reads the text of a page as it is painted. Text for readers only (one pixel, or fully transparent) is left out. */
export async function readTexts(page: Page): Promise<ReadText[]> {
  return page.evaluate(() => {
    const canvas = document.createElement('canvas').getContext('2d')!;
    const found: ReadText[] = [];
    const unseen = (from: Element): boolean => {
      for (let at: Element | null = from; at !== null; at = at.parentElement) {
        const { position, clipPath, clip } = getComputedStyle(at);
        if (position === 'absolute' && (clip !== 'auto' || clipPath.startsWith('inset'))) return true;
      }
      return false;
    };
    /** Under a bar that stays in place while the page scrolls beneath it. */
    const covered = (element: Element, box: DOMRect): boolean => {
      const top = document.elementFromPoint((box.left + box.right) / 2, (box.top + box.bottom) / 2);
      for (let at = top; at !== null && !at.contains(element); at = at.parentElement) {
        if (['sticky', 'fixed'].includes(getComputedStyle(at).position)) return true;
      }
      return false;
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const text = node.textContent?.trim() ?? '';
      const element = node.parentElement;
      if (text === '' || element === null || !element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      if (element.closest('title, desc, option, style, script') !== null || unseen(element)) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const lines = [...range.getClientRects()].filter(({ width, height }) => width > 1 && height > 1);
      const style = getComputedStyle(element);
      canvas.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      const capital = canvas.measureText('H').actualBoundingBoxAscent;
      const scroller = (from: Element | null): Element | null => {
        for (let at = from; at !== null && at !== document.documentElement; at = at.parentElement) {
          const { overflowX, overflowY, position } = getComputedStyle(at);
          if (overflowX !== 'visible' || overflowY !== 'visible' || position === 'fixed') return at;
        }
        return null;
      };
      const holder = scroller(element);
      const hold = holder?.getBoundingClientRect();
      const scrolls = holder !== null && (holder.scrollHeight > holder.clientHeight || holder.scrollWidth > holder.clientWidth) && getComputedStyle(holder).overflowY !== 'hidden';
      for (const box of lines) {
        if (scrolls && hold !== undefined && (box.top >= hold.bottom || box.bottom <= hold.top)) continue;
        if (covered(element, box)) continue;
        const cut = hold !== undefined && !(holder instanceof SVGElement) && !scrolls && (box.left < hold.left - 1.5 || box.right > hold.right + 1.5 || box.top < hold.top - 3 || box.bottom > hold.bottom + 3);
        // Of a line that has been scrolled half out of sight, only what is in sight can lie over another.
        const [top, bottom] = scrolls && hold !== undefined ? [Math.max(box.top, hold.top), Math.min(box.bottom, hold.bottom)] : [box.top, box.bottom];
        found.push({ text, left: box.left, top, right: box.right, bottom, capitalPx: capital, cut, role: element.className.toString() });
      }
    }
    return found;
  });
}

/** Pairs of texts that lie over each other by more than a hair, as the ink of capitals would. */
export function overlaps(texts: readonly ReadText[]): string[] {
  const found: string[] = [];
  const ink = ({ top, bottom, capitalPx }: ReadText): { top: number; bottom: number } => {
    const middle = (top + bottom) / 2;
    const half = Math.min((bottom - top) / 2, capitalPx * 0.6);
    return { top: middle - half, bottom: middle + half };
  };
  texts.forEach((one, index) => {
    for (const other of texts.slice(index + 1)) {
      const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const down = Math.min(ink(one).bottom, ink(other).bottom) - Math.max(ink(one).top, ink(other).top);
      if (one.text !== other.text && across > 1.5 && down > 1.5) found.push(`"${one.text}" and "${other.text}"`);
    }
  });
  return found;
}
