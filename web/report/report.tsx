import '../words/of-desk.ts';
import { createEffect, createResource, Match, Show, Switch } from 'solid-js';
import type { Answer, Unheard } from '../live/recorded.ts';
import { askForSessionRecord, readable } from '../live/recorded.ts';
import { Unanswered } from '../playback/unanswered.tsx';
import { askForRecord } from '../trials/ask-for-record.ts';
import { foldedSession, type AthleteRecord } from '../trials/record.ts';
import { Speaking, useWords } from '../words/use-words.tsx';
import { Page } from './page.tsx';
import '../charts/trials.css';
import './report.css';

interface Reported {
  readonly session: string;
  readonly record: AthleteRecord;
}

/** The report of one session, on one page for athlete and staff. */
export default function Report(props: { readonly session: string }) {
  const [answer, { refetch }] = createResource(() => props.session, (session) => readable(askForReport(session)));
  const known = () => {
    const said = answer();
    return said?.kind === 'answer' ? said.value : null;
  };
  return (
    <Show when={answer()} fallback={<Waiting />}>
      {(said) => (
        <Speaking athlete={known()?.record.athlete ?? null}>
          <Switch>
            <Match when={known()}>{(reported) => <Page record={reported().record} session={reported().session} />}</Match>
            <Match when={said().kind !== 'answer'}><None unheard={said() as Unheard} again={() => void refetch()} /></Match>
          </Switch>
        </Speaking>
      )}
    </Show>
  );
}

/** The session says whose it is; its verdicts may rest on the athlete's other days. */
async function askForReport(session: string): Promise<Answer<Reported>> {
  const answer = await askForSessionRecord(session);
  if (answer.kind !== 'answer') return answer;
  const athlete = foldedSession(answer.value)?.entry.athlete.id;
  const record = await askForRecord(athlete ?? '');
  return record.kind === 'answer' ? { kind: 'answer', value: { session, record: record.value } } : record;
}

function Waiting() {
  const words = useWords();
  return <main class="report-none"><h1>{words().report.onReport}</h1><p class="quiet" role="status">{words().report.loading}</p></main>;
}

function None(props: { readonly unheard: Unheard; readonly again: () => void }) {
  const words = useWords();
  createEffect(() => {
    document.title = `Offpace · ${words().report.onReport}`;
  });
  return (
    <main class="report-none">
      <p><a href={`/playback${location.search}`}>{words().playback.toList}</a></p>
      <h1>{words().report.gone}</h1>
      <Unanswered {...props} />
    </main>
  );
}
