/** What every renderer of scenes must hold to. A further renderer joins by one line in `scene-renderers.test.ts`. */
import { describe, expect, it } from "vitest";
import { READERS } from "../../src/scene/bounds.ts";
import { drawList } from "../../src/scene/draw-list.ts";
import type { Scene } from "../../src/scene/model.ts";
import { textWidth } from "../../src/scene/text-widths.ts";
import { ENGLISH_MM, type Reader } from "../../src/text/say.ts";
import { fixtureScenes } from "../helpers/fixture-drawings.ts";
import { SAMPLE_ITEMS, sampleScene } from "../helpers/sample-scene.ts";

/** One drawing read back from a renderer's bytes: page units are millimetres, y either way. */
export interface ReadBack {
  readonly width: number;
  readonly height: number;
  readonly marks: number;
  readonly points: readonly (readonly [number, number])[];
  readonly texts: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly anchor: string;
    readonly turned: boolean;
  }[];
}

export interface RendererUnderTest {
  readonly name: string;
  render(scene: Scene, reader: Reader): string | Uint8Array | Promise<string | Uint8Array>;
  read(output: string | Uint8Array): ReadBack;
}

/** Half a step of the third decimal. */
const ROUNDING = 0.0006;

function inside(at: number, reach: number): boolean {
  return at >= -ROUNDING && at <= reach + ROUNDING;
}

export function rendererContract({ name, render, read }: RendererUnderTest): void {
  const scenes: Readonly<Record<string, Scene>> = { sample: sampleScene(), ...fixtureScenes() };
  const draw = async (scene: Scene, reader: Reader = ENGLISH_MM): Promise<ReadBack> =>
    read(await render(scene, reader));

  describe(`${name} renders scenes`, () => {
    it.each(SAMPLE_ITEMS.map((item) => [item.kind, item] as const))(
      "draws every mark of a %s",
      async (_, item) => {
        const scene = sampleScene([item]);
        expect(drawList(scene, ENGLISH_MM).length).toBeGreaterThan(0);
        expect((await draw(scene)).marks).toBe(drawList(scene, ENGLISH_MM).length);
      },
    );

    it.each(Object.entries(scenes))("%s: the page is the scene's bounds at its scale", async (_, scene) => {
      const { bounds, scale } = scene;
      const page = await draw(scene);
      expect(page.width).toBeCloseTo((bounds.x[1] - bounds.x[0]) * scale, 2);
      expect(page.height).toBeCloseTo((bounds.y[1] - bounds.y[0]) * scale, 2);
    });

    it.each(Object.entries(scenes))("%s: nothing lies off the page, whoever reads", async (_, scene) => {
      for (const reader of READERS) {
        const page = await draw(scene, reader);
        const said = drawList(scene, reader).filter((mark) => mark.shape === "text");
        const ends = page.texts.flatMap(({ x, y, anchor, turned }, i) => {
          const mark = said[i];
          const long = mark ? textWidth(mark) : 0;
          const start = anchor === "start" ? 0 : anchor === "middle" ? -long / 2 : -long;
          return [start, start + long].map((at) => (turned ? [x, y - at] : [x + at, y]));
        });
        expect(page.points.length).toBeGreaterThan(0);
        const off = [...page.points, ...ends].filter(
          ([x = Number.NaN, y = Number.NaN]) => !(inside(x, page.width) && inside(y, page.height)),
        );
        expect(off).toEqual([]);
      }
    });

    it.each(Object.entries(scenes))("%s: its texts are the messages said to the reader", async (_, scene) => {
      for (const reader of READERS) {
        const said = drawList(scene, reader).flatMap((mark) => (mark.shape === "text" ? [mark.text] : []));
        expect((await draw(scene, reader)).texts.map(({ text }) => text)).toEqual(said);
        expect(said.filter((text) => text.startsWith("["))).toEqual([]);
      }
    });

    it.each(Object.entries(scenes))("%s: the same scene gives the same bytes", async (_, scene) => {
      const first = await render(scene, ENGLISH_MM);
      await render(sampleScene(), READERS.at(-1) ?? ENGLISH_MM);
      expect(await render(structuredClone(scene), ENGLISH_MM)).toEqual(first);
    });

    it("never writes a minus zero, an infinity or not-a-number", async () => {
      for (const scene of Object.values(scenes)) {
        const page = await draw(scene);
        const numbers = page.points.flat();
        expect(numbers.filter((value) => !Number.isFinite(value) || Object.is(value, -0))).toEqual([]);
      }
    });
  });
}
