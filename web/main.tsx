import '@fontsource-variable/hanken-grotesk/index.css';
import './theme.css';
import './charts/charts.css';
import { lazy, Suspense } from 'solid-js';
import { Dynamic, render } from 'solid-js/web';
import { routeOf, type Route } from './route.ts';
import { showTheme } from './theme.ts';

const Wall = lazy(() => import('./wall/wall.tsx'));
const Bench = lazy(() => import('./bench/bench.tsx'));
const Glance = lazy(() => import('./glance/glance.tsx'));
const Plan = lazy(() => import('./plan/plan.tsx'));
const Playback = lazy(() => import('./playback/playback.tsx'));
const Trials = lazy(() => import('./trials/trials.tsx'));
const Report = lazy(() => import('./report/report.tsx'));
const Start = lazy(() => import('./start/start.tsx'));
const Open = lazy(() => import('./door/open.tsx'));
const Certificate = lazy(() => import('./door/certificate.tsx'));
const SignIn = lazy(() => import('./door/sign-in.tsx'));
const Nowhere = lazy(() => import('./start/nowhere.tsx'));
const MOUND_SCREENS = { wall: Wall, bench: Bench, glance: Glance, plan: Plan } as const;

function Screen(props: { readonly route: Route }) {
  const { route } = props;
  switch (route.screen) {
    case 'wall':
    case 'bench':
    case 'glance':
    case 'plan':
      return <Dynamic component={MOUND_SCREENS[route.screen]} mound={route.mound} />;
    case 'playback':
      return <Playback session={route.session} />;
    case 'trials':
      return <Trials athlete={route.athlete} />;
    case 'report':
      return <Report session={route.session} />;
    case 'open':
      return <Open />;
    case 'certificate':
      return <Certificate />;
    case 'sign-in':
      return <SignIn />;
    case 'start':
      return <Start />;
    case 'nowhere':
      return <Nowhere pathname={route.pathname} />;
  }
}

showTheme();
render(() => <Suspense><Screen route={routeOf(location.pathname)} /></Suspense>, document.querySelector('#screen')!);
