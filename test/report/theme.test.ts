import { lab, rgb } from "d3";
import { describe, expect, test } from "vitest";
import { SCHEMES, themeCss } from "../../lib/report/chart/theme.ts";

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
const luminance = (colour: string): number => {
  const { r, g, b } = rgb(colour);
  const [red = 0, green = 0, blue = 0] = [r, g, b].map((channel) => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

const contrast = (a: string, b: string): number => {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
};

/** How colours look without red or without green cones: Machado, Oliveira & Fernandes 2009, severity 1 (from memory). */
const BLINDNESS = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
} as const;

const linear = (channel: number): number => {
  const share = channel / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

const encoded = (share: number): number => {
  const held = Math.min(1, Math.max(0, share));
  return 255 * (held <= 0.0031308 ? held * 12.92 : 1.055 * held ** (1 / 2.4) - 0.055);
};

const seenBy = (colour: string, matrix: readonly (readonly number[])[]): string => {
  const { r, g, b } = rgb(colour);
  const [red = 0, green = 0, blue = 0] = matrix.map(([x = 0, y = 0, z = 0]) =>
    encoded(x * linear(r) + y * linear(g) + z * linear(b)),
  );
  return rgb(red, green, blue).formatHex();
};

/** CIE 1976 distance in L*a*b*; about 2.3 is the least a trained eye tells apart. */
const apart = (a: string, b: string): number => {
  const [x, y] = [lab(a), lab(b)];
  return Math.hypot(x.l - y.l, x.a - y.a, x.b - y.b);
};

describe.each(Object.entries(SCHEMES))("%s scheme", (_name, scheme) => {
  // WCAG 2.2: 4.5 for text (1.4.3 AA). Settings' colours are also the colour of their labels.
  test.each(["paper", "raised"] as const)("text and settings can be read on %s", (ground) => {
    for (const colour of [scheme.ink, scheme.muted, scheme.accent, scheme.warning, ...scheme.settings]) {
      expect(contrast(colour, scheme[ground]), `${colour} on ${scheme[ground]}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  // WCAG 2.2: 3 for what a picture is read by (1.4.11); lines run over the clear-sky shade.
  test("lines stand out from the clear-sky shade", () => {
    for (const colour of scheme.settings)
      expect(contrast(colour, scheme.sun), colour).toBeGreaterThanOrEqual(3);
  });

  // Flat and three legs are what stands side by side in practice: at four times the least visible distance.
  test.each(Object.entries(BLINDNESS))("flat and the first three legs stay apart in %s", (_kind, matrix) => {
    const seen = scheme.settings.slice(0, 4).map((colour) => seenBy(colour, matrix));
    let pairs = 0;
    seen.forEach((a, first) => {
      for (const b of seen.slice(first + 1)) {
        expect(apart(a, b), `${scheme.settings[first]} as ${a} beside ${b}`).toBeGreaterThan(9);
        pairs += 1;
      }
    });
    expect(pairs).toBe(6);
  });
});

test("a style sheet names every colour once for each scheme it holds", () => {
  const names = (css: string) => [...css.matchAll(/--season-[\w-]+(?=:)/g)].map(([name]) => name);
  expect(names(themeCss(":root", "light"))).toHaveLength(16);
  expect(new Set(names(themeCss(":root", "reader"))).size).toBe(16);
  expect(names(themeCss(":root", "reader"))).toHaveLength(48); // light, dark, and light again on paper
});
