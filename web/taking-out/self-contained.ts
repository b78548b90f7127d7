/** What style sheets give a picture; each is also an attribute of SVG, which needs no style sheet. */
const LOOK = ['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-opacity', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'opacity', 'visibility', 'display', 'paint-order', 'font-family', 'font-size', 'font-weight', 'letter-spacing', 'text-anchor', 'dominant-baseline'] as const;
const SVG = 'http://www.w3.org/2000/svg';
const CAPTION_PX = 14;
const LINE_PX = 20;
const EDGE_PX = 12;

/** A picture as a file of its own. */
export interface PictureFile {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** A picture of the page as one SVG that needs nothing else: its look written into it, the page's ground behind it, and what it shows below. */
export function selfContained(picture: SVGSVGElement, caption: readonly string[]): PictureFile {
  const { width: drawn, height } = picture.getBoundingClientRect();
  const page = getComputedStyle(document.body);
  // The ground is painted by the whole document; the body lets it through.
  const ground = page.getPropertyValue('--ground').trim();
  const longest = Math.max(...caption.map((line) => line.length)) * CAPTION_PX * 0.55;
  const width = Math.ceil(Math.max(drawn, longest + 2 * EDGE_PX));
  const whole = Math.ceil(height + caption.length * LINE_PX + 2 * EDGE_PX);
  const file = make('svg', { xmlns: SVG, viewBox: `0 0 ${width} ${whole}`, width, height: whole, role: 'img', 'aria-label': [picture.getAttribute('aria-label'), ...caption].join('. ') });
  file.append(make('rect', { width, height: whole, fill: ground }));
  file.append(withLook(picture, { x: (width - drawn) / 2, y: 0, width: drawn, height }));
  caption.forEach((line, index) => {
    const text = make('text', { x: EDGE_PX, y: height + EDGE_PX + (index + 0.75) * LINE_PX, fill: page.color, 'font-family': page.fontFamily, 'font-size': CAPTION_PX });
    text.textContent = line;
    file.append(text);
  });
  return { svg: new XMLSerializer().serializeToString(file), width, height: whole };
}

function make(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

function withLook(picture: SVGSVGElement, place: Readonly<Record<string, number>>): SVGSVGElement {
  const copy = picture.cloneNode(true) as SVGSVGElement;
  const originals = [picture, ...picture.querySelectorAll('*')];
  const copies = [copy, ...copy.querySelectorAll('*')];
  originals.forEach((original, index) => {
    const look = getComputedStyle(original);
    for (const name of LOOK) copies[index]!.setAttribute(name, look.getPropertyValue(name));
    copies[index]!.removeAttribute('style');
    copies[index]!.removeAttribute('class');
  });
  for (const [key, value] of Object.entries(place)) copy.setAttribute(key, String(value));
  return copy;
}
