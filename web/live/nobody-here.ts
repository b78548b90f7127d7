/** What the page is told when the server takes whoever sits at it for nobody: a sign-in has lasted its time, or was ended. */
export const NOBODY_HERE = 'offpace-nobody-here';

/** Passes on a refusal that a sign-in would mend; whoever asked still says it in its own place. */
export function heardRefusal({ code }: { readonly code: string }): void {
  if (code === 'not-let-in') dispatchEvent(new Event(NOBODY_HERE));
}
