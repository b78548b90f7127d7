import { Show } from 'solid-js';
import type { DeviceState } from '../../core/facts/wire.ts';
import type { Freshness } from '../live/link.ts';
import { StandingWord } from '../standing/frame.tsx';
import type { Standing } from '../standing/standing.ts';
import { timeText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import { useSpeech } from '../words/use-words.tsx';
import { SunButton } from './screen/sun-button.tsx';
import { useDesk } from '../desk/desk.ts';
import { ScreenLinks } from '../desk/screen-links.tsx';

/** Where one goes on from Bench. */
export const OTHER_SCREENS = ['plan', 'wall', 'glance'] as const;

/** Who throws on which mound, and whether what is shown is now. */
export function Head(props: { readonly standing: Standing; readonly link: Freshness }) {
  const desk = useDesk();
  const speech = useSpeech();
  const say = () => speech().words.bench.frame;
  const zone = () => desk.session()?.timeZone ?? null;
  return (
    <header class="head">
      <h1>{desk.session()?.athlete.name ?? say().nobody}</h1>
      <p class="quiet">{say().mound(desk.mound)}</p>
      <Show when={!props.standing.kind.startsWith('device')}><p class="quiet device">{deviceWords(props.link.device, zone(), speech())}</p></Show>
      <StandingWord standing={props.standing} timeZone={zone()} />
      <SunButton />
      <nav aria-label={say().otherScreens}>
        <ScreenLinks screens={OTHER_SCREENS} />
      </nav>
    </header>
  );
}

function deviceWords(device: DeviceState, timeZone: string | null, { words, language }: Speech): string {
  const say = words.bench.frame;
  switch (device.verdict) {
    case 'fresh': return say.deviceFresh(device.device);
    case 'stale': return say.deviceStale(device.device, timeText(device.sinceMs, timeZone, language));
    case 'unknown': return say.deviceUnknown;
  }
}
