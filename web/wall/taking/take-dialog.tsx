import '../../words/of-taking-out.ts';
import { onMount } from 'solid-js';
import type { MoundView } from '../../../core/facts/views.ts';
import type { Standing } from '../../standing/standing.ts';
import { Pictures } from '../../taking-out/pictures.tsx';
import { useWords } from '../../words/use-words.tsx';
import '../../taking-out/taking-out.css';
import './take-dialog.css';

/** The pictures that the Wall draws at this moment, each to be saved. */
export default function TakeDialog(props: { readonly view: MoundView; readonly standing: Standing; readonly session: string; readonly onClose: () => void }) {
  const words = useWords();
  let dialog!: HTMLDialogElement;
  onMount(() => dialog.showModal());
  return (
    <dialog ref={dialog} class="take-dialog take-out" aria-labelledby="take-title" onClose={() => props.onClose()}>
      <h2 id="take-title">{words().wall.takePictures}</h2>
      <Pictures view={props.view} standing={props.standing} session={props.session} picturesIn={() => document.querySelector('.wall-session')} />
      <button type="button" onClick={() => dialog.close()}>{words().wall.closeTaking}</button>
    </dialog>
  );
}
