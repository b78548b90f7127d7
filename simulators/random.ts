import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of chance that a seed repeats to the last bit. */
export interface Random {
  /** From 0 up to but not including 1. */
  uniform(): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * The stream called `name` of a seed. Streams with different names do not disturb each other, so a fault more or less
 * changes no throw.
 */
export function randomFrom(seed: number, name: string): Random {
  const generator = xoroshiro128plus(mix(seed, name));
  const uniform = (): number => uniformFloat64(generator);
  return {
    uniform,
    // Box & Muller (1958). Always two draws for one number, so that streams stay in step; 1 − u keeps the logarithm finite.
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/** FNV-1a (Fowler, Noll & Vo) over the seed and the name, to 32 bits. */
function mix(seed: number, name: string): number {
  let hash = 0x811c9dc5;
  for (const character of `${seed}/${name}`) {
    hash = Math.imul(hash ^ character.codePointAt(0)!, 0x01000193);
  }
  return hash;
}
