import { createResource, For, Show } from 'solid-js';
import { answered, askForAthletes } from '../live/recorded.ts';
import { useWords } from '../words/use-words.tsx';

/** Everybody who has thrown here, each with the way to what was tried. Nothing while nobody has. */
export function Athletes() {
  const words = useWords();
  const [known] = createResource(() => answered(askForAthletes()));
  const athletes = () => known() ?? [];
  return (
    <Show when={athletes().length > 0}>
      <section class="start-athletes" aria-labelledby="start-athletes">
        <h2 id="start-athletes">{words().start.trialsOf}</h2>
        <ul><For each={athletes()}>{({ id, name }) => <li><a href={`/trials/${encodeURIComponent(id)}`}>{name}</a></li>}</For></ul>
      </section>
    </Show>
  );
}
