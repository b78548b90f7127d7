import { createMemo, Match, Show, Switch } from 'solid-js';
import { mayThrow } from '../../core/coaching/arm-care.ts';
import { putComing } from '../charts/coming-marks.ts';
import { drawPaceRail } from '../charts/pace-rail.ts';
import type { PlaneOptions } from '../charts/plane-data.ts';
import { drawSeparationPlane } from '../charts/separation-plane.ts';
import type { MoundView, SessionView } from '../../core/facts/views.ts';
import type { Standing } from '../standing/standing.ts';
import { StandingWord } from '../standing/frame.tsx';
import { useSpeech, useWords } from '../words/use-words.tsx';
import type { Asked } from './asked/asked.ts';
import { AskedPicture } from './asked/asked-picture.tsx';
import { withArrow } from './asked/with-arrow.ts';
import { Drawn, type Size } from './drawn.tsx';
import { lastThrow, lastThrowWords, paceFitsAboveWindows } from './last-throw.ts';
import { PainPicture } from './pain-picture.tsx';
import { comingMarks, planeOf } from './plane-of.ts';
import { railOf } from './rail-of.ts';
import { unbroken } from './unbroken.ts';
import { WallRoom } from './wall-room.tsx';
import { spokenWindow } from './window-words.ts';
import { Windows } from './windows.tsx';

/** What the Wall shows of a mound, from data alone: the same live and played back. */
export interface MoundPictureProps {
  readonly view: MoundView;
  /** The view of one more throw that will be `view` in the next frame: its mark is drawn already. */
  readonly coming?: MoundView | null;
  readonly standing: Standing;
  /** Whether the windows are drawn too. */
  readonly windows: boolean;
  /** The picture that was asked for; it takes the place of the pace rail, unless there is room for both. */
  readonly picture: Asked | null;
  /** Nothing is shown that tells a speed. */
  readonly withoutSpeed?: boolean;
  /** One of several mounds on the same screen. */
  readonly tile?: boolean;
}

/** Separation plane, pace rail, last throw in words, trial and intent, count. Speaks the language around it. */
export function MoundPicture(props: MoundPictureProps) {
  return (
    <WallRoom standing={props.standing} windows={props.windows} asked={props.picture !== null && props.view.session !== null} tile={props.tile} place={props.view.place} generation={props.view.generation}>
      {(sizes) => (
        <Show when={props.view.session} fallback={<NoSession view={props.view} standing={props.standing} />}>
          {(session) => (
            <Show when={session().armCare.kind !== 'pain-reported'} fallback={<PainPicture session={session()} standing={props.standing} />}>
              <SessionPicture {...props} session={session()} textPx={sizes().textPx} low={sizes().low} />
            </Show>
          )}
        </Show>
      )}
    </WallRoom>
  );
}

function NoSession(props: { readonly view: MoundView; readonly standing: Standing }) {
  const words = useWords();
  return (
    <div class="wall-empty">
      <header class="wall-head"><h1>{props.view.mound}</h1><StandingWord standing={props.standing} timeZone={null} /></header>
      <div class="wall-poster">
        <p class="wall-lead">{words().wall.nobody}</p>
        <p>{words().wall.openOnBench} <span class="quiet">{`${location.host}/bench/${props.view.mound}`}</span></p>
        <Show when={props.view.unclaimedCount > 0}><p class="wall-unclaimed">{words().trade.unclaimed(props.view.unclaimedCount)}</p></Show>
      </div>
    </div>
  );
}

function SessionPicture(props: MoundPictureProps & { readonly session: SessionView; readonly textPx: number; readonly low: boolean }) {
  const speech = useSpeech();
  /** Where a tile has no height to spare the words need all of it, and the line above has room. */
  const standsBelow = (): boolean => props.tile === true && !props.low;
  const plane = createMemo(() => {
    const seams = props.picture === 'seam-map';
    // One ellipse at a time: beside the seam map it is the doubt of the arrow.
    const plain = planeOf(props.view, speech(), props.windows && !seams ? spokenWindow(props.session.windows)?.size ?? null : null);
    return seams ? withArrow(plain, props.view, speech(), 'plain') : plain;
  });
  const coming = () => (props.coming ? comingMarks(props.view, props.coming) : []);
  const rail = createMemo(() => railOf(props.view, speech()));
  const options = (size: Size): PlaneOptions => ({ ...size, textPx: props.textPx, letters: 'newest' });
  return (
    <div class="wall-session" classList={{ 'without-speed': props.withoutSpeed === true }}>
      <Head session={props.session} standing={standsBelow() ? null : props.standing} tile={props.tile === true} mound={props.view.mound} />
      <div class="wall-plane">
        <Switch>
          <Match when={props.session.baseline.kind === 'forming' && props.session.baseline}>
            {(forming) => <Forming have={forming().have} need={forming().need} mayThrow={mayThrow(props.session.armCare)} />}
          </Match>
          <Match when={true}>
            <Drawn draw={(svg, size) => drawSeparationPlane(svg, plane(), options(size))} />
            <Show when={props.coming !== undefined}><Drawn class="coming" draw={(svg, size) => putComing(svg, plane(), coming(), options(size))} /></Show>
          </Match>
        </Switch>
      </div>
      <Show when={props.withoutSpeed !== true}><div class="wall-rail"><Drawn draw={(svg, { width, height }) => drawPaceRail(svg, rail(), { width, height, textPx: props.textPx })} /></div></Show>
      <Show when={props.picture}>{(picture) => <AskedPicture view={props.view} asked={picture()} textPx={props.textPx} />}</Show>
      <Words view={props.view} session={props.session} windows={props.windows} withoutSpeed={props.withoutSpeed === true} standing={standsBelow() ? props.standing : null} />
      <Show when={props.windows}><Windows view={props.view} textPx={props.textPx} withoutSpeed={props.withoutSpeed === true} /></Show>
    </div>
  );
}

function Head(props: { readonly session: SessionView; readonly standing: Standing | null; readonly tile: boolean; readonly mound: string }) {
  const words = useWords();
  const intent = () => (props.session.intent === null ? words().trade.noIntent : words().trade.intent[props.session.intent]);
  /** Another intent in between neither ends the trial nor belongs to it. */
  const trialNow = () => (props.session.trial?.intent === props.session.intent ? props.session.trial : null);
  return (
    <header class="wall-head">
      <Show when={props.tile}><p class="wall-mound">{props.mound}</p></Show>
      <h1>{props.session.athlete.name}</h1>
      <p class="wall-intent" data-intent={props.session.intent} data-trial={trialNow()?.letter}>
        {intent()}{' '}
        <Show when={trialNow()}>{(trial) => <span class="wall-trial">{words().trade.trial(trial().letter)}</span>}</Show>
      </p>
      <Show when={props.standing}>{(standing) => <StandingWord standing={standing()} timeZone={props.session.timeZone} brief={props.tile} />}</Show>
    </header>
  );
}

function Words(props: { readonly view: MoundView; readonly session: SessionView; readonly windows: boolean; readonly withoutSpeed: boolean; readonly standing: Standing | null }) {
  const speech = useSpeech();
  const last = createMemo(() => lastThrow(props.view));
  const said = createMemo(() => {
    const thrown = last();
    return thrown === null ? { lead: speech().words.plane.noThrow, pace: null } : lastThrowWords(thrown, speech());
  });
  return (
    <div class="wall-words">
      <div class="wall-last" data-place={last()?.place} data-on-target={last()?.miss?.onTarget === undefined ? 'not-judged' : last()!.miss!.onTarget ? 'yes' : 'no'}>
        <p class="wall-lead wall-place-words">{unbroken(said().lead)}</p>
        <Show when={props.withoutSpeed || (props.windows && !paceFitsAboveWindows(said())) ? null : said().pace}>{(pace) => <p class="wall-lead wall-pace-words">{unbroken(pace())}</p>}</Show>
      </div>
      <p class="wall-count" data-all={props.session.counts.all}>
        <span class="wall-all">{speech().words.trade.throws(props.session.counts.all)}</span>
        <Show when={props.session.trial}>{(trial) => <span class="wall-trial-count">{speech().words.trade.inTrial(props.session.counts.trial, trial().letter)}</span>}</Show>
        <Show when={props.withoutSpeed}><span class="wall-without-speed">{speech().words.arm.speedHidden}</span></Show>
        <Show when={last()?.inferred}><span class="wall-inferred">{speech().words.trade.inferred}</span></Show>
        <Show when={props.view.unclaimedCount > 0}><span class="wall-unclaimed">{speech().words.wall.unclaimed(props.view.unclaimedCount)}</span></Show>
      </p>
      <Show when={props.standing}>{(standing) => <StandingWord standing={standing()} timeZone={props.session.timeZone} brief />}</Show>
    </div>
  );
}

/** An arm that may not throw is not asked for more fastballs. */
function Forming(props: { readonly have: number; readonly need: number; readonly mayThrow: boolean }) {
  const words = useWords();
  return (
    <div class="wall-forming">
      <div class="wall-forming-marks" aria-hidden="true">
        {Array.from({ length: props.need }, (_, index) => <span classList={{ thrown: index < props.have }} />)}
      </div>
      <p class="wall-forming-count">{words().trade.baselineForming(props.have, props.need)}</p>
      <Show when={props.mayThrow}><p class="quiet">{words().wall.throwFastballs(props.need - props.have)}</p></Show>
    </div>
  );
}
