import '../words/of-door.ts';
import { createResource, Show } from 'solid-js';
import { useWords } from '../words/use-words.tsx';
import { askForFingerprint } from './ask-in.ts';
import { wantedIn } from './way-on.ts';
import './door.css';

/** What a phone does once so that it trusts a server that made its own certificate. It is read before anything is encrypted. */
export default function Certificate() {
  const words = useWords();
  const [answer] = createResource(askForFingerprint);
  const fingerprint = () => {
    const said = answer();
    return said?.kind === 'yes' ? said.value.fingerprint : null;
  };
  document.title = 'Offpace';
  return (
    <main class="door">
      <p class="start-name">Offpace</p>
      <h1>{words().door.certificate}</h1>
      <Show when={fingerprint()} fallback={<p role="status">{answer() === undefined ? words().door.opening : answer()!.kind === 'silent' ? words().door.unreachable : words().door.noCertificate}</p>}>
        {(sha256) => (
          <>
            <p>{words().door.certificateWhy}</p>
            <p>{words().door.certificateCompare}</p>
            <p class="door-fingerprint">{sha256()}</p>
            <p><a class="door-get" href="/certificate.crt">{words().door.certificateGet}</a></p>
            <h2>{words().door.iPhone}</h2>
            <p>{words().door.iPhoneSteps}</p>
            <h2>{words().door.android}</h2>
            <p>{words().door.androidSteps}</p>
            <p class="quiet">{words().door.without}</p>
          </>
        )}
      </Show>
      <p><a class="door-get" href={`https://${location.host}${wantedIn(location.search, location.origin)}`}>{words().door.goOn}</a></p>
    </main>
  );
}
