/** Where a rising function crosses 0 between `low` and `high`, to the last digit: halving until nothing is left between. */
export function risingRoot(rising: (x: number) => number, low: number, high: number): number {
  let below = low;
  let above = high;
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return middle;
    if (rising(middle) < 0) below = middle;
    else above = middle;
  }
}
