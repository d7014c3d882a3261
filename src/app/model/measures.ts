/**
 * What did the builder write for a scale or a distance? Text in, 24 for `1:24` and `1/24`, mm for
 * `45 cm`, `0.45 m` and `450`; undefined where it says nothing usable. Ranges are those of a build
 * file: scales 1–200, distances 50–20,000 mm.
 */
const number = (text: string): number => Number(text.replace(',', '.'));

/** Scales that kits of cars commonly come in; common practice, no source. */
export const usualScales = [8, 12, 16, 18, 20, 24, 25, 32, 43] as const;

/** `1:24`, `1/24` or `24` as 24. */
export function scaleFrom(text: string): number | undefined {
  const found = /^\s*(?:1\s*[:/]\s*)?(\d+(?:[.,]\d+)?)\s*$/.exec(text)?.[1];
  const scale = found === undefined ? Number.NaN : number(found);
  return scale >= 1 && scale <= 200 ? scale : undefined;
}

const unitMm = { '': 1, mm: 1, cm: 10, m: 1000 } as const;
const isUnit = (word: string): word is keyof typeof unitMm => word in unitMm;

/** `450`, `450 mm`, `45 cm` or `0.45 m` as 450. */
export function distanceFrom(text: string): number | undefined {
  const [, figures, word = ''] = /^\s*(\d+(?:[.,]\d+)?)\s*([a-z]*)\s*$/i.exec(text) ?? [];
  const unit = word.toLowerCase();
  if (figures === undefined || !isUnit(unit)) return undefined;
  // Through a whole number of micrometres, so that 0.45 m is 450 mm and not a hair beside it.
  const mm = Math.round(number(figures) * unitMm[unit] * 1000) / 1000;
  return mm >= 50 && mm <= 20_000 ? mm : undefined;
}

/** 450 as `450 mm`, 2000 as `2 m`. */
export const distanceWords = (mm: number): string => (mm < 1000 ? `${mm} mm` : `${mm / 1000} m`);
