import type { Requests } from '../wall/asked/requests.ts';
import { MoundPicture } from '../wall/mound-picture.tsx';
import { useWords } from '../words/use-words.tsx';
import type { RecordingModel } from './recording-model.ts';

/** The Wall's pictures of a recording. Where they do not fit they scroll, by the keyboard too. */
export function PictureRoom(props: { readonly model: RecordingModel; readonly requests: Requests }) {
  const words = useWords();
  return (
    <div class="player-picture" role="group" tabIndex={0} aria-label={words().playback.picture}>
      <MoundPicture view={props.model.view()} standing={props.model.standing()} windows={props.requests.windows.asked()} picture={props.requests.picture()} />
    </div>
  );
}
