import '../words/of-start.ts';
import { createEffect, Show } from 'solid-js';
import { Speaking, useWords } from '../words/use-words.tsx';
import { Mounds } from './mounds.tsx';
import './start.css';

/** An address that no screen has: what was asked for, and every way on. */
export default function Nowhere(props: { readonly pathname: string }) {
  return <Speaking athlete={null}><WaysOn pathname={props.pathname} /></Speaking>;
}

function WaysOn(props: { readonly pathname: string }) {
  const words = useWords();
  createEffect(() => {
    document.title = `Offpace · ${words().start.nowhereTitle}`;
  });
  /** A screen of a mound, asked for without saying which. */
  const withoutMound = () => (['wall', 'bench', 'glance', 'plan'] as const).find((screen) => props.pathname.replace(/\/$/, '') === `/${screen}`);
  return (
    <main class="start">
      <header>
        <p class="start-name">Offpace</p>
        <h1>{words().start.nowhere(props.pathname)}</h1>
        <Show when={withoutMound()}>{(screen) => <p class="start-hint">{words().start.nameMound(words().start.screens[screen()], `/${screen()}/north-1`)}</p>}</Show>
      </header>
      <Mounds />
      <p class="start-recorded"><a href="/">{words().start.home}</a></p>
      <p class="start-recorded"><a href="/playback">{words().start.recorded}</a></p>
    </main>
  );
}
