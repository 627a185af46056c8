import { snap } from "../../units/length.ts";

/** A rectangle of wall over level ground, in the frame of its face (mm). */
export function uprightRectangle(
  { width, height }: { readonly width: number; readonly height: number },
  { foot, ground }: { readonly foot: number; readonly ground: number },
): { outline: [number, number][]; ground: [number, number][] } {
  const top = snap(foot + height);
  return {
    outline: [
      [0, foot],
      [width, foot],
      [width, top],
      [0, top],
    ],
    ground: [
      [0, ground],
      [width, ground],
    ],
  };
}
