/** What a viewer chose on this device, kept from one visit to the next. A browser that may keep nothing forgets it, no more. */
const place = (name: string): string => `offpace.${name}`;

export function keptChoice(name: string): string | null {
  try {
    return localStorage.getItem(place(name));
  } catch {
    return null;
  }
}

/** Keeps a choice in place of the one before; null forgets it. */
export function keepChoice(name: string, value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(place(name));
    else localStorage.setItem(place(name), value);
  } catch {
    // Storage is full or forbidden: the choice holds on this page.
  }
}
