/** More would leave no room for words that are read from six metres. */
const MOST_MOUNDS = 4;

/** The mounds that one Wall was asked for, `north-1+south-2`: each once, at most four. */
export function moundsOf(named: string): readonly string[] {
  const each = named.split('+').map((mound) => mound.trim()).filter((mound) => mound !== '');
  return each.length === 0 ? [named] : [...new Set(each)].slice(0, MOST_MOUNDS);
}
