import { createEffect, createRoot } from 'solid-js';
import { createChosenHere } from './chosen-here.ts';
import { settingsIn, THEMES, type Theme } from './settings.ts';

/** Light, dark, or the one for the sun; null follows the device. One for every screen of this page. */
export const theme = createChosenHere('theme', THEMES, settingsIn(location.search).theme);

/** Who asks the device for more contrast gets the theme for the sun, unless another was chosen. */
function shownTheme(): Theme | null {
  return theme.chosen() ?? (matchMedia('(prefers-contrast: more)').matches ? 'sun' : null);
}

/** Puts the theme on the page, now and whenever another is chosen. */
export function showTheme(): void {
  createRoot(() => createEffect(() => {
    const shown = shownTheme();
    if (shown === null) delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = shown;
  }));
}
