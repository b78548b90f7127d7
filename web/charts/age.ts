/** How strongly a throw is drawn by how many came after it: the newest fully, none ever quite gone. */
export function opacityOfAge(throwsSince: number): number {
  return Math.max(0.3, 1 - 0.09 * throwsSince);
}

/**
 * Tells the styles how old a throw is, by which they draw its fill and its stroke fainter. The opacity of the element would have
 * the browser paint each of hundreds of marks apart, to lay them over each other at every throw.
 */
export function putAge(drawn: SVGElement, throwsSince: number): void {
  const opacity = String(opacityOfAge(throwsSince));
  if (drawn.style.getPropertyValue('--age') !== opacity) drawn.style.setProperty('--age', opacity);
}
