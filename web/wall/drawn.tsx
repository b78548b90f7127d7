import { createEffect, createSignal, onCleanup, onMount } from 'solid-js';
import { onLetters } from '../charts/measured-text.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room for a picture: measures itself, and draws again when its size, its data or the letters of its texts change. */
export function Drawn(props: { readonly class?: string; readonly draw: (svg: SVGSVGElement, size: Size) => void }) {
  const [svg, setSvg] = createSignal<SVGSVGElement | null>(null);
  const [size, setSize] = createSignal<Size | null>(null, { equals: isSameSize });
  const [letters, setLetters] = createSignal(0);
  onCleanup(onLetters(() => setLetters((faces) => faces + 1)));
  createEffect(() => {
    letters();
    const into = svg();
    const now = size();
    if (into !== null && now !== null && now.width > 0 && now.height > 0) props.draw(into, now);
  });
  return <div ref={(room) => measured(room, setSize)} class={`drawn ${props.class ?? ''}`}><svg ref={setSvg} /></div>;
}

/** The observer tells the size that was measured a moment before again: nothing is drawn twice for it. */
function isSameSize(one: Size | null, other: Size | null): boolean {
  return one !== null && other !== null && one.width === other.width && one.height === other.height;
}

/** Tells the size of an element at first and at each change, for as long as the component lives. */
export function measured(element: Element, tell: (size: Size) => void): void {
  const look = (): void => tell({ width: element.clientWidth, height: element.clientHeight });
  const observer = new ResizeObserver(look);
  observer.observe(element);
  // The observer first tells after the element was painted once, in a room that was only guessed.
  onMount(look);
  onCleanup(() => observer.disconnect());
}
