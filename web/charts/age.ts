/** How strongly a throw is drawn by how many came after it: the newest fully, none ever quite gone. */
export function opacityOfAge(throwsSince: number): number {
  return Math.max(0.3, 1 - 0.09 * throwsSince);
}
