import type { Words } from '../../words/words.ts';
import type { Asked } from './asked.ts';

/** How a picture on request is named, asked for and put away. */
export function askedWords(asked: Asked, { asked: say }: Words): { readonly title: string; readonly show: string; readonly hide: string } {
  switch (asked) {
    case 'seam-map': return say.seamMap;
    case 'gap-line': return say.gapLine;
    case 'plate': return say.plate;
  }
}
