import { createEffect, createMemo, For, Show } from 'solid-js';
import { sessionAimWords } from '../aims/aim-words.ts';
import { drawLetteredPlane } from '../charts/lettered-plane.ts';
import { StandingWord } from '../standing/frame.tsx';
import { armOn } from '../trials/arm.ts';
import { comparisonsOf } from '../trials/comparison-of.ts';
import type { AthleteRecord, FoldedSession } from '../trials/record.ts';
import { rowsOf } from '../trials/rows.ts';
import { reportWords } from '../words/arm-words.ts';
import { dateText } from '../words/moments.ts';
import { useSpeech } from '../words/use-words.tsx';
import { armWords, baselineWords, excludedWords, noteWords, stageWords, targetWords, throwsWords, whenWords } from './report-words.ts';
import { sessionPlane } from './session-plane.ts';
import { TrialTable } from './trial-table.tsx';
import { Verdicts } from './verdicts.tsx';

/** The plane is drawn once at this size, and scaled by the sheet. */
const PLANE = { width: 460, height: 450, textPx: 14 } as const;

/** One sheet: who, when, what, how it went, and what may be said of it. */
export function Page(props: { readonly record: AthleteRecord; readonly session: string }) {
  const speech = useSpeech();
  const say = () => speech().words.report;
  const folded = (): FoldedSession => props.record.sessions.find(({ entry }) => entry.id === props.session)!;
  const session = () => folded().shown;
  const date = () => dateText(session().openedAtMs, session().timeZone, speech().language);
  const care = createMemo(() => armOn(props.record, session().armCare.day));
  const comparisons = createMemo(() => comparisonsOf(props.record, session().armCare.day, null).filter(({ entry }) => entry.days.some((day) => day.session === props.session)));
  const saidOfArm = () => {
    const { lastReport } = session().armTalk;
    return lastReport === null ? [] : [reportWords(lastReport, session(), speech())];
  };
  createEffect(() => {
    document.title = `Offpace · ${say().title(session().athlete.name, date())}`;
  });
  return (
    <div class="report">
      <nav class="report-bar" aria-label={speech().words.trials.frame.otherScreens}>
        <a href={`/playback/${encodeURIComponent(props.session)}`}>{say().toPlayback}</a>
        <a href={`/trials/${encodeURIComponent(session().athlete.id)}`}>{say().toTrials}</a>
        <button type="button" onClick={() => print()}>{say().print}</button>
      </nav>
      <main class="sheet">
        <header class="sheet-head">
          <h1>{session().athlete.name}</h1>
          <p>{say().onReport}, {date()}</p>
          <p class="quiet">{whenWords(session(), speech())}</p>
          <Show when={session().closedAtMs}>{(atMs) => <StandingWord standing={{ kind: 'closed', atMs: atMs() }} timeZone={session().timeZone} />}</Show>
        </header>
        <Facts folded={folded()} />
        <section class="sheet-trials" aria-labelledby="report-trials">
          <h2 id="report-trials">{say().trials}</h2>
          <TrialTable rows={rowsOf(folded()).toReversed()} />
        </section>
        <section class="sheet-plane" aria-labelledby="report-plane">
          <h2 id="report-plane">{say().plane}</h2>
          <svg ref={(svg) => createEffect(() => drawLetteredPlane(svg, sessionPlane(folded(), speech()), PLANE))} />
          <p class="quiet">{say().drawn}<Show when={folded().view.throws.some(({ inferred }) => inferred)}> {say().inferred}</Show></p>
        </section>
        <div class="sheet-side">
          <Verdicts comparisons={comparisons()} />
          <Lines title={say().excluded} lines={excludedWords(folded().view, speech())} />
          <Lines title={say().notes} lines={noteWords(session(), folded().view.throws, speech())} />
          <Lines title={say().arm} lines={[...saidOfArm(), ...armWords(care(), speech())]} />
        </div>
        <footer class="sheet-foot">
          <p>{say().caution}</p>
          <p class="quiet">{say().science(folded().view.scienceVersion)}</p>
        </footer>
      </main>
    </div>
  );
}

function Facts(props: { readonly folded: FoldedSession }) {
  const speech = useSpeech();
  const say = () => speech().words.report;
  const session = () => props.folded.shown;
  const lines = (): readonly (readonly [string, readonly string[]])[] => [
    [say().athlete, [speech().words.trade.hand[session().athlete.hand]]],
    [say().mound, [props.folded.recorded.mound]],
    [say().stage, [stageWords(session(), props.folded.view.throws, speech())]],
    [say().throws, [throwsWords(props.folded.view.throws, speech())]],
    [say().baseline, baselineWords(session().baseline, session().timeZone, speech())],
    [say().target, targetWords(session().zone, session().speedBand, speech())],
    [speech().words.aims.title, sessionAimWords(session(), speech())],
  ];
  return (
    <dl class="sheet-facts">
      <For each={lines().filter(([, said]) => said.length > 0)}>{([name, said]) => <div><dt>{name}</dt><dd><For each={said}>{(line) => <span>{line}</span>}</For></dd></div>}</For>
    </dl>
  );
}

function Lines(props: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <Show when={props.lines.length > 0}>
      <section>
        <h2>{props.title}</h2>
        <ul><For each={props.lines}>{(line) => <li>{line}</li>}</For></ul>
      </section>
    </Show>
  );
}
