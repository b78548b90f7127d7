import { createEffect, createSignal, onCleanup, onMount } from 'solid-js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room for a picture: measures itself, and draws again when its size or its data change. */
export function Drawn(props: { readonly class?: string; readonly draw: (svg: SVGSVGElement, size: Size) => void }) {
  let room!: HTMLDivElement;
  let svg!: SVGSVGElement;
  const [size, setSize] = createSignal<Size | null>(null);
  onMount(() => measured(room, setSize));
  createEffect(() => {
    const now = size();
    if (now !== null && now.width > 0 && now.height > 0) props.draw(svg, now);
  });
  return <div ref={room} class={`drawn ${props.class ?? ''}`}><svg ref={svg} /></div>;
}

/** Tells the size of an element now and at each change, for as long as the component lives. */
export function measured(element: Element, tell: (size: Size) => void): void {
  const observer = new ResizeObserver(() => tell({ width: element.clientWidth, height: element.clientHeight }));
  observer.observe(element);
  tell({ width: element.clientWidth, height: element.clientHeight });
  onCleanup(() => observer.disconnect());
}
