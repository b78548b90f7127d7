import { createMemo } from 'solid-js';
import type { MoundView } from '../../core/facts/views.ts';
import { drawPlane } from '../charts/plain-plane.ts';
import { Drawn } from '../wall/drawn.tsx';
import { planeOf } from '../wall/plane-of.ts';
import { useSpeech } from '../words/use-words.tsx';

/** Of the picture's text: by its width, from a phone to a television. */
const textPxIn = (width: number): number => Math.round(Math.max(15, Math.min(26, width / 26)));

/** The throws of a view on the separation plane; what the last one missed by stands in words above. */
export default function Plane(props: { readonly view: MoundView }) {
  const speech = useSpeech();
  const plane = createMemo(() => {
    const data = planeOf(props.view, speech());
    return { ...data, miss: data.miss === null ? null : { ...data.miss, words: [] } };
  });
  return <Drawn draw={(svg, { width, height }) => drawPlane(svg, plane(), { width, height, textPx: textPxIn(width), letters: 'newest' }, null)} />;
}
