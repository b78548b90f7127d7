import { select, type BaseType, type Selection } from 'd3';

export type Svg = Selection<SVGSVGElement, unknown, null, undefined>;
export type Layer = Selection<SVGGElement, unknown, null, undefined>;

/** An element that is to be a picture of this kind. */
export function pictureOf(element: SVGSVGElement, kind: string): Svg {
  // To add a class that is there already is to write the class anew.
  if (!element.classList.contains(kind)) element.classList.add(kind);
  return select(element);
}

/** Sizes a picture in pixels of the page. */
export function sized(svg: Svg, { width, height }: { readonly width: number; readonly height: number }): void {
  const node = svg.node()!;
  put(node, 'viewBox', `0 0 ${width} ${height}`);
  put(node, 'width', String(width));
  put(node, 'height', String(height));
}

/** Sizes a picture, and names and describes it for those who do not see it. With handles inside it is a group, else an image. */
export function describe(svg: Svg, size: { readonly width: number; readonly height: number }, name: string, description: string, role: 'img' | 'group' = 'img'): void {
  const node = svg.node()!;
  sized(svg, size);
  put(node, 'role', role);
  put(node, 'aria-label', name);
  let desc = svg.select<SVGDescElement>('desc');
  if (desc.empty()) desc = svg.insert<SVGDescElement>('svg:desc', ':first-child');
  if (desc.text() !== description) desc.text(description);
  put(node, 'aria-description', description);
}

/** Writes an attribute where it says something else: a browser lays out anew what is written, however alike. */
export function put(node: Element, name: string, value: string): void {
  if (node.getAttribute(name) !== value) node.setAttribute(name, value);
}

/** Writes attributes on all that is selected, each where it says something else. */
export function write<Drawn extends Element, Datum, Parent extends BaseType>(drawn: Selection<Drawn, Datum, Parent, unknown>, attributes: Record<string, (datum: Datum, index: number) => string | number>): Selection<Drawn, Datum, Parent, unknown> {
  const named = Object.entries(attributes);
  return drawn.each(function each(datum, index) {
    for (const [name, value] of named) put(this, name, String(value(datum, index)));
  });
}

/** Writes what texts say, each where it says something else. */
export function say<Drawn extends Element, Datum, Parent extends BaseType>(texts: Selection<Drawn, Datum, Parent, unknown>, words: (datum: Datum) => string): void {
  texts.each(function each(datum) {
    if (this.textContent !== words(datum)) this.textContent = words(datum);
  });
}

/** The layers of a picture, so that they need not be looked for at each throw. */
const LAYERS = new WeakMap<Element, Map<string, Layer>>();

/** The layer of that name, made when it is first asked for; layers lie over each other in the order of asking. */
export function layer(svg: Svg, name: string): Layer {
  const node = svg.node()!;
  const layers = LAYERS.get(node) ?? new Map<string, Layer>();
  LAYERS.set(node, layers);
  const known = layers.get(name);
  if (known?.node()!.parentNode === node) return known;
  const found = svg.select<SVGGElement>(`g.${name}`);
  const made: Layer = found.empty() ? svg.append('g').attr('class', name) : found;
  layers.set(name, made);
  return made;
}

/** What a layer was last drawn from. */
const DRAWN_FROM = new WeakMap<Element, string>();

/** Draws on a layer what seldom changes: only when it is drawn from something else than before. */
export function drawnFrom(layer: Layer, from: readonly unknown[], draw: () => void): void {
  const [node, key] = [layer.node()!, JSON.stringify(from)];
  if (DRAWN_FROM.get(node) === key) return;
  draw();
  DRAWN_FROM.set(node, key);
}

/** Writes on a picture which generation it shows: another one after a jump, or of another session. */
export function ofGeneration(svg: Svg, generation: string): void {
  put(svg.node()!, 'data-generation', generation);
}
