/** More would leave no room for words that are read from six metres. */
const MOST_MOUNDS = 4;

/** The mounds that one Wall was asked for, `north-1+south-2`: each once, at most four, and those that are too many. */
export function moundsOf(named: string): { readonly hung: readonly string[]; readonly leftOut: readonly string[] } {
  const each = [...new Set(named.split('+').map((mound) => mound.trim()).filter((mound) => mound !== ''))];
  return each.length === 0 ? { hung: [named], leftOut: [] } : { hung: each.slice(0, MOST_MOUNDS), leftOut: each.slice(MOST_MOUNDS) };
}
