import '@fontsource-variable/hanken-grotesk/index.css';
import './theme.css';
import './charts/charts.css';
import { ErrorBoundary, type JSX } from 'solid-js';
import { render } from 'solid-js/web';
import { NOBODY_HERE } from './live/nobody-here.ts';
import { routeOf, type Route } from './route.ts';
import { Unloaded } from './standing/unloaded.tsx';
import { showTheme } from './theme.ts';
import { kioskIn } from './wall/kiosk.ts';

/**
 * The screen of a route, once its program has come. Nothing waits for its data here: each screen says itself what it is waiting
 * for, and none is taken away because a part of it asks the server something.
 */
async function screenOf(route: Route): Promise<() => JSX.Element> {
  switch (route.screen) {
    case 'wall': {
      const { default: Wall } = await import('./wall/wall.tsx');
      return () => <Wall mound={route.mound} />;
    }
    case 'bench': {
      const { default: Bench } = await import('./bench/bench.tsx');
      return () => <Bench mound={route.mound} />;
    }
    case 'glance': {
      const { default: Glance } = await import('./glance/glance.tsx');
      return () => <Glance mound={route.mound} />;
    }
    case 'plan': {
      const { default: Plan } = await import('./plan/plan.tsx');
      return () => <Plan mound={route.mound} />;
    }
    case 'playback': {
      const { default: Playback } = await import('./playback/playback.tsx');
      return () => <Playback session={route.session} />;
    }
    case 'trials': {
      const { default: Trials } = await import('./trials/trials.tsx');
      return () => <Trials athlete={route.athlete} />;
    }
    case 'report': {
      const { default: Report } = await import('./report/report.tsx');
      return () => <Report session={route.session} />;
    }
    case 'nowhere': {
      const { default: Nowhere } = await import('./start/nowhere.tsx');
      return () => <Nowhere pathname={route.pathname} />;
    }
    case 'my-glance': return (await import('./glance/my-glance.tsx')).default;
    case 'open': return (await import('./door/open.tsx')).default;
    case 'certificate': return (await import('./door/certificate.tsx')).default;
    case 'let-in': return (await import('./door/let-in.tsx')).default;
    case 'sign-in': return (await import('./door/sign-in.tsx')).default;
    case 'import': return (await import('./import/import.tsx')).default;
    case 'gallery': return (await import('./gallery/gallery.tsx')).default;
    case 'start': return (await import('./start/start.tsx')).default;
  }
}

/** Screens at which a coach has signed in. A phone, and a screen on the wall, were let in by a code or a link and cannot sign in. */
function isCoachs({ screen }: Route): boolean {
  return !['glance', 'my-glance', 'open', 'certificate', 'sign-in'].includes(screen) && !kioskIn(location.search);
}

const route = routeOf(location.pathname);
if (isCoachs(route)) addEventListener(NOBODY_HERE, () => void import('./door/signed-out.tsx').then(({ showSignedOut }) => showSignedOut()));
showTheme();
void screenOf(route).then(
  (Screen) => () => <ErrorBoundary fallback={failed}><Screen /></ErrorBoundary>,
  (why: unknown) => {
    reportError(why);
    return Unloaded;
  },
).then((shown) => {
  const room = document.querySelector('#screen')!;
  room.replaceChildren();
  render(shown, room);
});

/** A fault of a screen is ours, and reported as every error is; half a screen would be worse than none. */
function failed(why: unknown): null {
  reportError(why);
  void import('./standing/fault.tsx').then(({ showFault }) => showFault(route.screen === 'wall'));
  return null;
}
