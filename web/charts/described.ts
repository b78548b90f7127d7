import type { Selection } from 'd3';

export type Svg = Selection<SVGSVGElement, unknown, null, undefined>;
export type Layer = Selection<SVGGElement, unknown, null, undefined>;

/** Sizes a picture, and names and describes it for those who do not see it. With handles inside it is a group, else an image. */
export function describe(svg: Svg, size: { readonly width: number; readonly height: number }, name: string, description: string, role: 'img' | 'group' = 'img'): void {
  const node = svg.node()!;
  put(node, 'viewBox', `0 0 ${size.width} ${size.height}`);
  put(node, 'width', String(size.width));
  put(node, 'height', String(size.height));
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

/** The layer of that name, made when it is first asked for; layers lie over each other in the order of asking. */
export function layer(svg: Svg, name: string): Layer {
  const found = svg.select<SVGGElement>(`g.${name}`);
  return found.empty() ? svg.append('g').attr('class', name) : found;
}

/** Whether the picture goes on from what it showed: a new generation starts clean, and nothing in it arrives. */
export function continues(svg: Svg, generation: string): boolean {
  const same = svg.attr('data-generation') === generation;
  svg.attr('data-generation', generation);
  return same;
}
