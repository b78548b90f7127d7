import '../words/of-door.ts';
import { render } from 'solid-js/web';
import { useWords } from '../words/use-words.tsx';
import { signInAddress } from './way-on.ts';
import './door.css';

/** Says over whatever screen it is that nobody is signed in here any more, and leads to the door and back. What is shown stays, to be read or copied. */
export function showSignedOut(): void {
  if (document.querySelector('.signed-out') !== null) return;
  const bar = document.body.insertBefore(document.createElement('div'), document.body.firstChild);
  bar.className = 'signed-out';
  render(() => <SignedOut />, bar);
}

function SignedOut() {
  const words = useWords();
  return <p role="alert">{words().door.signedOut} <a class="door-get" href={signInAddress(location)}>{words().door.signInAgain}</a></p>;
}
