import type { Speech } from '../words/speech.ts';

/** What a picture is given to be drawn in. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Draws one state of one picture, from invented data that is the same every time. */
export type Scene = (svg: SVGSVGElement, speech: Speech, room: Room) => void;
export type Scenes = Readonly<Record<string, Scene>>;
