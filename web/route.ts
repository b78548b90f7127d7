/** What an address asks for. Everything else a screen needs stands in the query, so that a link restores what it was made from. */
export type Route =
  | { readonly screen: 'wall' | 'bench' | 'glance' | 'plan'; readonly mound: string }
  | { readonly screen: 'playback'; readonly session: string | null }
  | { readonly screen: 'trials'; readonly athlete: string }
  | { readonly screen: 'report'; readonly session: string }
  | { readonly screen: 'start' | 'gallery' | 'import' | 'open' | 'sign-in' | 'certificate' | 'my-glance' | 'let-in' }
  | { readonly screen: 'nowhere'; readonly pathname: string };

/** The route of a path; a path that belongs to no screen gives `nowhere`, never a guess. */
export function routeOf(pathname: string): Route {
  const [screen, name, ...rest] = pathname.split('/').filter((part) => part !== '').map(readable);
  if (screen === undefined) return { screen: 'start' };
  if ((screen === 'gallery' || screen === 'import' || screen === 'open' || screen === 'sign-in' || screen === 'certificate' || screen === 'let-in') && name === undefined) return { screen };
  if (screen === 'glance' && name === undefined) return { screen: 'my-glance' };
  if (rest.length > 0) return { screen: 'nowhere', pathname };
  if (screen === 'trials' && name !== undefined) return { screen, athlete: name };
  if (screen === 'report' && name !== undefined) return { screen, session: name };
  if (screen === 'playback') return { screen, session: name ?? null };
  if ((screen === 'wall' || screen === 'bench' || screen === 'glance' || screen === 'plan') && name !== undefined) return { screen, mound: name };
  return { screen: 'nowhere', pathname };
}

function readable(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
