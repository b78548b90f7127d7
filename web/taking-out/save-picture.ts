import { save } from './save.ts';
import type { PictureFile } from './self-contained.ts';

/** Dots of a PNG for each of the screen's: sharp on paper too. */
const DOTS = 2;

/** Saves a picture as it is drawn. */
export function saveSvg({ svg }: PictureFile, name: string): void {
  save(new Blob([svg], { type: 'image/svg+xml' }), `${name}.svg`);
}

/** Saves it as dots. Resolves once the file is handed to the browser; false where the browser could not draw it. */
export async function savePng({ svg, width, height }: PictureFile, name: string): Promise<boolean> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  try {
    await image.decode();
  } catch {
    return false;
  }
  const canvas = Object.assign(document.createElement('canvas'), { width: width * DOTS, height: height * DOTS });
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const dots = await new Promise<Blob | null>((drawn) => { canvas.toBlob(drawn, 'image/png'); });
  if (dots !== null) save(dots, `${name}.png`);
  return dots !== null;
}
