import '../words/of-desk.ts';
import { createEffect, Match, Switch } from 'solid-js';
import type { Unheard } from '../live/recorded.ts';
import { Unanswered } from '../playback/unanswered.tsx';
import { Speaking, useWords } from '../words/use-words.tsx';
import { AthleteTrials } from './athlete-trials.tsx';
import { holdRecord } from './use-record.ts';
import '../charts/trials.css';
import './trials.css';

/** Trials: everything that one athlete has tried, and any two of it held against each other. */
export default function Trials(props: { readonly athlete: string }) {
  const held = holdRecord(props.athlete);
  const record = () => {
    const answer = held.answer();
    return answer?.kind === 'answer' ? answer.value : null;
  };
  const refused = () => {
    const answer = held.answer();
    return answer === null || answer.kind === 'answer' ? null : answer;
  };
  return (
    <Speaking athlete={record()?.athlete ?? null}>
      <Switch fallback={<Loading />}>
        <Match when={record()}>{(known) => <AthleteTrials record={known()} refresh={held.refresh} />}</Match>
        <Match when={refused()}>{(answer) => <Gone unheard={answer()} again={held.again} />}</Match>
      </Switch>
    </Speaking>
  );
}

function Loading() {
  const words = useWords();
  return <main class="trials-gone"><h1>{words().trials.frame.onTrials}</h1><p class="quiet" role="status">{words().trials.frame.loading}</p></main>;
}

function Gone(props: { readonly unheard: Unheard; readonly again: () => void }) {
  const words = useWords();
  createEffect(() => {
    document.title = `Offpace · ${words().trials.frame.onTrials}`;
  });
  return (
    <main class="trials-gone">
      <p><a href={`/playback${location.search}`}>{words().trials.frame.sessions}</a></p>
      <h1>{words().trials.frame.gone}</h1>
      <Unanswered {...props} />
    </main>
  );
}
