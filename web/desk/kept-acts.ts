const name = (mound: string): string => `offpace.acts.${mound}`;

/** The acts that this page had before it was loaded again; none where the browser kept none. */
export function keptActs<Act>(mound: string): readonly Act[] {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(name(mound)) ?? '[]');
    return Array.isArray(kept) ? (kept as Act[]) : [];
  } catch {
    return [];
  }
}

export function keepActs(mound: string, acts: readonly unknown[]): void {
  try {
    sessionStorage.setItem(name(mound), JSON.stringify(acts));
  } catch {
    // A browser that keeps nothing: the list lasts as long as the page.
  }
}
