let asked = false;

/**
 * Has the browser begin its next frame while the page is still at work on what that will show, instead of behind it: between the
 * asking and the beginning lie three threads.
 */
export function askForFrame(): void {
  // In the background a frame that was asked for comes when the page is looked at again.
  if (asked) return;
  asked = true;
  requestAnimationFrame(() => {
    asked = false;
  });
}
