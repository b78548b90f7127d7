import '../words/of-glance.ts';
import { createResource, Match, Switch } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { glanceAddress, keptAddress } from './kept/kept-view.ts';
import './glance.css';

/** Where the icon on a home screen leads: to the Glance that this phone was let into, or without a network to the one that it keeps. */
export default function MyGlance() {
  const words = useWords();
  const [mine] = createResource(async () => goOn(await whereIAm()));
  document.title = 'Offpace';
  return (
    <main class="glance">
      <h1>Offpace</h1>
      <div class="glance-body" role="status">
        <Switch>
          <Match when={mine() === 'none'}><p class="glance-lead">{words().glance.noneHere}</p></Match>
          <Match when={mine() === 'silent'}><p class="glance-lead">{words().glance.nobodyHeard}</p></Match>
        </Switch>
      </div>
    </main>
  );
}

/** An address, or why there is none. */
async function whereIAm(): Promise<{ readonly address: string } | 'none' | 'silent'> {
  try {
    const me = (await (await fetch('/api/me')).json()) as { readonly kind: string; readonly mound: string; readonly session: string };
    return me.kind === 'glance' ? { address: glanceAddress(me) } : 'none';
  } catch {
    const address = keptAddress(localStorage);
    return address === null ? 'silent' : { address };
  }
}

function goOn<T>(where: T): T {
  if (typeof where === 'object' && where !== null && 'address' in where) location.replace(String(where.address));
  return where;
}
