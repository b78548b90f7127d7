/**
 * Finds circles among imports; of circles that share an edge back, one is enough to see what is wrong.
 * @param {Map<string, string[]>} edges file → the files it imports
 * @returns {string[][]} each circle once, as the files on the way round
 */
export function findCycles(edges) {
  const done = new Set();
  const cycles = [];
  const walk = (file, way) => {
    const seenAt = way.indexOf(file);
    if (seenAt >= 0) {
      cycles.push(way.slice(seenAt));
      return;
    }
    if (done.has(file)) return;
    for (const next of edges.get(file) ?? []) walk(next, [...way, file]);
    done.add(file);
  };
  for (const file of edges.keys()) walk(file, []);
  return cycles;
}
